import { type Track, trackPoint } from '../../track/index.ts';
import type { Situation } from '../situation.ts';
import type { Cause } from '../types.ts';

/** Wider than this a curve does not turn vehicles against each other or a track beside, m. */
const widest = 20;

/** Under vehicles the gentler part is an entry when it is gentler than this share of the sharper. */
const entryShare = 0.5;

/** Places looked at from end to end. */
const places = 32;

/** The curve two coupled vehicles stand in: reverse, entered, or plain; its tightest radius. Empty on straight track. */
export function pairCurve({ context, frame, worst }: Situation): Cause[] {
  const { vehicles } = context.train;
  const leading = frame.placements[worst.subject];
  const trailing = frame.placements[worst.subject + 1];
  const from = trailing.rearChainage - vehicles[worst.subject + 1].rearOverhang;
  const to = leading.frontChainage + vehicles[worst.subject].frontOverhang;
  return curveBetween(context.path.track, from, to);
}

/** The curve one vehicle stands in, told the same way. */
export function vehicleCurve({ context, frame, worst }: Situation): Cause[] {
  const { frontOverhang, rearOverhang } = context.train.vehicles[worst.subject];
  const { frontChainage, rearChainage } = frame.placements[worst.subject];
  return curveBetween(context.path.track, rearChainage - rearOverhang, frontChainage + frontOverhang);
}

function curveBetween(track: Track, from: number, to: number): Cause[] {
  let left = 0;
  let right = 0;
  let gentlest = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= places; k++) {
    const { curvature } = trackPoint(track, from + ((to - from) * k) / places);
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

/** A place where curvature changes: where two elements meet with a jump, or a transition. */
export interface CurveChange {
  /** Scene chainage of the join, or of the middle of the transition, m. */
  readonly chainage: number;
  /** Plan element after the join, or the transition itself. */
  readonly element: number;
  /** Length of the transition, m; 0 at a jump. */
  readonly length: number;
  /** Curvatures before and after, 1/m. */
  readonly before: number;
  readonly after: number;
}

/** The sharpest change of curvature within `reach` (m) of a place: a jump where there is one, else a transition. */
export function curveChangeNear(track: Track, place: number, reach: number): CurveChange | null {
  const { elements, startChainage } = track.plan;
  let jump: CurveChange | null = null;
  let transition: CurveChange | null = null;
  elements.forEach(({ startCurvature, endCurvature, length }, element) => {
    const start = startChainage[element];
    if (element > 0 && Math.abs(start - place) <= reach) {
      const before = elements[element - 1].endCurvature;
      const change = { chainage: start, element, length: 0, before, after: startCurvature };
      if (before !== startCurvature && (jump === null || size(change) > size(jump))) jump = change;
    }
    if (startCurvature !== endCurvature && Math.abs(start + length / 2 - place) <= reach + length / 2) {
      const change = { chainage: start + length / 2, element, length, before: startCurvature, after: endCurvature };
      if (transition === null || size(change) > size(transition)) transition = change;
    }
  });
  return jump ?? transition;
}

const size = ({ before, after }: CurveChange): number => Math.abs(after - before);
