import { describe, expect, it } from 'vitest';
import { best } from '../../../src/cli/best/best.ts';
import { bestReportSchema } from '../../../src/cli/best/bestReport.ts';
import { loads } from '../../../src/cli/studies/loads.ts';
import { loadsReportSchema } from '../../../src/cli/studies/loadsReport.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { withProfile } from '../../../src/sim/study/sceneProfile.ts';
import { bundledScene, sampleScene } from '../../scene/sample.ts';

describe('best', () => {
  it('says a lesser grade for a railway, in points that the scene takes', async () => {
    const scene = bundledScene('01-wren-gill.json');
    const { report, text } = await best(scene, { hold: [] });
    expect(bestReportSchema.parse(report)).toEqual(report);
    expect(report.leastPercent).toBeLessThan(report.presentPercent + 1e-9);
    expect(report.floorPercent).toBeLessThanOrEqual(report.leastPercent ?? 0);
    expect(text).toContain('proven');
    const points = (report.rounded?.points ?? []).map(({ atMm, heightMm, verticalCurveLengthMm: curve }) => ({
      chainage: atMm / 1e3,
      height: heightMm / 1e3,
      ...(curve === undefined ? {} : { curve: { length: curve / 1e3 } }),
    }));
    expect(compileScene(withProfile(scene, report.track, points)).tracks.has(report.track)).toBe(true);
  }, 60_000);

  it('refuses what says nothing', async () => {
    await expect(best(sampleScene(), { hold: [], towards: 'up' })).rejects.toThrow(/towards/);
    await expect(best(sampleScene(), { hold: ['x'] })).rejects.toThrow(/hold/);
    await expect(best(sampleScene(), { hold: [], track: 'none' })).rejects.toThrow(/no track/);
  });
});

describe('loads', () => {
  it('tells a table that its format holds', async () => {
    const { report, text, csv } = await loads(sampleScene(), { most: '3', risk: 'stall' });
    expect(loadsReportSchema.parse(report)).toEqual(report);
    expect(report.loads).toHaveLength(1);
    expect(text).toContain('engine takes');
    expect(csv.split('\n')[0]).toContain('massG');
    await expect(loads(sampleScene(), { most: '0' })).rejects.toThrow(/most/);
  }, 60_000);
});
