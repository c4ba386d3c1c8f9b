import { steadyRun } from '../../core/dynamics/index.ts';
import type { Run } from '../../core/dynamics/types.ts';
import { assessRun, riskById } from '../../core/risks/index.ts';
import type { RiskSeries } from '../../core/risks/types.ts';
import { nextTurn, riskContext, runToEnd } from '../runTrial.ts';
import type { CompiledTrial, RunHooks } from '../types.ts';
import { drawbarOf, footSpeedOf, leastSpeedOf, workOf } from './runFigures.ts';
import { throwsOf } from './throws.ts';
import type { Exactness, TrialMeasure } from './types.ts';

/** Way between the stations of the quasi-static pass, m: shorter than any vehicle or easement. */
const stationEvery = 0.01;

/** Runs a trial as exactly as asked and says what it came to. Rejects like `runTrial`. */
export async function measureTrial(
  trial: CompiledTrial,
  exactness: Exactness = 'run',
  hooks: RunHooks = {},
): Promise<TrialMeasure> {
  await nextTurn(hooks, 0);
  const run = exactness === 'run' ? await runToEnd(trial, hooks) : steadyPass(trial);
  return measureOf(trial, run, assessRun(riskContext(trial, run)), exactness);
}

/** What a run and its margins came to. */
function measureOf(trial: CompiledTrial, run: Run, series: readonly RiskSeries[], exactness: Exactness): TrialMeasure {
  const { path, train } = trial;
  const risks = series.flatMap(({ risk, worst }) => {
    if (worst === null) return [];
    const { plenty, unit } = riskById(risk);
    const chainage = path.reversed ? path.track.length - worst.chainage : worst.chainage;
    return [{ risk, margin: worst.margin, unit, share: worst.margin / plenty, chainage, subject: worst.subject }];
  });
  risks.sort((a, b) => a.share - b.share);
  const [from, to] = [run.chainage[run.vehicles - 1], run.chainage[(run.frames - 1) * run.vehicles]];
  const thrown = throwsOf(path.track, train.vehicles, from, to);
  return {
    trialId: trial.id,
    outcome: run.outcome,
    passes: run.outcome === 'arrived' && risks.every(({ margin }) => margin >= 0),
    risks,
    greatestDraft: run.draftPeak.reduce((most, force) => Math.max(most, force), 0),
    greatestBuff: run.buffPeak.reduce((most, force) => Math.max(most, -force), 0),
    drawbar: drawbarOf(run),
    work: exactness === 'run' ? run.energy.motor : workOf(run),
    duration: run.time[run.frames - 1],
    leastSpeed: leastSpeedOf(run, train.vehicles),
    footSpeed: footSpeedOf(run, path.track),
    endThrow: thrown.end,
    centreThrow: thrown.centre,
  };
}

/** The quasi-static pass at the greatest setting that the trial's driver gives. */
export function steadyPass({ path, train, script, options }: CompiledTrial): Run {
  const setting = script.orders.reduce((most, order) => Math.max(most, Math.abs(order.setting)), 0);
  return steadyRun({ path, train, script, options }, { every: stationEvery, setting });
}
