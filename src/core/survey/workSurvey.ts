import { belief } from './belief.ts';
import { estimate } from './estimate.ts';
import { explain } from './explain.ts';
import { lineShape } from './lineShape.ts';
import { nextReading } from './nextReading.ts';
import { rowSystem } from './rows.ts';
import { twistEstimate } from './twist.ts';
import type { Survey, SurveyInput } from './types.ts';

/** Most supports a survey is worked out for: beyond it the dense algebra takes minutes. */
export const mostSupports = 600;

/** Most readings of a survey, likewise. */
export const mostReadings = 2_000;

/**
 * Works a survey out: what the readings say of every support, which slips they hold, what is believed of the line, and what to
 * read next. Throws RangeError, naming the reading, for one that cannot be used, and TrackError for supports that hold no strip.
 */
export function workSurvey(input: SurveyInput): Survey {
  const { supports, readings } = input;
  if (supports.length < 2) throw new RangeError('A survey needs a track with at least two supports.');
  if (supports.length > mostSupports) throw new RangeError(`A survey takes at most ${mostSupports} supports.`);
  if (readings.length === 0) {
    throw new RangeError('The survey holds no reading along the track: a grade, a height, a spacer or a gap.');
  }
  if (readings.length > mostReadings) throw new RangeError(`A survey takes at most ${mostReadings} readings.`);
  if (!(input.setting > 0)) throw new RangeError('How closely supports are set must be more than nothing.');
  const system = rowSystem(input, lineShape(input));
  const account = explain(input, system);
  return {
    input,
    explanation: account.explanation,
    estimate: estimate(input, system, account),
    belief: belief(input, system, account),
    next: nextReading(input, system, account),
    twist: twistEstimate(input),
  };
}
