export type { SurveyActions, Wishes } from './actions.ts';
export { createSurveys, type Surveys, surveyChapter } from './createSurveys.ts';
export { readingValue, unitOf } from './readings.ts';
export type { Stop } from './stops.ts';
export { readingKinds } from './tools.ts';
export { drawCount } from './trains.ts';
export type * from './types.ts';
