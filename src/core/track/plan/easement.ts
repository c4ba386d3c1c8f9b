import { brent, fresnel, sin } from '../../math/index.ts';

/** The clothoid that eases a straight into an arc, as it is set out from the straight. */
export interface Easement {
  /** Plan length, m. */
  readonly length: number;
  /** Turning from end to end, rad. */
  readonly angle: number;
  /** The end along the straight from where the easement starts, and off it, m. */
  readonly ahead: number;
  readonly offset: number;
  /** How far the arc, carried back, stays clear of the straight, m. */
  readonly shift: number;
  /** Where along the straight from the start the carried-back arc is nearest to it, m. */
  readonly shiftAt: number;
}

/**
 * The easement of `length`, m, from a straight into an arc of `radius`, m, exactly.
 *
 * With w = √(L/πR): ahead = √(πRL)·C(w), offset = √(πRL)·S(w), turning L/2R; shift = offset - R(1 - cos), nearly L²/24R.
 * Throws RangeError unless both are positive and the easement turns through less than a right angle.
 */
export function easement(radius: number, length: number): Easement {
  if (!(radius > 0) || !(length > 0))
    throw new RangeError(`An easement needs a positive radius and length, not ${radius} and ${length} m.`);
  const angle = length / (2 * radius);
  if (!(angle < Math.PI / 2)) {
    throw new RangeError(
      `An easement of ${length} m into a radius of ${radius} m would turn through a right angle or more.`,
    );
  }
  const { c, s } = fresnel(Math.sqrt(length / (Math.PI * radius)));
  const scale = Math.sqrt(Math.PI * radius * length);
  const half = sin(angle / 2);
  return {
    length,
    angle,
    ahead: scale * c,
    offset: scale * s,
    shift: scale * s - 2 * radius * half * half,
    shiftAt: scale * c - radius * sin(angle),
  };
}

/**
 * The length, m, of the easement whose arc of `radius`, m, clears the straight by `shift`, m: the exact root that the
 * handbook's √(24·f·R) approaches for short easements.
 * Throws RangeError unless both are positive and an easement of less than a right angle can give the shift.
 */
export function easementLengthForShift(radius: number, shift: number): number {
  const first = Math.sqrt(24 * shift * radius);
  const longest = Math.PI * radius * (1 - Number.EPSILON);
  if (!(radius > 0) || !(shift > 0) || first > longest || easement(radius, longest).shift < shift) {
    throw new RangeError(`No easement into a radius of ${radius} m shifts the arc by ${shift} m.`);
  }
  return brent((length) => easement(radius, length).shift - shift, first / 2, longest);
}
