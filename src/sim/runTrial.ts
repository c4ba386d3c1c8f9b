import { startRun } from '../core/dynamics/index.ts';
import type { Run } from '../core/dynamics/types.ts';
import { collectFindings } from '../core/findings/index.ts';
import { assessRun } from '../core/risks/index.ts';
import type { RiskContext } from '../core/risks/types.ts';
import { cancelled } from './cancelled.ts';
import { handOver } from './handOver.ts';
import type { CompiledTrial, RunHooks, TrialResult } from './types.ts';

/** Trial time solved between two looks at the clock, s. */
const slice = 0.05;

/** Longest stretch of work between two turns of the event loop, ms: short enough that a cancel is felt as immediate. */
const longestTurnMs = 25;

/** Share of the work that is the run itself; the rest judges it. */
const runShare = 0.9;

/**
 * Solves a trial and judges it, giving way to the event loop as it goes; the trials it goes on from are solved before it. How the work is sliced does not
 * change a bit of the result. Rejects with an AbortError when cancelled and with the solver's own error when the trial cannot run.
 */
export async function runTrial(trial: CompiledTrial, hooks: RunHooks = {}): Promise<TrialResult> {
  const { begun, run } = await solve(trial, hooks);
  const context = riskContext(trial, run);
  const risks = assessRun(context);
  await nextTurn(hooks, 1);
  return { trialId: trial.id, run, risks, findings: collectFindings(risks, context, begun) };
}

/** Solves a trial alone, giving way to the event loop as it goes. Rejects like `runTrial`. */
export const runToEnd = async (trial: CompiledTrial, hooks: RunHooks = {}): Promise<Run> =>
  (await solve(trial, hooks)).run;

/** A solved trial, as it begins: a train taken over from the trial before stands as that one left it. */
interface Solved {
  readonly begun: CompiledTrial;
  readonly run: Run;
}

async function solve(trial: CompiledTrial, hooks: RunHooks): Promise<Solved> {
  const { follows } = trial;
  if (follows === undefined) return { begun: trial, run: await runAlone(trial, hooks) };
  const trials = 1 + trialsBefore(trial);
  const part = (from: number, to: number): RunHooks => ({
    ...hooks,
    onProgress: (done) => hooks.onProgress?.(runShare * from + (to - from) * done),
  });
  const before = await solve(follows, part(0, (trials - 1) / trials));
  const begun = handOver(trial, follows, before.run);
  return { begun, run: await runAlone(begun, part((trials - 1) / trials, 1)) };
}

/** How many trials come before one. */
const trialsBefore = ({ follows }: CompiledTrial): number => (follows === undefined ? 0 : 1 + trialsBefore(follows));

/** Runs a trial from where its script says. */
async function runAlone(trial: CompiledTrial, hooks: RunHooks): Promise<Run> {
  const { path, train, script, options, stretch } = trial;
  stopIfCancelled(hooks);
  const stepper = startRun({ path, train, script, options, ...(stretch && { stretch }) });
  for (let over = false; !over; ) {
    const turnEnds = performance.now() + longestTurnMs;
    do over = stepper.advance(slice);
    while (!over && performance.now() < turnEnds);
    await nextTurn(hooks, runShare * stepper.done());
  }
  const run = stepper.finish();
  await nextTurn(hooks, runShare);
  return run;
}

/** What the risks look at, of a trial and its run. */
export const riskContext = (trial: CompiledTrial, run: Run): RiskContext => ({
  path: trial.path,
  train: trial.train,
  run,
  surroundings: trial.surroundings,
  propelled: trial.propelled,
});

/** Tells how far it is and gives way to the event loop; rejects with an AbortError when called off meanwhile. */
export async function nextTurn(hooks: RunHooks, done: number): Promise<void> {
  hooks.onProgress?.(done);
  await new Promise<void>((resolve) => setTimeout(resolve, 0));
  stopIfCancelled(hooks);
}

function stopIfCancelled(hooks: RunHooks): void {
  if (hooks.signal?.aborted) throw cancelled();
}
