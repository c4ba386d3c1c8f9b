import type { StudyHooks } from '../../core/study/index.ts';
import { createProbing } from '../../core/study/probing.ts';
import { type Scene, trackIdsOf } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import { type RouteMeasure, routeMeasure } from './routeMeasure.ts';
import type { ProbeBy } from './sweep.ts';
import type { Exactness, Probe, ProbeRequest } from './types.ts';

/** One railway among those compared. */
export interface Candidate {
  readonly name: string;
  readonly scene: Scene;
}

/** What one of them came to: its trials, and what its tracks take. */
export interface Compared {
  readonly name: string;
  readonly probe: Probe;
  readonly tracks: ReadonlyMap<string, RouteMeasure>;
}

/**
 * Runs the same trials of several railways and measures their tracks, side by side. A trial that one of them does not have makes
 * that one impossible to run, which its probe says. Stopped, it gives those that were done.
 */
export async function compareScenes(
  candidates: readonly Candidate[],
  trialIds: readonly string[],
  exactness: Exactness,
  probe: ProbeBy,
  hooks: StudyHooks = {},
): Promise<Compared[]> {
  const probing = createProbing<Compared>(async ([index]) => {
    const { name, scene } = candidates[index];
    const request: ProbeRequest = { scene, settings: [], trialIds, exactness };
    return { name, probe: await probe(request), tracks: measuredTracks(scene, trialIds) };
  }, hooks);
  const rows = await probing.at(candidates.map((_, index) => [index]));
  return rows.flatMap((row) => row ?? []);
}

/** Measures of the tracks that the trials run on; none when the railway cannot be laid, as its probe says why. */
function measuredTracks(scene: Scene, trialIds: readonly string[]): Map<string, RouteMeasure> {
  const used = new Set(scene.trials.filter(({ id }) => trialIds.includes(id)).flatMap(trackIdsOf));
  try {
    const laid = [...compileScene(scene).tracks].filter(([id]) => used.has(id));
    return new Map(laid.map(([id, track]) => [id, routeMeasure(track)]));
  } catch (error) {
    if (error instanceof RangeError) return new Map();
    throw error;
  }
}
