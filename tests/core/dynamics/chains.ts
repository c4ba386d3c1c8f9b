import { type Chain, createChain, layGround } from '../../../src/core/dynamics/chain.ts';
import { defaultForceModel } from '../../../src/core/dynamics/index.ts';
import { tabulateRoute } from '../../../src/core/dynamics/routeTables.ts';
import { jointLaws } from '../../../src/core/dynamics/run.ts';
import type { ForceModel } from '../../../src/core/dynamics/types.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import type { Track } from '../../../src/core/track/index.ts';

/** A chain on a track with every joint at its free length and the leading origin at `lead`, for tests below the level of a trial. */
export function chainOn(
  track: Track,
  vehicles: readonly Vehicle[],
  lead: number,
  more: { step?: number; forces?: Partial<ForceModel>; speeds?: readonly number[]; gaps?: readonly number[] } = {},
): Chain {
  const train = { name: 'test', vehicles };
  const forces = { ...defaultForceModel, ...more.forces };
  const tables = tabulateRoute(track, train, forces, -1, track.length + 1);
  const sigma = new Float64Array(vehicles.length);
  sigma[0] = lead;
  for (let j = 0; j + 1 < vehicles.length; j++) sigma[j + 1] = sigma[j]! - tables.spacing[j]! - (more.gaps?.[j] ?? 0);
  const laws = jointLaws(train);
  const release = Float64Array.from(laws, () => Number.POSITIVE_INFINITY);
  const chain = createChain(train, layGround(tables), laws, release, forces, more.step ?? 0.001, sigma);
  more.speeds?.forEach((speed, i) => {
    chain.setSpeed(i, speed);
  });
  return chain;
}

/** Momentum of the vehicles, kg·m/s. */
export const momentum = (chain: Chain, masses: readonly number[]) =>
  masses.reduce((sum, m, i) => sum + m * chain.speed(i), 0);
