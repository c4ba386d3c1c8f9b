import { trackPoint } from '../point.ts';
import { makeTrack } from '../track.ts';
import type { PlanElement } from '../types.ts';

/** A place in plan with a direction: m, rad from +x counter-clockwise. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** Where a chain of elements that starts at `start` ends. */
export function chainEnd(start: Pose, elements: readonly PlanElement[]): Pose {
  if (!elements.some((element) => element.length > 0)) return start;
  const track = makeTrack({ start, elements, profile: { points: [{ chainage: 0, height: 0 }] } });
  const { x, y, heading } = trackPoint(track, track.length);
  return { x, y, heading };
}

/** The sum of lengths, m. */
export const chainLength = (elements: readonly PlanElement[]): number =>
  elements.reduce((sum, element) => sum + element.length, 0);
