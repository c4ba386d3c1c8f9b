import { describe, expect, it } from 'vitest';
import { BadInput } from '../../src/cli/exitCodes.ts';
import { compare } from '../../src/cli/studies/compare.ts';
import { compareReportSchema } from '../../src/cli/studies/compareReport.ts';
import { sweep } from '../../src/cli/studies/sweep.ts';
import { sweepReportSchema } from '../../src/cli/studies/sweepReport.ts';
import { measures } from '../../src/sim/study/index.ts';
import { sampleScene } from '../scene/sample.ts';

const lead = 'tracks/line/alignment/lead/lengthMm';
const quick = { quick: true, risk: 'structure' } as const;

describe('measures of a sweep', () => {
  it('are told in text, JSON and CSV alike, and their limits have edges', async () => {
    const { report, text, csv } = await sweep(sampleScene(), {
      ...quick,
      vary: [`${lead}=2000..3000`],
      points: '3',
      edge: '1mm',
      measure: ['length', 'draft'],
      limit: ['length <= 21ft'],
    });
    expect(sweepReportSchema.parse(report)).toEqual(report);
    expect(report.limits).toEqual([{ measure: 'length', bound: 'most', amount: 6400.8 }]);
    // Six metres of line with its lead at 2 m: 21 ft are reached with 400.8 mm more.
    const [{ passes, fails }] = report.edges ?? [];
    expect(passes).toBeLessThanOrEqual(2400.8);
    expect(fails).toBeGreaterThan(2400.8);
    expect(fails - passes).toBeLessThanOrEqual(1);
    expect(text).toContain('strip 7000.0 mm, more than 6400.8 mm');
    const [head, first] = csv.split('\n').map((row) => row.split(','));
    expect(head).toHaveLength(new Set(head).size);
    const cell = (name: string) => first[head.indexOf(name)];
    expect(Number(cell('stripMm'))).toBeCloseTo(6000, 6);
    expect(Number(cell('greatestDraftN'))).toBeGreaterThan(0);
    expect(report.points.at(-1)?.missed).toEqual(['length']);
    for (const { field } of measures)
      expect(
        head.some((name) => name.startsWith(field)),
        field,
      ).toBe(true);
  });

  it('make a map of numbers, and its border with the edge of the range', async () => {
    const { report, text } = await sweep(sampleScene(), {
      ...quick,
      vary: [`${lead}=2000..3000`, 'tracks/line/alignment/tail/lengthMm=2000..3000'],
      points: '3',
      measure: ['length'],
      limit: ['length<=7000'],
    });
    expect(sweepReportSchema.parse(report)).toEqual(report);
    expect(text).toContain('Strip, mm:');
    // Lead and tail together take 5 m at most: the diagonal of the range, of which the lower half passes.
    const pieces = [...(report.outline ?? []), ...(report.brink ?? [])];
    const inside = pieces.reduce((sum, [[a, b], [c, d]]) => sum + (a * d - c * b) / 2, 0);
    // Cells of 500 mm, halved three times.
    expect(Math.abs(inside / 1e6 - 0.5)).toBeLessThan(0.5 / 8);
  });

  it.each([
    [{ measure: ['weight'] }, 'There is no measure "weight". There are: draft, buff'],
    [{ limit: ['draft=1'] }, 'MEASURE<=AMOUNT'],
    [{ limit: ['draft<=much'] }, '--limit draft'],
  ])('refuses %j', async (options, words) => {
    const asked = sweep(sampleScene(), { ...quick, vary: [`${lead}=2000..3000`], ...options });
    await expect(asked).rejects.toThrow(BadInput);
    await expect(asked).rejects.toThrow(words);
  });
});

describe('measures of a comparison', () => {
  it('decide with their limits, and stand in every form', async () => {
    const { report, text, csv, exitCode } = await compare(sampleScene(), {
      ...quick,
      with: [`Longer: ${lead}=2600`],
      variant: [],
      measure: ['room-width'],
      limit: ['length<=6500 mm'],
    });
    expect(compareReportSchema.parse(report)).toEqual(report);
    expect(report.railways.map(({ passes }) => passes)).toEqual([true, false]);
    expect(exitCode).toBe(1);
    expect(text).toContain('room, width');
    const [head] = csv.split('\n').map((row) => row.split(','));
    expect(head).toHaveLength(new Set(head).size);
    expect(head).toContain('trackLengthMm');
  });
});
