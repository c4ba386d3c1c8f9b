import { type Chain, createChain } from '../../../src/core/dynamics/chain.ts';
import { Row } from '../../../src/core/dynamics/chainRows.ts';
import { defaultForceModel } from '../../../src/core/dynamics/index.ts';
import { tabulateRoute } from '../../../src/core/dynamics/routeTables.ts';
import { jointLaws } from '../../../src/core/dynamics/run.ts';
import { createEngine } from '../../../src/core/dynamics/traction.ts';
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
  const engines = vehicles.flatMap((v, i) => (v.drive ? [createEngine(v, i)] : []));
  const laws = jointLaws(train);
  const release = Float64Array.from(laws, () => Number.POSITIVE_INFINITY);
  const chain = createChain(train, tables, laws, release, engines, forces, more.step ?? 0.001, sigma);
  more.speeds?.forEach((speed, i) => {
    const v = i * Row.stride;
    chain.state.rows[v + Row.speed] = speed;
    chain.state.rows[v + Row.held] = speed === 0 ? 1 : 0;
    chain.state.rows[v + Row.slide] = Math.sign(speed);
  });
  return chain;
}

/** Momentum of the vehicles, kg·m/s. */
export const momentum = (chain: Chain, masses: readonly number[]) =>
  masses.reduce((sum, m, i) => sum + m * chain.speed(i), 0);
