import type { Track } from '../types.ts';

/** A stretch along which cant changes evenly. */
export interface CantRun {
  readonly from: number;
  readonly to: number;
  /** Change of cant for each metre of route, rad/m. */
  readonly twist: number;
}

/** How a track leans, as a builder checks it. */
export interface LaidCant {
  /** Where it leans most, first of like ones: chainage, m, and cant, rad, positive where the right rail is higher. */
  readonly most: { readonly chainage: number; readonly cant: number };
  /** The run-in that twists most; null where the cant never changes. */
  readonly steepest: CantRun | null;
  /** Stretches where cant changes and curvature does not: run in on straight track or within an arc, not along an easement. */
  readonly offEasement: readonly CantRun[];
}

/** Twist below this, rad/m, is rounding: a hundredth of a micrometre across H0 in a metre. */
const TWIST_TOLERANCE = 1e-9;

/** Change of curvature below this, 1/m², is none: an easement of a kilometre's length into any model curve has more. */
const SHARPNESS_TOLERANCE = 1e-6;

/** Run-ins that reach beyond their easement by less than this, m, are rounding of chainages. */
const OVERHANG_TOLERANCE = 1e-6;

/** The greatest cant of a track, its steepest run-in and what of it lies beside easements, exactly; null where the track is level across everywhere. */
export function laidCant(track: Track): LaidCant | null {
  const { cant: pieces, plan, length } = track;
  if (pieces === null) return null;
  let most = { chainage: 0, cant: 0 };
  let steepest: CantRun | null = null;
  const offEasement: CantRun[] = [];
  pieces.startChainage.forEach((from, k) => {
    const to = Math.min(pieces.startChainage[k + 1] ?? length, length);
    const twist = pieces.twist[k];
    for (const chainage of [from, to]) {
      const cant = pieces.cant[k] + twist * (chainage - from);
      if (Math.abs(cant) > Math.abs(most.cant)) most = { chainage, cant };
    }
    if (Math.abs(twist) < TWIST_TOLERANCE) return;
    if (steepest === null || Math.abs(twist) > Math.abs(steepest.twist)) steepest = { from, to, twist };
    plan.startChainage.forEach((start, e) => {
      if (Math.abs(plan.sharpness[e]) > SHARPNESS_TOLERANCE) return;
      const begin = Math.max(from, start);
      const end = Math.min(to, plan.startChainage[e + 1] ?? length);
      if (end - begin > OVERHANG_TOLERANCE) offEasement.push({ from: begin, to: end, twist });
    });
  });
  return { most, steepest, offEasement };
}
