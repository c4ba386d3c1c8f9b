import type { ProfileTask } from '../../../../src/core/study/profile/index.ts';
import { makeTrack } from '../../../../src/core/track/index.ts';
import type { GradePoint, PlanElement, Track } from '../../../../src/core/track/types.ts';

export const trackOn = (
  elements: readonly PlanElement[],
  points: readonly GradePoint[] = [level],
  at = origin,
): Track => makeTrack({ start: at, elements, profile: { points } });

const origin = { x: 0, y: 0, heading: 0 };
const level: GradePoint = { chainage: 0, height: 0 };

/** A task that asks for nothing but what is given. */
export const taskOn = (track: Track, more: Partial<ProfileTask> = {}): ProfileTask => ({
  track,
  heights: [],
  grades: [],
  clearances: [],
  verticalRadius: 10,
  steepest: 0.1,
  towards: 'end',
  curveLength: 0,
  window: 0,
  every: 10,
  ...more,
});
