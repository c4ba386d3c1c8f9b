import { type Line, mapArea, sweepLine } from '../../core/study/index.ts';
import type { Scene } from '../../scene/index.ts';
import { type Probe, passesBy, tracksUnder } from '../../sim/study/index.ts';
import type { StudyBench } from './bench.ts';
import { easementsUnder, knobAt, usualRange } from './knobs.ts';
import { propelledTrials } from './propelled.ts';
import type { EasementQuestion, MapAsk, StudyTerms, SweepAsk, SweepState } from './types.ts';

/** Even values of a sweep; the edges come on top. */
const sweepPoints = 9;

/** An easement is asked about to the millimetre. */
const easementWithinMm = 1;

export interface SweepRuns {
  sweep(ask: SweepAsk): Promise<void>;
  map(ask: MapAsk): Promise<void>;
  /** The shortest easement, of all of the track or route on show alike, with which every train that uses it passes when it is propelled. */
  askEasement(): Promise<void>;
}

/** Sweeps of one number and maps of two: every value probed is shown as it comes. */
export function createSweepRuns(bench: StudyBench): SweepRuns {
  const { study, pool, session } = bench;

  async function runSweep(
    base: Scene,
    ask: SweepAsk,
    terms: StudyTerms,
    question: EasementQuestion | null,
    signal: AbortSignal,
  ): Promise<Line<Probe> | null> {
    study.setState({ sweep: { ask, ...terms, question, points: [], line: null, progress: 0 }, map: null });
    const change = (make: (sweep: SweepState) => Partial<SweepState>) =>
      study.setState(({ sweep }) => ({ sweep: sweep && { ...sweep, ...make(sweep) } }));
    const whole = knobAt(base, ask.at)?.whole === true;
    const spec = whole ? { ...ask, points: Math.abs(ask.to - ask.from) + 1, edgeWithin: 1 } : ask;
    const line = await sweepLine(
      spec,
      async (to) => {
        const probe = await bench.probe(terms, base, [{ at: ask.at, to }], signal);
        if (!signal.aborted) change(({ points }) => ({ points: [...points, { at: to, probe }] }));
        return probe;
      },
      passesBy(terms.gauge, terms.limits),
      {
        width: pool.width,
        stopped: () => signal.aborted,
        onProgress: (done, known) => change(() => ({ progress: done / known })),
      },
    );
    if (signal.aborted) return null;
    change(() => ({ line, progress: 1 }));
    return line;
  }

  return {
    async sweep(ask) {
      const base = bench.base();
      if (base === null) return;
      const signal = bench.begin();
      await bench.told(async () => {
        await runSweep(base, ask, bench.terms([ask.at]), null, signal);
      });
    },
    async map(ask) {
      const base = bench.base();
      if (base === null) return;
      const signal = bench.begin();
      const terms = bench.terms([ask.across.at, ask.up.at]);
      study.setState({ map: { ask, ...terms, points: [], area: null, progress: 0 }, sweep: null });
      await bench.told(async () => {
        const area = await mapArea(
          ask,
          async (across, up) => {
            const settings = [
              { at: ask.across.at, to: across },
              { at: ask.up.at, to: up },
            ];
            const probe = await bench.probe(terms, base, settings, signal);
            if (!signal.aborted) {
              study.setState(({ map }) => ({ map: map && { ...map, points: [...map.points, { across, up, probe }] } }));
            }
            return probe;
          },
          passesBy(terms.gauge, terms.limits),
          {
            width: pool.width,
            stopped: () => signal.aborted,
            onProgress: (done, known) =>
              study.setState(({ map }) => ({ map: map && { ...map, progress: done / known } })),
          },
        );
        if (!signal.aborted) study.setState(({ map }) => ({ map: map && { ...map, area, progress: 1 } }));
      });
    },
    async askEasement() {
      const now = bench.base();
      const trialId = session.session.getState().trial?.id;
      if (now === null || trialId === undefined) return;
      const signal = bench.begin();
      await bench.told(async () => {
        const { scene, trialIds } = propelledTrials(now, tracksUnder(now, [trialId]));
        const at = easementsUnder(scene, trialId);
        const knob = knobAt(scene, at);
        if (knob === null) throw new RangeError('Nothing bends on this track or route that an easement could ease.');
        if (trialIds.length === 0) throw new RangeError('No train of this track or route can be propelled over it.');
        const [from, to] = usualRange(knob);
        const ask = { at, from, to, points: sweepPoints, edgeWithin: easementWithinMm };
        const terms: StudyTerms = { ...bench.terms([at]), gauge: 'all', limits: [], trialIds };
        const question: EasementQuestion = { kind: 'easement', trains: trialIds.length };
        const line = await runSweep(scene, ask, terms, question, signal);
        if (line === null) return;
        const full = await shortestInFull(line, terms, (lengthMm) =>
          bench.probe({ ...terms, exactness: 'run' }, scene, [{ at, to: lengthMm }], signal),
        );
        study.setState(({ sweep }) => ({ sweep: sweep && { ...sweep, question: { ...question, full } } }));
      });
    },
  };
}

/** Steps upward from the edge by even running, mm, until the full runs pass too; then no more is asked. */
const fullSteps = [0, 1, 2, 4, 8, 16, 32, 64, 128];

/** The shortest easement from which on all values pass, confirmed in full, mm; null when none passes. */
async function shortestInFull(
  { points, edges }: Line<Probe>,
  terms: StudyTerms,
  inFull: (lengthMm: number) => Promise<Probe>,
): Promise<number | null> {
  const good = passesBy(terms.gauge, terms.limits);
  const longest = points.at(-1);
  if (longest === undefined || !good(longest.outcome)) return null;
  const shortest = edges.at(-1)?.passes ?? points[0].at;
  if (terms.exactness === 'run') return shortest;
  for (const step of fullSteps) {
    const lengthMm = Math.min(Math.ceil(shortest) + step, longest.at);
    if (good(await inFull(lengthMm))) return lengthMm;
    if (lengthMm === longest.at) break;
  }
  return null;
}
