import { parseReadings, type TextProblem, workSurvey } from '../../core/survey/index.ts';
import type { Objective } from '../../core/survey/types.ts';
import type { Scene, SceneSurvey } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import { type MendHooks, mend } from './mend.ts';
import { mendTask, SurveyProblem, surveyInput, type Taken, takenOf } from './surveyInput.ts';
import type { SurveyResult } from './types.ts';

/** Which survey of a scene is worked out, and what is asked of the mending. */
export interface SurveyChoice {
  /** Id of one of the scene's surveys; the first (of the track, if one is named) when left out. */
  readonly survey?: string;
  /** Id of the track; with `readings` the first that has supports when left out. */
  readonly track?: string;
  /** A pasted table of readings instead of a survey of the scene. */
  readonly readings?: string;
  readonly objective?: Objective;
}

/** Readings that could not be taken, by line. */
export class ReadingsProblem extends Error {
  override readonly name = 'ReadingsProblem';
  readonly problems: readonly TextProblem[];

  constructor(problems: readonly TextProblem[]) {
    super(problems.map(({ line, message }) => (line === 0 ? message : `line ${line}: ${message}`)).join('\n'));
    this.problems = problems;
  }
}

/**
 * Works a survey of a scene out and says how to mend the track. Rejects with SurveyProblem when the scene has no such survey or
 * track, ReadingsProblem when the pasted table has lines that cannot be read, RangeError when a reading cannot stand where it says.
 */
export async function surveyScene(
  scene: Scene,
  choice: SurveyChoice = {},
  hooks: MendHooks = {},
): Promise<SurveyResult> {
  const compiled = compileScene(scene);
  const { own, trackId, taken } = chosen(scene, choice);
  const input = surveyInput(compiled, trackId, taken);
  const survey = workSurvey(input);
  const task = mendTask(compiled, trackId, input, own?.mend, choice.objective ?? 'fewest');
  return { surveyId: own?.id ?? null, trackId, survey, task, mend: await mend(survey, task, hooks) };
}

interface Chosen {
  /** The scene's survey whose wishes for mending count. */
  readonly own: SceneSurvey | undefined;
  readonly trackId: string;
  readonly taken: Taken;
}

function chosen(scene: Scene, { survey, track, readings }: SurveyChoice): Chosen {
  const surveys = (scene.surveys ?? []).filter((one) => track === undefined || one.track === track);
  const own = survey === undefined ? surveys[0] : surveys.find(({ id }) => id === survey);
  if (survey !== undefined && own === undefined) {
    const list = surveys.map(({ id }) => id).join(', ');
    throw new SurveyProblem(`The scene has no survey "${survey}"${list === '' ? '' : `. It has: ${list}`}.`);
  }
  if (readings === undefined) {
    if (own !== undefined) return { own, trackId: own.track, taken: takenOf(own) };
    throw new SurveyProblem(
      track === undefined
        ? 'The scene holds no survey. Give it "surveys", or a table of readings.'
        : `The scene holds no survey of track "${track}". Give it "surveys", or a table of readings.`,
    );
  }
  const { problems, ...taken } = parseReadings(readings);
  if (problems.length > 0) throw new ReadingsProblem(problems);
  const trackId =
    track ?? own?.track ?? scene.tracks.find(({ supports }) => supports !== undefined)?.id ?? scene.tracks[0].id;
  const fixed = own?.track === trackId ? (own.fixed ?? []).map((number) => number - 1) : [];
  return { own: own?.track === trackId ? own : undefined, trackId, taken: { ...taken, fixed } };
}
