import { helix, transition } from '../plan/elements.ts';
import type { PlanElement } from '../types.ts';
import { easedEnd } from './easedBend.ts';

export interface EasedHelix {
  readonly elements: readonly PlanElement[];
  /** Where its axis is from the start: along the tangent there, and square to it towards the hand, m. */
  readonly axisAhead: number;
  readonly axisAside: number;
}

/**
 * A helix of `radius`, m, entered and left by easements of `ease`, m, that turns through `turns` in all, left positive; the tangents at both
 * ends pass its axis at the radius and the shift of the easement. Throws RangeError when the easements alone turn further.
 */
export function easedHelix(radius: number, turns: number, ease: number): EasedHelix {
  const { angle, shift, shiftAt } = easedEnd(radius, ease);
  const round = Math.abs(turns) - angle / Math.PI;
  if (!(round > 0)) {
    throw new RangeError(
      `Easements of ${ease} m into ${radius} m turn by ${(angle / Math.PI).toFixed(3)} turns alone, not ${Math.abs(turns)}.`,
    );
  }
  const curvature = Math.sign(turns) / radius;
  const [into, out] = [transition(ease, 0, curvature), transition(ease, curvature, 0)];
  const body = helix(radius, Math.sign(turns) * round);
  const elements = ease === 0 ? [body] : [into, body, out];
  return { elements, axisAhead: shiftAt, axisAside: Math.sign(turns) * (radius + shift) };
}
