import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { sheetsDxf, sheetsSvg } from '../../../src/export/sheets/index.ts';
import { parseScene } from '../../../src/scene/index.ts';
import { buildPlan } from '../../../src/sim/build/index.ts';
import { compileScene } from '../../../src/sim/index.ts';

function planOf(file: string) {
  const parsed = parseScene(readFileSync(new URL(`../../../scenes/${file}.json`, import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error(`${file} does not parse`);
  return buildPlan(compileScene(parsed.scene), {
    sheet: { length: 1.22, width: 0.61, kerf: 0.003, longest: 0.6 },
  });
}

const plan = planOf('01-wren-gill');
const count = plan.tracks.flatMap(({ pieces }) => pieces).reduce((sum, one) => sum + one.count, 0);

interface Arc {
  readonly type: string;
  readonly layer: string;
  readonly center: { readonly x: number; readonly y: number };
  readonly radius: number;
  readonly startAngle: number;
  readonly endAngle: number;
}

describe('the sheets as a drawing in DXF', () => {
  // Read by a general-purpose library (dxf-parser), which knows nothing of how it was written.
  const drawing = new DxfParser().parseSync(sheetsDxf(plan));
  const entities = drawing?.entities ?? [];

  it('has every piece with its true arcs', () => {
    const arcs = entities.filter(({ type }) => type === 'ARC') as unknown as Arc[];
    const sectors = plan.tracks.flatMap(({ pieces }) => pieces).filter(({ shape }) => shape === 'sector');
    expect(arcs).toHaveLength(2 * sectors.reduce((sum, one) => sum + one.count, 0));
    for (const arc of arcs) {
      // Half a strip, 35 mm, to either side of the middle.
      const own = sectors.find(
        ({ sector }) => Math.abs(Math.abs((sector?.radius ?? 0) * 1e3 - arc.radius) - 35) < 1e-3,
      );
      // Angles in radians here; an arc runs from start to end counter-clockwise.
      const turned = (arc.endAngle - arc.startAngle + 4 * Math.PI) % (2 * Math.PI);
      expect(turned).toBeCloseTo(own?.sector?.angle ?? Number.NaN, 6);
      // Both edges bow upwards on the sheet.
      expect(Math.sin(arc.startAngle + turned / 2)).toBeCloseTo(1, 9);
    }
    expect(entities.filter(({ type }) => type === 'TEXT')).toHaveLength(count);
    expect(new Set(entities.map(({ layer }) => layer))).toEqual(new Set(['SHEET', 'CUT', 'NAMES']));
  });

  it('has outlines that close, corner on corner', () => {
    // Every end of a line or an arc on the layer CUT is the end of exactly one other.
    const ends = new Map<string, number>();
    const end = (x: number, y: number) => {
      const key = `${Math.round(x * 100)} ${Math.round(y * 100)}`;
      ends.set(key, (ends.get(key) ?? 0) + 1);
    };
    for (const one of entities.filter(({ layer }) => layer === 'CUT')) {
      if (one.type === 'ARC') {
        const { center, radius, startAngle, endAngle } = one as unknown as Arc;
        for (const a of [startAngle, endAngle]) end(center.x + radius * Math.cos(a), center.y + radius * Math.sin(a));
      } else {
        const { vertices } = one as unknown as { vertices: readonly { x: number; y: number }[] };
        for (const { x, y } of vertices) end(x, y);
      }
    }
    // Rounding to a hundredth of a millimetre parts a corner in two now and then; none is left over otherwise.
    const odd = [...ends].filter(([, met]) => met !== 2).map(([key]) => key.split(' ').map(Number));
    for (const [x, y] of odd) {
      const near = odd.filter(([u, v]) => Math.abs(u - x) <= 1 && Math.abs(v - y) <= 1);
      expect(near).toHaveLength(2);
    }
  });
});

describe('the sheets as a drawing in SVG', () => {
  it('is at full size, with every piece named once, and a square to check the scale by', () => {
    const text = sheetsSvg(plan);
    const height = plan.layout.sheets * (610 + 100) + 100;
    expect(text).toContain(`width="1220mm" height="${height}mm" viewBox="0 0 1220 ${height}"`);
    const names = [...text.matchAll(/<path id="([A-Z]+\d+(?:\.\d+)?)"/g)].map(([, name]) => name);
    expect(names).toHaveLength(count);
    expect(new Set(names).size).toBe(count);
    expect(text).toContain('<rect id="scale-check" width="100" height="100"/>');
    expect(text.match(/<g id="sheet-/g)).toHaveLength(plan.layout.sheets);
  });
});
