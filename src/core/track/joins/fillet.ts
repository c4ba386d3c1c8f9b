import { sin, tan } from '../../math/index.ts';
import type { PlanElement } from '../types.ts';
import { type BendSpec, bendElements, easedEnd } from './easedBend.ts';

/** A bend between two straights that meet. Lengths m. */
export interface Fillet {
  /** Null when the easements alone turn further than the straights do. */
  readonly elements: readonly PlanElement[] | null;
  /** From the start of the bend to the intersection of the straights, and from there to its end. */
  readonly tangentIn: number;
  readonly tangentOut: number;
  /** Turning left to the arc, rad; negative by how much the easements overlap. */
  readonly arcAngle: number;
  /** From the intersection to the middle of the arc, when both easements are alike; NaN otherwise. */
  readonly external: number;
}

/**
 * The bend of `spec` that rounds a corner of `deflection`, rad, left positive, less than half a turn. With shifts p and shift places k of its
 * easements: tangent = (R + p₁)·tan Δ/2 + (p₂ - p₁)/sin Δ + k₁, and the other way round; external = (R + p)/cos Δ/2 - R (route surveying, spiralled
 * curves; unequal spirals by the same construction). Throws RangeError for a corner of nothing or half a turn and over.
 */
export function fillet(spec: BendSpec, deflection: number): Fillet {
  const turn = Math.abs(deflection);
  if (!(turn > 0) || !(turn < Math.PI)) {
    throw new RangeError(
      `Straights that turn by ${deflection} rad have no corner to round: more than 0 and less than half a turn.`,
    );
  }
  const { radius, easeIn, easeOut } = spec;
  const [first, last] = [easedEnd(radius, easeIn), easedEnd(radius, easeOut)];
  const half = tan(turn / 2);
  const unlike = (last.shift - first.shift) / sin(turn);
  return {
    elements: bendElements(spec, deflection),
    tangentIn: (radius + first.shift) * half + unlike + first.shiftAt,
    tangentOut: (radius + last.shift) * half - unlike + last.shiftAt,
    arcAngle: turn - first.angle - last.angle,
    external: easeIn === easeOut ? (radius + first.shift) * Math.sqrt(1 + half * half) - radius : Number.NaN,
  };
}
