import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/math/index.ts';
import {
  type CrossReading,
  describeSurvey,
  parseReadings,
  type SurveyInput,
  twistEstimate,
  twistLimit,
  usualInstruments,
  workSurvey,
} from '../../../src/core/survey/index.ts';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { fortyReadings, readOff, spacing, spiral, supports, surveyOf } from './spiral.ts';

const gauge = 0.0165;
/** Rail heads of 1.0 mm: their middles are 17.5 mm apart. */
const apart = 0.0175;
const level = usualInstruments.cross;
const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

const across = (support: number, mm: number): CrossReading => ({
  name: `line ${support + 1}`,
  instrument: level.id,
  at: { support },
  slope: mm / 1000 / apart,
  unit: 'percent',
});

/** The spiral read along as always, and across as given. */
const surveyAcross = (readings: readonly CrossReading[], more: Partial<SurveyInput> = {}): SurveyInput => {
  const plain = surveyOf(readOff(spiral(), fortyReadings, 1));
  return { ...plain, instruments: [...plain.instruments, level], cross: { gauge, readings }, ...more };
};

describe('twist across the deck', () => {
  it('is nothing where nothing was read across', () => {
    expect(twistEstimate(surveyOf(readOff(spiral(), fortyReadings, 1)))).toBeNull();
  });

  it('by hand: a right rail 1.2 mm high between level neighbours twists by 1.2 mm either side, and is to come down', () => {
    const found = twistEstimate(surveyAcross([across(3, 0), across(4, 1.2), across(5, 0)]));
    if (found === null) throw new Error('There should be a twist.');
    expect(found.places.map(({ wrong }) => wrong)).toEqual([false, true, false]);
    expect(found.places[1].departure * 1e3).toBeCloseTo(1.2, 9);
    expect(found.twists.map(({ twist }) => twist * 1e3)).toEqual([expect.closeTo(1.2, 9), expect.closeTo(-1.2, 9)]);
    expect(found.twists.map(({ over }) => over)).toEqual([expect.closeTo(spacing, 12), expect.closeTo(spacing, 12)]);
    const said = describeSurvey(workSurvey(surveyAcross([across(3, 0), across(4, 1.2), across(5, 0)])), show).twist;
    expect(said.join(' ')).toMatch(
      /At support 5 the right rail stands 1\.20\smm ± 0\.06\smm too high against the left one\. Lift the left side by 0\.60\smm/,
    );
  });

  it('is measured against what a frame takes up: half a millimetre on six gauges, 1 in 198', () => {
    expect(1 / twistLimit).toBeCloseTo(198, 9);
    const found = twistEstimate(surveyAcross([across(0, 0), across(1, 1.9), across(2, 4.2)]));
    // 400 mm / 198 = 2.02 mm.
    expect(found?.twists[0].limit).toBeCloseTo(0.00202, 5);
    expect(found?.twists.map(({ verdict }) => verdict)).toEqual(['within', 'past']);
    const doubtful = twistEstimate(surveyAcross([across(0, 0), across(1, 2.06)]));
    expect(doubtful?.twists[0].verdict).toBe('doubtful');
  });

  it('counts cant of the plan as no fault, and a level rail in canted track as one', () => {
    const cant = 0.05;
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(10)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 10, height: 0.2 },
        ],
      },
      cant: { points: [{ chainage: 0, cant }], lever: 0 },
    });
    const planned = Math.tan(cant) * apart * 1e3;
    const found = twistEstimate(surveyAcross([across(1, planned), across(2, 0)], { track }));
    expect(found?.places[0].departure).toBeCloseTo(0, 12);
    expect(found?.places.map(({ wrong }) => wrong)).toEqual([false, true]);
  });

  it('takes readings of one place together, and lets no zero of the level make a twist', () => {
    const loose = [{ ...level, zero: 0.01 }];
    const found = twistEstimate(surveyAcross([across(2, 0.4), across(2, 0.6), across(6, 0.5)], { instruments: loose }));
    expect(found?.places).toHaveLength(2);
    expect(found?.places[0].level).toBeCloseTo(0.0005, 12);
    expect(found?.twists[0].twist).toBeCloseTo(0, 12);
    // The zero is in every place's deviation and in no twist's: 17.5 mm times 1 % is 0.175 mm.
    expect(found?.places[0].deviation).toBeGreaterThan(0.000175);
    expect(found?.twists[0].deviation).toBeLessThan(0.0001);
  });

  it('calls no place of two hundred level decks wrong more often than two times: one in a hundred is allowed', () => {
    const random = seededRandom(5);
    let alarms = 0;
    for (let k = 0; k < 200; k++) {
      const deck = supports.map((_, i) => {
        // Both sides set to 0.2 mm, and the level's own error and rounding.
        const mm = 0.2 * random.normal() - 0.2 * random.normal();
        const slope = mm / 1000 / apart + level.deviation * random.normal();
        return { ...across(i, 0), slope: Math.round(slope / level.step) * level.step };
      });
      if (twistEstimate(surveyAcross(deck))?.places.some(({ wrong }) => wrong)) alarms++;
    }
    // Binomial: more than 7 of 200 at one in a hundred has a chance of one in a thousand.
    expect(alarms).toBeLessThanOrEqual(7);
  });

  it('is read from a table, in degrees too, and beside other readings of the place', () => {
    const { readings, crosses, instruments, problems } = parseReadings(
      'base = 300 mm\ncross error = 0.2 %\nsupport; grade %; cross °\n3; 2.3; 1.5\n4; ; -0.5',
    );
    expect(problems).toEqual([]);
    expect(readings).toHaveLength(1);
    // tan 1.5° = 0.026186.
    expect(crosses.map(({ slope }) => slope)).toEqual([expect.closeTo(0.026186, 6), expect.closeTo(-0.008727, 6)]);
    expect(instruments.find(({ id }) => id === 'cross-level')?.deviation).toBeCloseTo(0.002, 12);
  });

  it('names the reading that has no place or no instrument', () => {
    expect(() => twistEstimate(surveyAcross([across(99, 0)]))).toThrow(/line 100/);
    expect(() => twistEstimate(surveyAcross([{ ...across(1, 0), instrument: 'none' }]))).toThrow(/line 2/);
  });
});
