import { proportion } from '../../core/study/index.ts';
import { chanceOf, type Probe, passesBy, tracksUnder } from '../../sim/study/index.ts';
import type { StudyBench } from './bench.ts';
import { uncertainOf } from './tolerances.ts';
import type { ChanceState, StudyTerms, ToleranceAsk, TrialChance } from './types.ts';
import { trialsOver } from './ways.ts';

/** The same draws every time: a share that changes when asked again teaches nothing. */
const seed = 1;

/** How many of the things that decide are named, and from which rank correlation on. */
const mostNamed = 5;
const leastNamed = 0.1;

/** How sure every trial over the tracks on show is to pass when heads, supports and masses are off by what they may be. */
export async function runChance(bench: StudyBench, ask: ToleranceAsk): Promise<void> {
  const { study, pool, session } = bench;
  const base = bench.base();
  const shown = session.session.getState().trial;
  if (base === null || shown === null) return;
  const trials = trialsOver(base, tracksUnder(base, [shown.id]));
  const terms: StudyTerms = { ...bench.terms([]), limits: [], trialIds: trials.map(({ id }) => id) };
  const signal = bench.begin();
  await bench.told(async () => {
    const { scene, uncertain } = uncertainOf(base, terms.trialIds, ask);
    if (uncertain.length === 0) throw new RangeError('Nothing is said to be off: choose what may be.');
    const found: Probe[] = [];
    study.setState({ chance: { ask, ...terms, trials: [], drawn: 0, decides: [], progress: 0 } });
    const change = (part: Partial<ChanceState>) =>
      study.setState(({ chance }) => ({ chance: chance && { ...chance, ...part } }));
    const chance = await chanceOf(
      scene,
      uncertain,
      ask.draws,
      seed,
      terms,
      async (request) => {
        const probe = await pool.probe(request, { signal });
        found.push(probe);
        return probe;
      },
      {
        width: pool.width,
        stopped: () => signal.aborted,
        onProgress: (done, known) => {
          if (!signal.aborted) change({ trials: byTrial(trials, found, terms), drawn: done, progress: done / known });
        },
      },
    );
    if (signal.aborted) return;
    const decides = chance.influence
      .map((by, k) => ({ words: uncertain[k].words, by }))
      .filter(({ by }) => Math.abs(by) >= leastNamed)
      .sort((a, b) => Math.abs(b.by) - Math.abs(a.by))
      .slice(0, mostNamed);
    change({ decides, progress: null });
  });
}

/** Of each trial, the share of the draws that it passes. A railway that cannot be run passes nowhere. */
function byTrial(
  trials: readonly { readonly id: string; readonly name: string }[],
  probes: readonly Probe[],
  { gauge }: StudyTerms,
): TrialChance[] {
  const passes = passesBy(gauge);
  if (probes.length === 0) return [];
  return trials.map(({ id, name }) => {
    const own = probes.map(
      (probe): Probe => (probe.ok ? { ...probe, trials: probe.trials.filter(({ trialId }) => trialId === id) } : probe),
    );
    return { trialId: id, name, passing: proportion(own.filter(passes).length, own.length) };
  });
}
