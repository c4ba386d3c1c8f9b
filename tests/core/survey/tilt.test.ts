import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Face,
  faceOf,
  lessTilt,
  longEdge,
  reversal,
  steadiness,
  type TiltSample,
  tiltStep,
} from '../../../src/core/survey/index.ts';
import { evenly } from '../../evenly.ts';

const degree = Math.PI / 180;

/** A phone as it lies: top end towards `heading`, long edge at `pitch`, rolled about it; as the rotation Z, X, Y that a browser tells. */
function orientation(heading: number, pitch: number, roll: number): { alpha: number; beta: number } {
  // Beyond a quarter turn of roll the same attitude is told from the other side: β goes to 180° - β, α turns by half.
  return Math.abs(roll) <= 90
    ? { alpha: heading * degree, beta: pitch * degree }
    : { alpha: (heading + 180) * degree, beta: (180 - pitch) * degree };
}

const looks = (grades: readonly number[], every = 0.05): TiltSample[] =>
  grades.map((grade, k) => ({ time: k * every, grade, heading: 0 }));

describe('the long edge of a phone', () => {
  it('rises by the tangent of its pitch, towards its top end', () => {
    // 3.84 % is 2.2°: the pair that every builder's table has.
    expect(longEdge(0, 2.2 * degree)?.grade).toBeCloseTo(0.0384, 4);
    expect(longEdge(0, -2.2 * degree)?.grade).toBeCloseTo(-0.0384, 4);
  });

  it('reads the same on its back and on its side, however it is rolled', () => {
    fc.assert(
      fc.property(evenly(-180, 180), evenly(-20, 20), evenly(-179, 179), (heading, pitch, roll) => {
        const { alpha, beta } = orientation(heading, pitch, roll);
        const edge = longEdge(alpha, beta);
        expect(edge?.grade).toBeCloseTo(Math.tan(pitch * degree), 12);
        const flat = longEdge(heading * degree, pitch * degree);
        expect(Math.cos((edge?.heading ?? 0) - (flat?.heading ?? 0))).toBeCloseTo(1, 12);
      }),
    );
  });

  it('is no level when it stands', () => {
    expect(longEdge(0, 80 * degree)).toBeNull();
    expect(longEdge(0, 90 * degree)).toBeNull();
  });
});

describe('a phone that lies still', () => {
  it('is so after a second and a half without more than noise and rounding', () => {
    const rounded = [0.02, 0.02 + tiltStep, 0.02];
    const still = looks(Array.from({ length: 31 }, (_, k) => rounded[k % 3]));
    expect(steadiness(still)?.still).toBe(true);
    expect(steadiness(still.slice(0, 20))?.still).toBe(false);
    expect(steadiness([])).toBeNull();
  });

  it('is not while a hand is on it, and is again when the hand has been off for as long', () => {
    const hand = Array.from({ length: 20 }, (_, k) => 0.02 + 0.01 * Math.sin(k));
    const rest = Array.from({ length: 32 }, () => 0.031);
    expect(steadiness(looks([...hand, ...rest.slice(0, 20)]))?.still).toBe(false);
    const then = steadiness(looks([...hand, ...rest]));
    expect(then?.still).toBe(true);
    expect(then?.mean).toBeCloseTo(0.031, 12);
    expect(then?.spread).toBeCloseTo(0, 12);
  });

  it('is never known better than its rounding: 0.1° is 0.05 % of grade', () => {
    const steady = steadiness(looks(Array.from({ length: 31 }, () => 0.02)));
    if (steady === null) throw new Error('It should be steady.');
    expect(faceOf(steady).deviation).toBeCloseTo(0.000504, 6);
  });
});

describe('calibration by reversal', () => {
  const face = (tilt: number, heading: number): Face => ({ grade: Math.tan(tilt), deviation: 0.0005, heading });

  it('finds bias and grade whatever both are, exactly', () => {
    fc.assert(
      fc.property(evenly(-0.1, 0.1), evenly(-0.1, 0.1), (slope, bias) => {
        const found = reversal(face(slope + bias, 1), face(bias - slope, 1 + Math.PI));
        expect(found.bias).toBeCloseTo(Math.tan(bias), 12);
        expect(found.grade).toBeCloseTo(Math.tan(slope), 12);
        expect(found.turned).toBe(true);
        // A reading of another place with the bias taken off is that place.
        expect(lessTilt(Math.tan(0.05 + bias), found.bias)).toBeCloseTo(Math.tan(0.05), 12);
      }),
    );
  });

  it('by hand: 3.0 % and, turned, -1.0 % is 1 % of bias on a grade of 2 %', () => {
    const found = reversal(
      { grade: 0.03, deviation: 0.0006, heading: 0 },
      { grade: -0.01, deviation: 0.0008, heading: 3 },
    );
    expect(found.bias).toBeCloseTo(0.01, 5);
    expect(found.grade).toBeCloseTo(0.02, 5);
    expect(found.deviation).toBeCloseTo(0.0005, 12);
  });

  it('sees a phone that was not turned, across north too', () => {
    expect(reversal(face(0.01, 0.2), face(0.01, 0.3)).turned).toBe(false);
    expect(reversal(face(0.01, 3.1), face(0.01, -3.1)).turned).toBe(false);
    expect(reversal(face(0.01, 1.5), face(0.01, -1.7)).turned).toBe(true);
  });
});
