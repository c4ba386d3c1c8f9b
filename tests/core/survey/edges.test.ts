import { describe, expect, it } from 'vitest';
import { type Reading, workSurvey } from '../../../src/core/survey/index.ts';
import { leftover, roundingBound, testColumn } from '../../../src/core/survey/residuals.ts';
import type { Row } from '../../../src/core/survey/rows.ts';
import { helix, makeTrack } from '../../../src/core/track/index.ts';
import { caliper, fortyReadings, gradeAt, heightAt, readOff, spacing, spiral, supports, surveyOf } from './spiral.ts';

// What reading the code alone would not show to be tried: each of these fails for one slip that the other tests let pass.

describe('what could have been seen', () => {
  const { estimate } = workSurvey(surveyOf(readOff(spiral(), fortyReadings, 1), { fixed: [5] }));

  it('of a support that is the datum is nothing', () => {
    expect(estimate.supports[5].detectable).toBe(0);
    expect(estimate.supports[6].detectable).toBeGreaterThan(0);
  });

  it('as a kink is the change of grade of both chords, and none at the ends', () => {
    // By hand: d off between neighbours 0.4 m away on either side bends the chords by d/0.4 + d/0.4.
    for (const { support, detectable, detectableKink } of estimate.supports) {
      const inner = support > 0 && support < supports.length - 1;
      expect(detectableKink).toBeCloseTo(inner ? (2 * detectable) / spacing : 0, 12);
    }
  });
});

describe('what rounding could have made', () => {
  const row = (observed: number, halfStep: number): Row => ({
    reading: 0,
    planned: 0,
    observed,
    deviation: 0.5,
    halfStep,
    heights: new Float64Array(1),
    others: [],
  });
  const ones = (count: number): Float64Array => new Float64Array(count).fill(1);

  it('of the mean of readings is what all of them may be rounded by', () => {
    // By hand: each of four readings off by half a step the same way moves their mean by half a step.
    const rows = [0.1, 0.3, 0.2, 0.4].map((observed) => row(observed, 0.05));
    const left = leftover(rows, { others: 0, settings: [] }, []);
    expect(roundingBound(rows, left, ones(4))).toBeCloseTo(0.05, 12);
    const test = testColumn(rows, left, ones(4));
    expect(test?.amount).toBeCloseTo(0.25, 12);
    // Standard deviation of a mean: 0.5/√4; the fall of χ² is the square of amount over it.
    expect(test?.deviation).toBeCloseTo(0.25, 12);
    expect(test?.statistic).toBeCloseTo(1, 12);
    expect(test?.beyondRounding).toBe(true);
  });

  it('is told from what is beyond it, on either side of it, first reading and last alike', () => {
    const judged = (mean: number, steps: readonly number[]) => {
      const rows = steps.map((halfStep) => row(mean, halfStep));
      return testColumn(rows, leftover(rows, { others: 0, settings: [] }, []), ones(rows.length))?.beyondRounding;
    };
    // All of the rounding in one reading of four: a quarter of it is left in the mean.
    for (const steps of [
      [0.4, 0, 0, 0],
      [0, 0, 0, 0.4],
    ]) {
      expect(judged(0.101, steps)).toBe(true);
      expect(judged(0.099, steps)).toBe(false);
    }
  });
});

