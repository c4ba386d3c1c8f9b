import { transferredWeight } from '../../stock/index.ts';
import type { RiskContext } from '../types.ts';
import { slipShares } from './wheelSlip.ts';

/** What the driven wheels of every engine can hold before they break loose, whether they spin at the moment or not. */
export interface StaticGrip {
  /** Share of their turning that is lost at a frame, 0 to 1, frames × locomotives: 0 while they grip. */
  readonly slip: Float64Array;
  /** Grip of locomotive k at a frame, N. */
  at(frame: number, k: number): number;
}

/**
 * Static grip of every engine of a run, N. While wheels grip it is the run's own. While they spin, the run's G = μ·(N - c·P) belongs to
 * the drawbar pull P that sliding wheels give, R at the rail. Standing at their limit they would give G′ instead, the drawbar G′ - R more,
 * and that takes weight off them: G′ = G - μ·c·(G′ - R), so G′ = (G + μ·c·R)/(1 + μ·c), c the weight a newton of pull moves.
 */
export function staticGrip(context: RiskContext): StaticGrip {
  const { run, train } = context;
  const width = run.locomotives.length;
  const slip = slipShares(run);
  const moved = Float64Array.from(run.locomotives, (vehicle) => {
    const { drive } = train.vehicles[vehicle];
    return drive === null ? 0 : drive.adhesion * transferredWeight(drive, 1);
  });
  return {
    slip,
    at(frame, k) {
      const row = frame * width + k;
      if (slip[row] === 0) return run.gripLimit[row];
      return (run.gripLimit[row] + moved[k] * Math.abs(run.railForce[row])) / (1 + moved[k]);
    },
  };
}
