import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type BuildWords, drawingOf, build as planOf, threadOf } from '../../../src/cli/build/build.ts';
import { buildReport, buildReportSchema } from '../../../src/cli/build/buildReport.ts';
import { buildCsv, buildText } from '../../../src/cli/build/buildText.ts';
import { BadInput } from '../../../src/cli/exitCodes.ts';
import { parseScene, type Scene } from '../../../src/scene/index.ts';

function sceneOf(file: string): Scene {
  const parsed = parseScene(readFileSync(new URL(`../../../scenes/${file}.json`, import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error(`${file} does not parse`);
  return parsed.scene;
}

const build = (scene: Scene, words: BuildWords) => buildReport(scene.name, planOf(scene, words));

const gill = sceneOf('01-wren-gill');

describe('what a railway is built of', () => {
  it('has every support at its planned height, whatever was built', () => {
    const report = build(gill, {});
    expect(buildReportSchema.parse(report)).toEqual(report);
    expect(report.supports).toHaveLength(76);
    // Support 38 stands 2.5 mm high as built; the plan has it between its neighbours on even grade: 2.4 % of 235.6 mm apart.
    const [before, here, after] = report.supports.slice(36, 39);
    expect(here.railMm).toBeCloseTo((before.railMm + after.railMm) / 2, 9);
    expect(here.riseMm).toBeCloseTo(-0.024 * 235.6, 6);
    // The deck: 5 of track, 3 of underlay, 9 of ply, over a board that lies 20 mm below the datum.
    const yard = report.supports[75];
    expect(yard.undersideMm).toBeCloseTo(yard.railMm - 17, 9);
    expect(yard.riserMm).toBeCloseTo(yard.undersideMm + 20, 9);
    expect(report.supports[0].on).toBe('floor');
    expect(report.supports[0].riserMm).toBeCloseTo(880 + 370 - 17, 9);
  });

  it('has blocks of the rise of a turn less the deck', () => {
    const [helix] = build(gill, {}).tracks[0].helices;
    // 2.4 % of 2π·600 mm are 90.48 mm; less 9 mm of ply, upright on that grade 9.003.
    expect(helix.blocks).toHaveLength(1);
    const byHand = 0.024 * 2 * Math.PI * 600 - 9 * Math.hypot(1, 0.024);
    // A turn on, supports stand 16·235.6 - 2π·600 = -0.3 mm aside: 2.4 % of that.
    expect(helix.blocks[0].heightMm).toBeCloseTo(byHand + 0.024 * (16 * 235.6 - 2 * Math.PI * 600), 6);
  });

  it('says in words and in rows what there is to do', () => {
    const report = build(gill, {});
    const text = buildText(report, threadOf('M6'));
    // 5.654 mm of rise are 5.65 turns of a thread of 1 mm.
    expect(text).toMatch(/^ +38 +8777\.2 +215\.7 +198\.7 +-5\.65 +-5\.65 +-2\.40 +strip +81\.5$/m);
    expect(text).toMatch(/Butts within a vertical curve, which they would kink: 2449, 15987 mm/);
    expect(text).toMatch(/MDF.*mains wiring is for qualified people/);
    const lines = buildCsv(report).trimEnd().split('\n');
    expect(lines).toHaveLength(77);
    expect(lines[0]).toMatch(/^track,support,chainageMm,/);
    expect(lines[1].split(',')).toHaveLength(lines[0].split(',').length);
  });

  it('takes parallel tracks of a double helix for what one deck may carry, and lays supports where there are none', () => {
    const fold = sceneOf('02-marlow-fold');
    const report = build(fold, { every: '300mm', longest: '18in', sheet: '8ftx4ft' });
    expect(report.tracks.map(({ besides }) => besides)).toEqual([['inner'], ['outer']]);
    expect(report.sheet.lengthMm).toBeCloseTo(2438.4, 9);
    for (const { pieces } of report.tracks) {
      for (const { shape, blankLengthMm } of pieces)
        if (shape !== 'straight') expect(blankLengthMm).toBeLessThan(457.2);
    }
    expect(build(fold, { track: 'inner' }).supports).toEqual([]);
    expect(buildText(build(fold, { track: 'inner' }), null)).toMatch(/no supports; --every/);
  });

  it.each([
    [{ track: 'nowhere' }, 'no track "nowhere"'],
    [{ sheet: '2440' }, '--sheet 2440: two sides'],
    [{ sheet: '2440xwide' }, '--sheet'],
    [{ sheet: '0x1220' }, '--sheet 0: a length longer than 0'],
    [{ kerf: '-1mm' }, '--kerf'],
    [{ every: '5mm' }, '--every 5mm: a length longer than 10 mm'],
    [{ sheet: '600x50' }, 'A strip 70 mm wide does not come out of a sheet 600 by 50 mm'],
  ])('refuses %j', (words, message) => {
    expect(() => build(gill, words)).toThrow(BadInput);
    expect(() => build(gill, words)).toThrow(message);
  });

  it('draws the sheets in two formats and no other', () => {
    const plan = planOf(gill, {});
    expect(drawingOf('svg')(plan)).toMatch(/^<\?xml/);
    expect(drawingOf('dxf')(plan)).toMatch(/^0\nSECTION\n/);
    expect(() => drawingOf('pdf')).toThrow('--drawing pdf: svg or dxf.');
  });

  it('knows the threads of the norm', () => {
    expect(threadOf('M8')?.pitchMm).toBeCloseTo(1.25, 12);
    expect(() => threadOf('M7')).toThrow('one of M4, M5, M6, M8, M10, M12');
    expect(threadOf(undefined)).toBeNull();
  });
});
