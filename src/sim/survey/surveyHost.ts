import { workSurvey } from '../../core/survey/index.ts';
import type { Objective } from '../../core/survey/types.ts';
import type { Scene } from '../../scene/index.ts';
import { compileScene } from '../compileScene.ts';
import { mend } from './mend.ts';
import { mendTask, SurveyProblem, surveyInput, takenOf } from './surveyInput.ts';
import type { SurveyAnswer } from './types.ts';

/** One of the scene's surveys, and what is asked of the mending; null: work the readings out, mend nothing. */
export interface SurveyQuestion {
  readonly scene: Scene;
  readonly surveyId: string;
  readonly objective: Objective | null;
}

/** Works surveys out somewhere: in this thread, or in a worker behind the same face. */
export interface SurveyHost {
  /** Rejects with an AbortError when called off, with words for the person when a reading cannot be used. */
  work(question: SurveyQuestion, signal?: AbortSignal): Promise<SurveyAnswer>;
  dispose(): void;
}

/** Works out one of the scene's surveys. Rejects with SurveyProblem or RangeError in words for the person. */
export async function answerSurvey({ scene, surveyId, objective }: SurveyQuestion): Promise<SurveyAnswer> {
  const own = scene.surveys?.find(({ id }) => id === surveyId);
  if (own === undefined) throw new SurveyProblem(`The scene has no survey "${surveyId}".`);
  const compiled = compileScene(scene);
  const input = surveyInput(compiled, own.track, takenOf(own));
  const survey = workSurvey(input);
  const task = mendTask(compiled, own.track, input, own.mend, objective ?? 'fewest');
  return { surveyId, trackId: own.track, survey, task, mend: objective === null ? null : await mend(survey, task) };
}

/** A host that works in this thread; calling off is felt between two questions only. */
export const createInProcessSurveyHost = (): SurveyHost => ({
  async work(question, signal) {
    signal?.throwIfAborted();
    const answer = await answerSurvey(question);
    signal?.throwIfAborted();
    return answer;
  },
  dispose: () => {},
});
