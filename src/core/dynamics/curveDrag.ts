import type { Vehicle } from '../stock/types.ts';
import { defaultForceModel } from './defaults.ts';
import type { ForceModel } from './types.ts';

/** Curve drag as a share of weight; low ≤ nominal ≤ high. */
export interface CurveDragBand {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/**
 * Curve drag of a vehicle on a radius (m), as shares of weight. Nominal is μ·(A·gauge + B·rigid wheelbase)/R, the sliding of solid
 * axles and of a yawed wheelbase (Protopapadakis). No two measurements at model scale agree, so there is a band about it: low
 * is nominal but at most `curveLowShare`, high is `curveHighFactor`·gauge/R but at least nominal. `curveFactor` scales all three.
 */
export function curveDragBand(vehicle: Vehicle, radius: number, forces: ForceModel = defaultForceModel): CurveDragBand {
  const curvature = 1 / Math.abs(radius);
  const share = (curveDrag: ForceModel['curveDrag']) => curveDragShare(vehicle, curvature, { ...forces, curveDrag });
  return { low: share('low'), nominal: share('nominal'), high: share('high') };
}

/** Curve drag of a vehicle as a share of weight at a curvature (1/m, either sign), where in the band `forces` says. */
export function curveDragShare(
  { gauge, rigidWheelbase }: Vehicle,
  curvature: number,
  {
    curveDrag,
    curveFactor,
    curveFriction,
    curveGaugeFactor,
    curveWheelbaseFactor,
    curveLowShare,
    curveHighFactor,
  }: ForceModel,
): number {
  const bend = Math.abs(curvature);
  const nominal = curveFriction * (curveGaugeFactor * gauge + curveWheelbaseFactor * rigidWheelbase) * bend;
  switch (curveDrag) {
    case 'nominal':
      return curveFactor * nominal;
    case 'low':
      return curveFactor * Math.min(nominal, curveLowShare);
    case 'high':
      return curveFactor * Math.max(nominal, curveHighFactor * gauge * bend);
  }
}
