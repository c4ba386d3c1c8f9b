import { cos, sin } from '../../math/index.ts';
import { easement } from '../plan/easement.ts';
import { arc, transition } from '../plan/elements.ts';
import type { PlanElement } from '../types.ts';

/** A bend of one radius with an easement at each end; an easement of 0 m is none. */
export interface BendSpec {
  readonly radius: number;
  readonly easeIn: number;
  readonly easeOut: number;
}

/** One end of a bend as seen from its tangent: turning of the easement, and where the arc carried back would be nearest. */
export interface EasedEnd {
  readonly angle: number;
  readonly shift: number;
  readonly shiftAt: number;
}

/** The easement of `length`, m, into `radius`, m; all 0 without one. Throws RangeError as `easement` does. */
export const easedEnd = (radius: number, length: number): EasedEnd =>
  length === 0 ? { angle: 0, shift: 0, shiftAt: 0 } : easement(radius, length);

/**
 * The elements of a bend that turns through `angle`, rad, left positive; null when its easements alone turn further. By how
 * much is |angle| less the turning of the two.
 */
export function bendElements({ radius, easeIn, easeOut }: BendSpec, angle: number): PlanElement[] | null {
  if (angle === 0) return [];
  const curvature = Math.sign(angle) / radius;
  const left = Math.abs(angle) - (easeIn + easeOut) / (2 * radius);
  if (left < -ANGLE_ROUNDING) return null;
  const elements = [
    transition(easeIn, 0, curvature),
    arc(radius, Math.sign(angle) * Math.max(0, left)),
    transition(easeOut, curvature, 0),
  ];
  return elements.filter((element) => element.length > 0);
}

/** A bend that lacks less turning than this, rad, is two easements with no arc between. */
export const ANGLE_ROUNDING = 1e-12;

/**
 * How far a bend with like easements goes ahead and aside, m: its arc belongs to a circle of radius R + shift that
 * touches both tangents, a distance `shiftAt` from where the easements start.
 */
export function bendReach(radius: number, ease: number, angle: number): { ahead: number; aside: number } {
  const { shift, shiftAt } = easedEnd(radius, ease);
  const half = sin(angle / 2);
  return {
    ahead: shiftAt + (radius + shift) * sin(angle) + shiftAt * cos(angle),
    aside: 2 * (radius + shift) * half * half + shiftAt * sin(angle),
  };
}
