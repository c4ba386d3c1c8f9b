import { locate } from '../../track/bucket.ts';
import type { Track } from '../../track/types.ts';

/** Curvature of the plan (1/m) at a chainage, 0 beyond the ends: `trackPoint` without all the rest of it. */
export function curvatureAt({ plan, length }: Track, chainage: number): number {
  if (chainage < 0 || chainage > length) return 0;
  const k = locate(plan.bucket, plan.startChainage, chainage);
  return plan.startCurvature[k] + plan.sharpness[k] * (chainage - plan.startChainage[k]);
}

/** Whether a track curves or leans anywhere; where it does neither nothing is thrown or drawn aside. */
export const leansOrCurves = ({ plan, cant }: Track): boolean =>
  cant !== null || plan.elements.some((one) => one.startCurvature !== 0 || one.endCurvature !== 0);
