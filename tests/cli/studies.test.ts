import { describe, expect, it } from 'vitest';
import { BadInput } from '../../src/cli/exitCodes.ts';
import { chance } from '../../src/cli/studies/chance.ts';
import { chanceReportSchema } from '../../src/cli/studies/chanceReport.ts';
import { compare } from '../../src/cli/studies/compare.ts';
import { compareReportSchema } from '../../src/cli/studies/compareReport.ts';
import { quantityList, sweep } from '../../src/cli/studies/sweep.ts';
import { sweepReportSchema } from '../../src/cli/studies/sweepReport.ts';
import { sampleScene, sampleWith, sceneOf } from '../scene/sample.ts';

const height = 'tracks/line/profile/3/heightMm';
const quick = { quick: true, risk: 'stall' } as const;

describe('sweep', () => {
  it('reports runs and edges in text, JSON and CSV that agree', async () => {
    const seen: number[] = [];
    const { report, text, csv, exitCode } = await sweep(
      sampleScene(),
      { ...quick, vary: [`${height}=80..2000`], points: '4', edge: '2in' },
      { onProgress: (done) => seen.push(done) },
    );
    expect(sweepReportSchema.parse(report)).toEqual(report);
    expect(exitCode).toBe(0);
    expect(report.edges).toHaveLength(1);
    const [{ passes, fails }] = report.edges ?? [];
    expect(fails - passes).toBeLessThanOrEqual(50.8);
    expect(text).toContain(
      `Passes up to ${Number(passes.toPrecision(4))}, fails from ${Number(fails.toPrecision(4))}.`,
    );
    const rows = csv.trim().split('\n');
    expect(rows[0].split(',')[0]).toBe(height);
    expect(rows).toHaveLength(1 + report.points.length);
    expect(seen.at(-1)).toBe(report.points.length);
  });

  it('maps two numbers with an outline', async () => {
    const { report, text } = await sweep(sampleScene(), {
      ...quick,
      vary: [`${height}=80..2000`, 'stock/coach/massG=80..200'],
      points: '3',
    });
    expect(sweepReportSchema.parse(report)).toEqual(report);
    expect(report.points).toHaveLength(9);
    expect(report.outline?.length).toBeGreaterThan(0);
    // The heaviest coaches stand on top; every row ends in what fails on the steepest grade.
    const marks = text.trim().split('\n').slice(-3);
    for (const row of marks) expect(row.trim().endsWith('.')).toBe(true);
    expect(marks.some((row) => row.includes('o'))).toBe(true);
  });

  it('exits with 1 when nothing passes', async () => {
    const { exitCode, text } = await sweep(sampleScene(), { ...quick, vary: [`${height}=1800..2000`], points: '2' });
    expect(exitCode).toBe(1);
    expect(text).toContain('Everything in the range fails.');
  });

  it.each([
    [{ vary: [] }, 'Give --vary once'],
    [{ vary: ['tracks/line/heightMm=1..2'] }, 'Like it: tracks/line/profile/1/heightMm'],
    [{ vary: [`${height}=80`] }, 'ADDRESS=FROM..TO'],
    [{ vary: [`${height}=80..80`] }, 'two different ends'],
    [{ vary: [`${height}=80..much`] }, 'much'],
    [{ vary: [`${height}=80..90`], points: '1' }, '--points'],
    [{ vary: [`${height}=80..90`], risk: 'weather' }, 'no risk "weather"'],
    [{ vary: [`${height}=80..90`], trial: ['down'] }, 'no trial "down"'],
  ])('refuses %j', async (options, words) => {
    const refused = sweep(sampleScene(), options);
    await expect(refused).rejects.toThrow(BadInput);
    await expect(refused).rejects.toThrow(words);
  });

  it('lists every number with its address', () => {
    const list = quantityList(sampleScene());
    expect(list).toContain(height);
    expect(list).toContain('Line, first: Radius of the track centreline');
  });
});

describe('compare', () => {
  it('sets named differences beside the scene, with what they take', async () => {
    const { report, text, csv, exitCode } = await compare(sampleScene(), {
      ...quick,
      with: [`Steep: ${height}=2000`, `${height}=3 in; stock/coach/massG=4oz`],
      variant: [],
    });
    expect(compareReportSchema.parse(report)).toEqual(report);
    expect(report.railways.map(({ passes }) => passes)).toEqual([true, false, true]);
    expect(report.railways[1].name).toBe('Steep');
    // One support of the sample stands 1.5 mm high, and its neighbours bend: the strip departs from the plan by less.
    expect(Math.abs(report.railways[1].tracks[0].riseMm - 2000)).toBeLessThan(1.5);
    expect(Math.abs(report.railways[2].tracks[0].riseMm - 76.2)).toBeLessThan(1.5);
    expect(exitCode).toBe(1);
    expect(text).toContain('fails  Steep: ');
    expect(csv.split('\n')[0].startsWith('name,track,trackLengthMm')).toBe(true);
  });

  it('takes the variants of the scene when nothing is named, and says when there are none', async () => {
    const changes = [{ at: height, to: 120 }];
    const scene = sceneOf(sampleWith('variants', [{ id: 'steeper', name: 'A little steeper', changes }]));
    const { report } = await compare(scene, { ...quick, with: [], variant: [] });
    expect(report.railways.map(({ name }) => name)).toEqual(['as it is', 'A little steeper']);
    await expect(compare(sampleScene(), { ...quick, with: [], variant: [] })).rejects.toThrow('nothing to compare');
    await expect(compare(scene, { ...quick, with: [], variant: ['none'] })).rejects.toThrow('no such variant');
    await expect(compare(scene, { ...quick, with: [`${height}=-1e9`], variant: [] })).rejects.toThrow(BadInput);
  });
});

describe('chance', () => {
  it('gives a share with its range, the same for the same seed', async () => {
    const options = { ...quick, vary: [`${height}=80..2000`], draws: '12', seed: '3' };
    const { report, text, exitCode } = await chance(sampleScene(), options);
    expect(chanceReportSchema.parse(report)).toEqual(report);
    expect(report.draws).toHaveLength(12);
    expect(report.passing?.share).toBeGreaterThan(0);
    expect(report.passing?.share).toBeLessThan(1);
    expect(report.uncertain[0].influence).toBeLessThan(-0.9);
    expect(exitCode).toBe(1);
    expect(text).toContain('of 12 draws pass');
    expect((await chance(sampleScene(), options)).report).toEqual(report);
  });

  it('refuses what says nothing', async () => {
    await expect(chance(sampleScene(), { vary: [] })).rejects.toThrow(BadInput);
    await expect(chance(sampleScene(), { vary: [`${height}=1..2`], draws: '0' })).rejects.toThrow('--draws');
    await expect(chance(sampleScene(), { vary: [`${height}=1..2`], seed: 'luck' })).rejects.toThrow('--seed');
  });
});
