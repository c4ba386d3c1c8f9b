import {
  latinHypercube,
  type Proportion,
  proportion,
  rankCorrelation,
  type StudyHooks,
} from '../../core/study/index.ts';
import { createProbing } from '../../core/study/probing.ts';
import type { Address, Scene } from '../../scene/index.ts';
import { closestCall, type Gauge, passesBy } from './gauges.ts';
import type { ProbeBy, SweepSpec } from './sweep.ts';
import type { Probe } from './types.ts';

/** A number of the scene of which only a range is known: anything in it is as likely as anything else. */
export interface UncertainQuantity {
  readonly at: Address;
  readonly low: number;
  readonly high: number;
}

/** What a railway that is only known within ranges comes to. */
export interface Chance {
  /** Share of the draws that pass, with the 95 % range of the true share. Null when stopped before the first. */
  readonly passing: Proportion | null;
  readonly draws: readonly { readonly values: readonly number[]; readonly probe: Probe }[];
  /**
   * How surely the closest call gets better (towards 1) or worse (towards -1) as each quantity grows, in the order of the
   * quantities: which of them is worth measuring or mending. NaN where it makes no difference.
   */
  readonly influence: readonly number[];
  readonly whole: boolean;
}

/**
 * Draws values for every uncertain quantity (Latin hypercube, the seed alone decides), runs the trials with each draw and says
 * with what probability they pass. `draws` runs of all trials.
 */
export async function chanceOf(
  scene: Scene,
  quantities: readonly UncertainQuantity[],
  draws: number,
  seed: number,
  spec: SweepSpec,
  probe: ProbeBy,
  hooks: StudyHooks = {},
): Promise<Chance> {
  const cube = latinHypercube(draws, quantities.length, seed);
  const points = Array.from({ length: draws }, (_, k) =>
    quantities.map(({ low, high }, q) => low + cube[k * quantities.length + q] * (high - low)),
  );
  const probing = createProbing<Probe>((values) => {
    const settings = quantities.map(({ at }, q) => ({ at, to: values[q] }));
    return probe({ scene, settings, trialIds: spec.trialIds, exactness: spec.exactness });
  }, hooks);
  await probing.at(points);
  const done = probing.known.map(({ at, outcome }) => ({ values: at, probe: outcome }));
  const hits = done.filter((draw) => passesBy(spec.gauge, spec.limits)(draw.probe)).length;
  return {
    passing: done.length === 0 ? null : proportion(hits, done.length),
    draws: done,
    influence: influences(quantities.length, done, spec.gauge),
    whole: done.length === draws,
  };
}

function influences(count: number, done: Chance['draws'], gauge: Gauge): number[] {
  const told = done.flatMap(({ values, probe }) => {
    const call = closestCall(probe, gauge);
    return call === null ? [] : [{ values, share: call.share }];
  });
  const shares = told.map(({ share }) => share);
  return Array.from({ length: count }, (_, q) =>
    rankCorrelation(
      told.map(({ values }) => values[q]),
      shares,
    ),
  );
}
