import { type Track, trackPoint } from '../track/index.ts';
import type { Situation } from './situation.ts';
import type { Cause } from './types.ts';

/** Wider than this a curve does not turn two vehicles against each other, m. */
const widest = 20;

/** Under two vehicles the gentler part is an entry when it is gentler than this share of the sharper. */
const entryShare = 0.5;

/** Places looked at from end to end of a pair. */
const places = 32;

/** The curve two coupled vehicles stand in: reverse, entered, or plain; its tightest radius. Empty on straight track. */
export function pairCurve({ context, frame, worst }: Situation): Cause[] {
  const { vehicles } = context.train;
  const leading = frame.placements[worst.subject];
  const trailing = frame.placements[worst.subject + 1];
  const from = trailing.rearChainage - vehicles[worst.subject + 1].rearOverhang;
  const to = leading.frontChainage + vehicles[worst.subject].frontOverhang;
  let left = 0;
  let right = 0;
  let gentlest = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= places; k++) {
    const { curvature } = trackPoint(context.path.track, from + ((to - from) * k) / places);
    left = Math.max(left, curvature);
    right = Math.max(right, -curvature);
    gentlest = Math.min(gentlest, Math.abs(curvature));
  }
  const sharpest = Math.max(left, right);
  if (sharpest * widest < 1) return [];
  const radius = 1 / sharpest;
  if (Math.min(left, right) * widest >= 1) return [{ kind: 'reverse-curve', radius }];
  return [{ kind: gentlest < entryShare * sharpest ? 'curve-entry' : 'curve', radius }];
}

/** Where curvature changes under two vehicles, m of the scene's chainage, and how long the change is given to run in. */
export interface CurveChange {
  readonly chainage: number;
  /** Length of the transition that is there, m; 0 at a jump. */
  readonly length: number;
  /** Tightest radius on either side, m. */
  readonly radius: number;
}

/** The sharpest change of curvature within `reach` of a place: a jump between elements, else a transition. Scene chainages, m. */
export function curveChangeNear(track: Track, place: number, reach: number): CurveChange | null {
  const { plan } = track;
  let found: CurveChange | null = null;
  let most = 0;
  for (const jump of track.jumps) {
    if (Math.abs(jump.chainage - place) > reach || Math.abs(jump.curvature) <= most) continue;
    const after = trackPoint(track, jump.chainage).curvature;
    const sharpest = Math.max(Math.abs(after), Math.abs(after - jump.curvature));
    most = Math.abs(jump.curvature);
    found = { chainage: jump.chainage, length: 0, radius: 1 / sharpest };
  }
  if (found !== null) return found;
  plan.elements.forEach(({ startCurvature, endCurvature, length }, k) => {
    const middle = plan.startChainage[k] + length / 2;
    const change = Math.abs(endCurvature - startCurvature);
    if (Math.abs(middle - place) > reach + length / 2 || change <= most) return;
    most = change;
    found = { chainage: middle, length, radius: 1 / Math.max(Math.abs(startCurvature), Math.abs(endCurvature)) };
  });
  return found;
}
