import type { Scene, SceneTrial } from '../../scene/index.ts';
import { parseScene, trialsBefore } from '../../scene/index.ts';
import {
  type CompiledTrial,
  compileScene,
  compileTrial,
  NotReached,
  runTrial,
  type TrialResult,
} from '../../sim/index.ts';
import { BadInput, type ExitCode, exitCodes } from '../exitCodes.ts';
import { problemText } from '../readScene.ts';
import { unknownId } from '../unknownId.ts';
import { trialEntry } from './trialEntry.ts';
import type { ReportVerdict, TrialReport } from './trialReport.ts';
import { trialText } from './trialText.ts';

/** Which trials of a scene to run. */
export interface TrialChoice {
  /** Only this trial. */
  readonly trial?: string | undefined;
  /** Only trials of this train; together with `trial`: that trial with this train instead of its own. */
  readonly train?: string | undefined;
  /** Say of every risk what it is. */
  readonly explain?: boolean | undefined;
}

export interface TrialOutput {
  readonly report: TrialReport;
  readonly text: string;
  readonly exitCode: ExitCode;
}

/** Told while trials run: name of the one under way, share of all work done 0..1. */
export type Progress = (name: string, done: number) => void;

/**
 * Runs trials of a scene, one after the other, and reports on them. Throws BadInput when the choice leads to nothing that
 * can be run.
 */
export async function runTrials(scene: Scene, choice: TrialChoice, onProgress?: Progress): Promise<TrialOutput> {
  const chosen = chooseTrials(scene, choice);
  const trials = compile(chosen);
  const entries: TrialReport['trials'] = [];
  const notReached: NonNullable<TrialReport['notReached']> = [];
  const texts: string[] = [];
  for (const [index, trial] of trials.entries()) {
    const { id, name } = trial;
    let result: TrialResult;
    try {
      result = await runTrial(trial, {
        onProgress: (done) => onProgress?.(name, (index + done) / trials.length),
      });
    } catch (error) {
      if (error instanceof NotReached) {
        notReached.push({ id, name, reason: error.message });
        texts.push(`${name} (${id})\n  Not reached: fails.\n  ${error.message}`);
        continue;
      }
      throw new BadInput(`Trial "${id}" cannot run: ${error instanceof Error ? error.message : String(error)}`);
    }
    const entry = trialEntry(trial, result);
    entries.push(entry);
    texts.push(trialText(trial, result, entry, choice));
  }
  const verdict = notReached.length > 0 ? 'fails' : worst(entries.map((entry) => entry.verdict));
  return {
    report: {
      report: 'gradewright-trial',
      version: 1,
      scene: scene.name,
      verdict,
      trials: entries,
      ...(notReached.length > 0 && { notReached }),
    },
    text: `${scene.name}\n\n${texts.join('\n\n')}\n`,
    exitCode: verdict === 'fails' ? exitCodes.fails : exitCodes.passes,
  };
}

function compile({ scene, trials }: Chosen): CompiledTrial[] {
  try {
    const compiled = compileScene(scene);
    return trials.map(({ id }) => compileTrial(compiled, id));
  } catch (error) {
    throw new BadInput(error instanceof Error ? error.message : String(error));
  }
}

interface Chosen {
  readonly scene: Scene;
  readonly trials: readonly SceneTrial[];
}

function chooseTrials(scene: Scene, { trial, train }: TrialChoice): Chosen {
  if (train !== undefined && !scene.trains.some((one) => one.id === train))
    throw unknownId('train', train, scene.trains);
  if (trial === undefined) {
    const trials = scene.trials.filter((one) => train === undefined || one.train === train);
    if (trials.length > 0) return { scene, trials };
    throw new BadInput(
      `No trial of this scene runs train "${train}". Name a trial too, and it will run with that train.`,
    );
  }
  const own = scene.trials.find((one) => one.id === trial);
  if (own === undefined) throw unknownId('trial', trial, scene.trials);
  if (train === undefined || train === own.train) return { scene, trials: [own] };
  const { opensWith: _opens, ...rest } = scene;
  const trials = [...trialsBefore(scene, own), own].map((one) => ({ ...one, train }));
  const parsed = parseScene({ ...rest, trials });
  if (!parsed.ok) {
    const problems = parsed.problems.map(problemText).join('\n');
    throw new BadInput(`Trial "${trial}" cannot run with train "${train}":\n${problems}`);
  }
  return { scene: parsed.scene, trials: parsed.scene.trials.filter(({ id }) => id === trial) };
}

const gravity: readonly ReportVerdict[] = ['fails', 'near', 'passes'];

const worst = (verdicts: readonly ReportVerdict[]): ReportVerdict =>
  gravity.find((one) => verdicts.includes(one)) ?? 'passes';
