export {
  createSurveys,
  type SurveyActions,
  type Surveys,
  surveyChapter,
  type Wishes,
} from './createSurveys.ts';
export { readingValue, unitOf } from './readings.ts';
export { type Stop, supportsToDeckAbove } from './stops.ts';
export { readingKinds } from './tools.ts';
export { drawCount } from './trains.ts';
export type * from './types.ts';
