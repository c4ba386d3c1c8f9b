export { drawLeans } from './acrossBelief.ts';
export { drawLines } from './belief.ts';
export { chanceOfKeeping } from './chances.ts';
export { compareSurveys } from './compare.ts';
export { chiSquareTail, normalQuantile, normalTail } from './distributions.ts';
export { type HandCheckLine, handCheck } from './handCheck.ts';
export { type Decks, headroomPairs } from './headroomPairs.ts';
export { usualInstruments, usualSetting } from './instruments.ts';
export {
  checkLimits,
  type ExtremeGrade,
  extremeGrades,
  gradeRow,
  keepsLimits,
  type LimitRow,
  type LimitSet,
  limitSet,
  limitTolerance,
} from './limitRows.ts';
export { bendsStrip, type LineShape, lineAt, lineShape } from './lineShape.ts';
export { limitMargins, type MendSubject, mendProblem, problemUnit } from './mendProblem.ts';
export { amount as limitAmount, describeMend, easedLimit, limitWords, type MendWords, turnsText } from './mendWords.ts';
export { parseReadings, type ReadingsText, type TextProblem } from './readingsText.ts';
export { shimTable, workableChanges } from './shimTable.ts';
export { coarsePitches, type Thread } from './threads.ts';
export {
  type Face,
  faceOf,
  lessTilt,
  longEdge,
  type Reversal,
  reversal,
  type Steadiness,
  steadiness,
  stillTime,
  type TiltSample,
  tiltStep,
} from './tilt.ts';
export { twistEstimate, twistLimit } from './twist.ts';
export type * from './types.ts';
export { usualLimits } from './usualLimits.ts';
export { describeSurvey, type SurveyShow, type SurveyWords } from './words.ts';
export { mostReadings, mostSupports, workSurvey } from './workSurvey.ts';
