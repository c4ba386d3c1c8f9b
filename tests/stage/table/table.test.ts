import { describe, expect, it } from 'vitest';
import { shadowMask } from '../../../src/stage/table/shadow.ts';
import { tableTops } from '../../../src/stage/table/tableTop.ts';
import { drawnTrack } from '../../../src/stage/way/drawnTrack.ts';
import { stripUnderside } from '../../../src/stage/way/measures.ts';
import { fallingHelix, levelCircle, measures } from '../samples.ts';

const helix = fallingHelix();

describe('tableTops', () => {
  it('lies under everything when the file gives no boards', () => {
    const [table] = tableTops([helix], measures, []);
    // The helix is 1.2 m wide about (0, 0.6).
    expect(table.x[0]).toBeLessThan(-0.6 - measures.stripWidth / 2);
    expect(table.x[1]).toBeGreaterThan(0.6 + measures.stripWidth / 2);
    expect(table.top).toBeLessThan(0.08 - stripUnderside(measures));
  });

  it('takes the boards of the file where they carry the railway', () => {
    const board = { xMm: -700, yMm: -100, lengthMm: 1400, widthMm: 1400, topMm: -20 };
    expect(tableTops([helix], measures, [board])).toEqual([
      { x: [-0.7, 0.7], y: [-0.1, 1.3], top: -0.02, thickness: expect.any(Number) },
    ]);
  });

  it('lays one board under all when a board of the file leaves part of the railway in the air', () => {
    const board = { xMm: 0, yMm: -100, lengthMm: 700, widthMm: 1400, topMm: -20 };
    const tables = tableTops([helix], measures, [board]);
    expect(tables).toHaveLength(1);
    expect(tables[0].x[0]).toBeLessThan(-0.6);
    expect(tables[0].top).toBe(-0.02);
  });

  it('lays the boards of the file and no other where they are to be drawn as given', () => {
    const board = { xMm: 0, yMm: -100, lengthMm: 700, widthMm: 1400, topMm: -20 };
    expect(tableTops([helix], measures, [board], true)).toEqual([
      { x: [0, 0.7], y: [-0.1, 1.3], top: -0.02, thickness: expect.any(Number) },
    ]);
  });
});

describe('shadowMask', () => {
  const [table] = tableTops([helix], measures, []);
  const mask = shadowMask([helix], measures.stripWidth, table);
  const at = (x: number, y: number): number => {
    const column = Math.floor(((x - table.x[0]) / (table.x[1] - table.x[0])) * mask.width);
    const row = Math.floor(((y - table.y[0]) / (table.y[1] - table.y[0])) * mask.height);
    return mask.data[row * mask.width + column];
  };

  it('is dark under the strip and clear in the middle of the helix', () => {
    expect(at(0.05, 0.02)).toBeGreaterThan(200);
    expect(at(0, 0.6)).toBe(0);
  });

  it('is no darker under two turns than under one', () => {
    const one = drawnTrack('one', levelCircle());
    const twice = shadowMask([one, { ...one, id: 'again' }], measures.stripWidth, table);
    const once = shadowMask([one], measures.stripWidth, table);
    expect(twice.data).toEqual(once.data);
  });

  it('stays within bounds on a railway as large as a hall', () => {
    const hall = { ...table, x: [-40, 40] as const, y: [-40, 40] as const };
    const large = shadowMask([helix], measures.stripWidth, hall);
    expect(large.width * large.height).toBeLessThan(500_000);
  });
});
