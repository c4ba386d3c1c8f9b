export type { LimitCheck, LimitPlace, Limits, Reading } from '../../core/survey/types.ts';
export { asBuiltScene, type DrawnLine, drawnLines, drawnScenes, leansOf } from './asBuilt.ts';
export { type MendHooks, mend } from './mend.ts';
export { createInProcessSurveyHost, type SurveyHost, type SurveyQuestion } from './surveyHost.ts';
export { mendTask, SurveyProblem } from './surveyInput.ts';
export { ReadingsProblem, type SurveyChoice, surveyScene } from './surveyScene.ts';
export {
  createSurveyWorkerHost,
  type SurveyWorker,
  type SurveyWorkerScope,
  serveSurveys,
} from './surveyWorker.ts';
export type * from './types.ts';
