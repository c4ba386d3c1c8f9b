export type { LimitCheck, LimitPlace, Limits, Reading } from '../../core/survey/types.ts';
export { asBuiltScene, drawnScenes } from './asBuilt.ts';
export { type MendHooks, mend } from './mend.ts';
export { SurveyProblem } from './surveyInput.ts';
export { ReadingsProblem, type SurveyChoice, surveyScene } from './surveyScene.ts';
export type * from './types.ts';
