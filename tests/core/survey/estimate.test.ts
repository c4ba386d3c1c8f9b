import { describe, expect, it } from 'vitest';
import { chiSquareTail, drawLines, type Reading, workSurvey } from '../../../src/core/survey/index.ts';
import { fortyReadings, gradeAt, heightAt, readOff, spacing, spiral, supports, surveyOf } from './spiral.ts';

describe('stated deviations', () => {
  it('cover the truth as often as they say, over 200 surveys of known truth', () => {
    let inside = 0;
    let all = 0;
    const truth = supports.map((_, i) => 0.0004 * Math.sin(i));
    for (let seed = 1; seed <= 200; seed++) {
      const readings = readOff(spiral(truth), fortyReadings, 5000 + seed);
      // No more than the estimate itself is on trial: nothing stands out, so nothing is put right.
      const { estimate, explanation } = workSurvey(surveyOf(readings));
      if (explanation.slips.length > 0) continue;
      for (const { departure, deviation, support } of estimate.supports.slice(1)) {
        all++;
        if (Math.abs(departure - (truth[support] - truth[0])) < 1.96 * deviation) inside++;
      }
    }
    // 95 % expected. Supports of one survey go together, so some 200 × 5 are independent: deviation 0.7 %; three of them, and rounding
    // that is flat and not normal.
    expect(all).toBeGreaterThan(4000);
    expect(inside / all).toBeGreaterThan(0.925);
    expect(inside / all).toBeLessThan(0.975);
  });

  it('of draws from the belief are its own covariance', () => {
    const { belief } = workSurvey(surveyOf(readOff(spiral(), fortyReadings, 1)));
    const n = supports.length;
    const lines = drawLines(belief, 4000, 3);
    for (const [i, j] of [
      [5, 5],
      [5, 6],
      [16, 10],
    ]) {
      const cov = lines.reduce((sum, line) => sum + (line[i] - belief.mean[i]) * (line[j] - belief.mean[j]), 0) / 4000;
      const size = Math.sqrt(belief.covariance[i * n + i] * belief.covariance[j * n + j]);
      // The error of a sample covariance of 4000 is at most √2/√4000 = 2.2 % of the size; four of these.
      expect(Math.abs(cov - belief.covariance[i * n + j])).toBeLessThan(0.09 * size);
    }
    expect(drawLines(belief, 2, 3)).toEqual(drawLines(belief, 2, 3));
    expect(drawLines(belief, 1, 4)).not.toEqual(drawLines(belief, 1, 3));
  });
});

describe('what the readings leave open is named', () => {
  const open = (readings: readonly Reading[], fixed: readonly number[] = []) =>
    workSurvey(surveyOf(readings, { fixed })).estimate;

  it('heights from a laser line: only relative to support 1', () => {
    const estimate = open(supports.map((s, i) => heightAt(i, s * 0.022, 'laser')));
    expect(estimate.deficiencies).toEqual([{ kind: 'height', held: 0 }]);
    expect(estimate.supports[0].deviation).toBe(0);
  });

  it('nothing, once a support is known to stand as planned, or heights are above the datum', () => {
    const laser = supports.map((s, i) => heightAt(i, s * 0.022, 'laser'));
    expect(open(laser, [7]).deficiencies).toEqual([]);
    expect(open(supports.map((s, i) => heightAt(i, s * 0.022))).deficiencies).toEqual([]);
  });

  it('gaps under a straightedge: neither height nor tilt', () => {
    const gaps = supports.slice(1, -1).map(
      (s, i): Reading => ({
        kind: 'gap',
        name: `gap ${i}`,
        instrument: 'line',
        at: { chainage: s },
        base: 0.6,
        gap: 0,
      }),
    );
    expect(open(gaps).deficiencies).toEqual([{ kind: 'tilt', held: [0, 23] }]);
  });

  it('a support that no reading comes near', () => {
    const estimate = open(supports.flatMap((s, i) => (i === 8 ? [] : [heightAt(i, s * 0.022)])));
    expect(estimate.deficiencies).toEqual([{ kind: 'unseen', supports: [8] }]);
    expect(estimate.supports[8]).toMatchObject({
      deviation: Number.POSITIVE_INFINITY,
      departure: 0,
      detectable: Number.POSITIVE_INFINITY,
    });
  });
});

describe('residuals', () => {
  it('have χ² of their degrees of freedom, and redundancies that add up to them', () => {
    const readings = readOff(spiral(), fortyReadings, 1);
    const { estimate } = workSurvey(surveyOf(readings));
    // 40 readings and the zero error's own row, less 23 heights, the line and the zero error.
    expect(estimate.degreesOfFreedom).toBe(readings.length + 1 - 23 - 2);
    expect(estimate.probability).toBeCloseTo(chiSquareTail(estimate.chiSquare, estimate.degreesOfFreedom), 12);
    const redundancy = estimate.fits.reduce((sum, fit) => sum + fit.redundancy, 0);
    // The rest of the redundancy is the zero error's own row.
    expect(redundancy).toBeGreaterThan(estimate.degreesOfFreedom - 1);
    expect(redundancy).toBeLessThanOrEqual(estimate.degreesOfFreedom + 1e-9);
  });

  it('of two heights 1 mm apart are half of it each', () => {
    const { estimate } = workSurvey(
      surveyOf([...supports.map((s, i) => heightAt(i, s * 0.022)), heightAt(4, supports[4] * 0.022 + 0.001)]),
    );
    expect(estimate.fits[4].residual).toBeCloseTo(-0.0005, 9);
    expect(estimate.supports[4].departure).toBeCloseTo(0.0005, 9);
    // 0.333 mm a reading, two of them.
    expect(estimate.supports[4].deviation * 1e3).toBeCloseTo(0.333 / Math.sqrt(2), 3);
  });
});

it('the next reading goes where a second opinion is worth most', () => {
  // Every span is read but two in the middle: the change of grade there is what is least known.
  const readings = supports
    .slice(0, -1)
    .flatMap((s, i) => (i === 11 || i === 12 ? [] : [gradeAt(s + spacing / 2, 0.022)]));
  const { next } = workSurvey(surveyOf([...readings, heightAt(0, 0), heightAt(23, supports[23] * 0.022)]));
  expect(next?.support).toBeGreaterThanOrEqual(11);
  expect(next?.support).toBeLessThanOrEqual(13);
  expect((next?.after ?? 1) / (next?.before ?? 1)).toBeLessThan(0.9);
});
