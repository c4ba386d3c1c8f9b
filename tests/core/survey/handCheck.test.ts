import { describe, expect, it } from 'vitest';
import { handCheck, workSurvey } from '../../../src/core/survey/index.ts';
import { fortyReadings, readOff, spiral, standing, surveyOf } from './spiral.ts';

describe('the check by hand', () => {
  const survey = workSurvey(surveyOf(readOff(spiral(standing({ 6: 2.8, 17: -2.2 })), fortyReadings, 1)));

  it('shows the readings that feel the support, and that it accounts for them', () => {
    const lines = handCheck(survey, 5);
    expect(lines.length).toBeGreaterThanOrEqual(2);
    expect(lines.length).toBeLessThanOrEqual(5);
    for (const { reading, read, planned, made } of lines) {
      const { instrument } = survey.input.readings[reading];
      const tool = survey.input.instruments.find(({ id }) => id === instrument);
      // Four deviations of what is left, rounding and the builder's own 0.2 mm of setting besides.
      const allowed = 4 * (survey.estimate.fits[reading].deviation + (instrument === 'level' ? 0.0007 : 0.0002));
      expect(tool).toBeDefined();
      expect(Math.abs(read - planned - made)).toBeLessThan(allowed);
      expect(Math.abs(made)).toBeGreaterThan(survey.estimate.fits[reading].deviation);
    }
  });

  it('has the signs that a builder expects: steeper before a support that is high, flatter after it', () => {
    const lines = handCheck(survey, 5).filter(({ reading }) => survey.input.readings[reading].kind === 'grade');
    const before = lines.filter(({ reading }) => chainage(reading) < 5 * 0.4);
    const after = lines.filter(({ reading }) => chainage(reading) > 5 * 0.4);
    expect(before.length).toBeGreaterThan(0);
    expect(after.length).toBeGreaterThan(0);
    expect(before.at(-1)?.made).toBeGreaterThan(0);
    expect(after[0].made).toBeLessThan(0);
  });

  it('is empty for a support that is right', () => {
    expect(handCheck(survey, 10)).toEqual([]);
  });

  function chainage(reading: number): number {
    const one = survey.input.readings[reading];
    return one.kind === 'grade' && 'chainage' in one.at ? one.at.chainage : Number.NaN;
  }
});
