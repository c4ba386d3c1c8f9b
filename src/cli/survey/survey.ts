import { readFileSync, statSync } from 'node:fs';
import type { Objective } from '../../core/survey/types.ts';
import type { Scene } from '../../scene/index.ts';
import { ReadingsProblem, type SurveyChoice, SurveyProblem, surveyScene } from '../../sim/survey/index.ts';
import { BadInput, type ExitCode, exitCodes } from '../exitCodes.ts';
import { type SurveyReport, surveyReport } from './surveyReport.ts';
import { surveyText, surveyWords } from './surveyText.ts';

/** What `gradewright survey` is asked. */
export interface SurveyAsked {
  readonly survey?: string | undefined;
  readonly track?: string | undefined;
  /** Path of a table of readings. */
  readonly readings?: string | undefined;
  readonly objective?: string | undefined;
}

export interface SurveyOutput {
  readonly report: SurveyReport;
  readonly text: string;
  /** 0 nothing to mend, 1 something to mend. */
  readonly exitCode: ExitCode;
}

/** Larger files are no tables of readings, bytes. */
const largestTable = 2_000_000;

const objectives: readonly Objective[] = ['fewest', 'flattest', 'least'];

/** Works out a survey of a scene. Rejects with BadInput for a choice that leads to nothing and readings that cannot be used. */
export async function runSurvey(scene: Scene, asked: SurveyAsked): Promise<SurveyOutput> {
  const objective = objectives.find((one) => one === (asked.objective ?? 'fewest'));
  if (objective === undefined) {
    throw new BadInput(`--objective is one of ${objectives.join(', ')}, not "${asked.objective}".`);
  }
  const choice: SurveyChoice = {
    objective,
    ...(asked.survey === undefined ? {} : { survey: asked.survey }),
    ...(asked.track === undefined ? {} : { track: asked.track }),
    ...(asked.readings === undefined ? {} : { readings: tableOf(asked.readings) }),
  };
  try {
    const result = await surveyScene(scene, choice);
    const words = surveyWords(result);
    const { survey, mend } = words;
    const text = [
      mend.headline,
      ...mend.steps,
      ...mend.notes,
      survey.verdict,
      ...survey.supports,
      ...survey.twist,
      ...survey.open,
      survey.reach,
    ];
    return {
      report: surveyReport(scene.name, result, { text, slips: survey.slips, next: survey.next, twist: survey.twist }),
      text: surveyText(scene.name, result),
      exitCode: result.mend.outcome === 'nothing-to-mend' ? exitCodes.passes : exitCodes.fails,
    };
  } catch (error) {
    if (error instanceof ReadingsProblem) throw new BadInput(`${asked.readings} cannot be read:\n${error.message}`);
    if (error instanceof SurveyProblem || error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
}

function tableOf(path: string): string {
  try {
    const { size } = statSync(path);
    if (size > largestTable) throw new Error(`it is ${size} bytes long, which no table of readings is`);
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new BadInput(`Cannot read ${path}: ${error instanceof Error ? error.message : String(error)}`);
  }
}