describe('slips', () => {
  const clean = readOff(spiral(), fortyReadings, 7);
  const found = (readings: readonly Reading[], fixed: readonly number[] = []) =>
    workSurvey(surveyOf(readings, { fixed })).explanation;
  const isHeight = (one: Reading): boolean => one.kind === 'height';

  it('of the first support are seen like any other’s', () => {
    const raised = supports.map((_, i) => (i === 0 ? 0.003 : 0));
    const { supports: wrong } = found(readOff(spiral(raised), fortyReadings, 3), [1, 2]);
    expect(wrong.map(({ support }) => support)).toEqual([0]);
  });

  it.each([
    ['one support back', -1],
    ['one support on', 1],
  ] as const)('a height taken %s', (_words, by) => {
    const at = clean.findIndex((one) => isHeight(one) && one.name === 'height 11');
    const readings = clean.map((one, i) =>
      i === at && one.kind === 'height' ? { ...one, height: one.height + by * spacing * 0.022 } : one,
    );
    expect(found(readings).slips).toMatchObject([{ kind: 'shifted', readings: [at], amount: by }]);
  });

  it('all heights counted from 0 instead of 1', () => {
    // Written at 0 what stands at 1: heights that are above the datum, so that no sight line takes it up.
    const all = supports.slice(1).map((s, i) => heightAt(i, s * 0.022));
    const { slips } = found(
      readOff(spiral(), fortyReadings, 7)
        .filter((one) => !isHeight(one))
        .concat(all),
    );
    expect(slips).toMatchObject([{ kind: 'shifted', amount: 1 }]);
    expect(slips[0].readings).toHaveLength(23);
  });

  it('a rise taken between the next two supports', () => {
    // Level up to support 13, then 5 %: a rise from support 9 to 18 is another between the next two.
    const line = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [helix(0.6, 2.5)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 4.8, height: 0 },
          { chainage: 9.2, height: 0.22 },
        ],
      },
    });
    const rise = (from: number): Reading => ({
      kind: 'rise',
      name: `rise ${from}`,
      instrument: caliper.id,
      from: { support: from },
      to: { support: from + 9 },
      rise: 0,
      board: 0.009,
    });
    const heights = supports.map((_, i) => heightAt(i, 0));
    const written = readOff(line, [6, 8, 10, 12].map(rise), 6);
    const [moved] = readOff(line, [rise(9)], 6);
    const at = heights.length + 1;
    const readings = [...readOff(line, heights, 5), ...written].map((one, i) =>
      i === at && one.kind === 'rise' && moved.kind === 'rise' ? { ...one, rise: moved.rise } : one,
    );
    const { explanation } = workSurvey(surveyOf(readings, { track: line }));
    expect(explanation.slips).toMatchObject([{ kind: 'shifted', readings: [at], amount: 1 }]);
  });

  it('the last spacer but one too thick raises the last two', () => {
    const raised = supports.map((_, i) => (i >= 22 ? 0.004 : 0));
    const all = supports.map((s, i) => heightAt(i, s * 0.022 + raised[i]));
    const { slips } = found(all, [0]);
    expect(slips).toMatchObject([{ kind: 'raised-from', support: 22 }]);
    expect(slips[0].amount).toBeCloseTo(0.004, 6);
  });

  it('one grade misread is no line raised, though there are fewer places to raise a line from than readings to misread', () => {
    const spans = supports.slice(0, -1).map((s) => s + spacing / 2);
    const once = spans.map((s, i) => gradeAt(s, i === 11 ? 0.031 : 0.022));
    const twice = spans.flatMap((s, i) => (i === 11 ? [] : [gradeAt(s, 0.022)]));
    expect(found([...once, ...twice]).slips).toMatchObject([{ kind: 'outlier', readings: [11] }]);
    // Read again, it is the line.
    expect(found([...once, ...twice, gradeAt(spans[11], 0.031)]).slips).toMatchObject([
      { kind: 'raised-from', support: 12 },
    ]);
  });

  it('two laser lines that share no support leave two parts loose against each other', () => {
    const half = (from: number, to: number, of: string): Reading[] =>
      supports.slice(from, to).map((s, i) => heightAt(from + i, s * 0.022, of));
    const { estimate } = workSurvey(surveyOf([...half(0, 12, 'low'), ...half(12, 24, 'high')]));
    expect(estimate.deficiencies).toEqual([{ kind: 'apart', supports: expect.any(Array) }]);
    const [part] = estimate.deficiencies;
    if (part.kind !== 'apart') throw new Error(part.kind);
    expect(part.supports).toHaveLength(2);
    // One is held in each part.
    expect(part.supports.filter((support) => support < 12)).toHaveLength(1);
  });
});
