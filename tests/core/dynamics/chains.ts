import { type Chain, createChain, type Ground, layGround } from '../../../src/core/dynamics/chain.ts';
import { defaultForceModel } from '../../../src/core/dynamics/index.ts';
import { jointLaws } from '../../../src/core/dynamics/jointLaws.ts';
import { tabulateRoute } from '../../../src/core/dynamics/routeTables.ts';
import type { ForceModel } from '../../../src/core/dynamics/types.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import type { Track } from '../../../src/core/track/index.ts';

/** How a chain of tests differs from one at rest with every joint at its free length, on the force model and at the step of a run. */
interface ChainOptions {
  readonly step?: number;
  readonly forces?: Partial<ForceModel>;
  readonly speeds?: readonly number[];
  readonly gaps?: readonly number[];
}

/** A chain on a track with every joint at its free length and the leading origin at `lead`, for tests below the level of a trial. */
export function chainOn(track: Track, vehicles: readonly Vehicle[], lead: number, more: ChainOptions = {}): Chain {
  return chainOnGround(groundOn(track, vehicles, more.forces), vehicles, lead, more);
}

/** The route of such chains, tabulated once for several one after another: each is to `leave` before the next comes. */
export function groundOn(track: Track, vehicles: readonly Vehicle[], forces: Partial<ForceModel> = {}): Ground {
  const train = { name: 'test', vehicles };
  return layGround(tabulateRoute(track, train, { ...defaultForceModel, ...forces }, -1, track.length + 1));
}

/** A chain on ground laid before, for the same vehicles and forces. */
export function chainOnGround(
  ground: Ground,
  vehicles: readonly Vehicle[],
  lead: number,
  more: ChainOptions = {},
): Chain {
  const train = { name: 'test', vehicles };
  const forces = { ...defaultForceModel, ...more.forces };
  const { tables } = ground;
  const sigma = new Float64Array(vehicles.length);
  sigma[0] = lead;
  for (let j = 0; j + 1 < vehicles.length; j++) sigma[j + 1] = sigma[j]! - tables.spacing[j]! - (more.gaps?.[j] ?? 0);
  const laws = jointLaws(train);
  const release = Float64Array.from(laws, () => Number.POSITIVE_INFINITY);
  const chain = createChain(train, ground, laws, release, forces, more.step ?? 0.001, sigma);
  more.speeds?.forEach((speed, i) => {
    chain.setSpeed(i, speed);
  });
  return chain;
}

/** Momentum of the vehicles, kg·m/s. */
export const momentum = (chain: Chain, masses: readonly number[]) =>
  masses.reduce((sum, m, i) => sum + m * chain.speed(i), 0);
