import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineAt, lineShape } from '../../../src/core/survey/index.ts';
import { rowSystem } from '../../../src/core/survey/rows.ts';
import { makeTrack, straight, trackPoint } from '../../../src/core/track/index.ts';
import { evenly } from '../../evenly.ts';
import { gradeAt, heightAt, level, ramp, readOff, spiral, standing, supports, surveyOf } from './spiral.ts';

describe('a reading as a linear function of the supports', () => {
  it('of a level whose feet stand on two supports is their difference over the base', () => {
    const input = surveyOf([gradeAt(0.6, 0.03, { base: 0.4 })], { track: ramp(9.3) });
    const [row] = rowSystem(input, lineShape(input)).rows;
    // The base lies along the slope, so in plan the feet are nearer by 1/√(1+g²): 0.04 %.
    const chord = 0.4 / Math.sqrt(1 + 0.03 ** 2);
    expect(row.planned).toBeCloseTo(0.022, 12);
    expect(row.heights[1] * chord).toBeCloseTo(-1, 3);
    expect(row.heights[2] * chord).toBeCloseTo(1, 3);
    expect(Math.abs(row.heights[5] * chord)).toBeLessThan(1e-3);
  });

  it('is what a track built so shows, for any supports off by any amount', () => {
    fc.assert(
      fc.property(
        fc.array(evenly(-0.004, 0.004), { minLength: 24, maxLength: 24 }),
        fc.double({ min: 0.3, max: 8.8, noNaN: true }),
        (departures, at) => {
          const shape = lineShape(surveyOf([]));
          const built = spiral(departures);
          const told = lineAt(shape, at, 0);
          const sum = told.weights.reduce((all, weight, i) => all + weight * departures[i], told.planned);
          expect(sum).toBeCloseTo(trackPoint(built, at).z, 12);
        },
      ),
    );
    // Anchored: at a support the strip stands where the support does.
    expect(lineAt(lineShape(surveyOf([])), supports[9], 0).weights[9]).toBeCloseTo(1, 14);
  });

  it('errs by instrument² + step²/12', () => {
    const input = surveyOf([gradeAt(1, 0.022), heightAt(3, 0)]);
    const [grade, height] = rowSystem(input, lineShape(input)).rows;
    // 0.05 % and 0.1 %/√12 = 0.0289 %: together 0.0577 %; 0.3 mm and 0.5/√12 = 0.144 mm: 0.333 mm.
    expect(grade.deviation * 100).toBeCloseTo(0.0577, 4);
    expect(height.deviation * 1e3).toBeCloseTo(0.3329, 4);
  });

  it('of a level on a curve stands on the chord: on 600 mm radius 300 mm of level span 303.2 mm of track', () => {
    // 2·600·asin(300/1200) = 303.23 mm, by hand; a grade of 2.2 % along the track is then read as 2.2 % · 303.23/300.
    // Five digits: the slope shortens the chord by 0.02 %, which changes the ratio by 5 in a million.
    const input = surveyOf([gradeAt(2, 0.022)]);
    const [row] = rowSystem(input, lineShape(input)).rows;
    expect(row.planned).toBeCloseTo((0.022 * 303.23) / 300, 5);
  });

  it('of a straightedge on a vertical curve of 24.8 m radius is the gap c²/8R under its middle', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(3)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 1.5, height: 0, curve: { length: 2 } },
          { chainage: 3, height: 1.5 * (2 / 24.8) },
        ],
      },
    });
    const reading = {
      kind: 'gap',
      name: 'gap',
      instrument: 'line',
      at: { chainage: 1.5 },
      base: 0.3048,
      gap: 0,
    } as const;
    const input = surveyOf([reading], { track, supports: [0, 1, 2, 3] });
    const [row] = rowSystem(input, lineShape(input)).rows;
    // 304.8² / (8 · 24 800) = 0.468 mm, by hand; the straightedge leans at 4 %, which shortens it by 0.08 % in plan.
    expect(row.planned * 1e3).toBeCloseTo(0.468, 2);
  });

  it('turned end for end carries the zero error the other way', () => {
    const input = surveyOf([gradeAt(1, 0.022), gradeAt(1, 0.022, { face: -1 })]);
    const { rows, others } = rowSystem(input, lineShape(input));
    expect(others).toEqual([{ kind: 'zero', id: 'level' }]);
    expect(rows.map((row) => row.others)).toEqual([[[0, 1]], [[0, -1]], [[0, 1]]]);
    expect(rows[2]).toMatchObject({ reading: -1, deviation: level.zero });
  });

  it('that has no place, no instrument or no size is refused by its name', () => {
    const refused = (reading: Parameters<typeof surveyOf>[0][number]) => () => {
      const input = surveyOf([reading]);
      return rowSystem(input, lineShape(input));
    };
    expect(refused(heightAt(24, 0))).toThrow(/^height 25: support 25 is not on this track, which has 24 supports/);
    expect(refused(gradeAt(1, 0.02, { instrument: 'eye' }))).toThrow(/there is no instrument “eye”/);
    expect(refused(gradeAt(1, 0.02, { base: 0 }))).toThrow(/base must be longer than nothing/);
    expect(refused(gradeAt(1, 0.02, { base: 1.3 }))).toThrow(/a base of 1300 mm finds no two places/);
    expect(refused(heightAt(1, Number.NaN))).toThrow(/a number that is none/);
  });
});

it('readings taken off a built track have the stated errors', () => {
  const departures = standing({ 6: 2.8 });
  const read = readOff(spiral(departures), [heightAt(5, 0)], 1);
  expect(read[0].kind === 'height' ? read[0].height : 0).toBeCloseTo(2.0 * 0.022 + 0.0028, 2);
});
