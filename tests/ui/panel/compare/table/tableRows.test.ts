import { describe, expect, it } from 'vitest';
import type { CompareRow } from '../../../../../src/state/study/index.ts';
import { marginRows, measureRows } from '../../../../../src/ui/panel/compare/table/tableRows.ts';

const show = { lengthUnit: 'mm', gradeForm: 'one-in' } as const;

/** A railway whose buffers have a margin, m, and whose strip is so long, m. */
function row(id: string | null, margin: number, length: number, headroom: number | null = null): CompareRow {
  const risks = [
    { risk: 'buffer-lock', margin, unit: 'length', share: margin / 0.003, chainage: 1, subject: 0 },
    { risk: 'stall', margin: 0.5, unit: 'share', share: 1, chainage: 1, subject: 0 },
  ] as const;
  const figures = {
    ...{ greatestDraft: 0.4, greatestBuff: 0, drawbar: 0.4, work: 1, duration: 1 },
    ...{ leastSpeed: 0.1, footSpeed: null, endThrow: 0.004, centreThrow: 0.003 },
  };
  const trials = [{ trialId: 'up', outcome: 'arrived', passes: margin >= 0, risks, ...figures }] as const;
  const takes = {
    ...{ length, width: 3, depth: 1.2, rise: 0, steepest: 0, ruling: 0, headroom, deck: length * 0.07 },
    ...{ tightest: Number.POSITIVE_INFINITY, sharpest: Number.POSITIVE_INFINITY },
  };
  const name = id ?? 'As it is';
  return {
    id,
    name,
    from: null,
    exactness: 'run',
    scene: null,
    compared: { name, probe: { ok: true, trials, takes }, tracks: new Map() },
  };
}

describe('the table of railways', () => {
  const rows = [row(null, -0.0002, 5), row('longer', 0.0016, 5.15), row('like', -0.0002, 5.001)];

  it('puts the closest call first and says which margins fail, are better or the same', () => {
    const [buffers, stall] = marginRows(rows, show);
    expect(buffers.key).toBe('buffer-lock');
    expect(buffers.cells.map(({ than, fails }) => [than, fails])).toEqual([
      [null, true],
      ['better', false],
      ['same', true],
    ]);
    expect(stall.cells.map(({ than }) => than)).toEqual([null, 'same', 'same']);
  });

  it('counts more strip as worse, a millimetre of it as nothing, and leaves out what nobody has', () => {
    const costs = new Map(measureRows(rows, 'track', show).map(({ key, cells }) => [key, cells]));
    expect(costs.get('length')?.map(({ than }) => than)).toEqual([null, 'worse', 'same']);
    expect(costs.get('room-area')?.[0].text).toMatch(/^3\.60.m²$/);
    // 5 m of strip at 70 mm.
    expect(costs.get('deck')?.[0].text).toMatch(/^0\.35.m²$/);
    expect(costs.has('headroom')).toBe(false);
    expect(costs.has('tightest')).toBe(false);
  });

  it('tells of the runs what every measure says, less force as better, and leaves out a foot that nobody runs down to', () => {
    const told = new Map(measureRows(rows, 'run', show).map(({ key, cells }) => [key, cells]));
    expect(told.get('draft')?.map(({ text }) => text.replace('\u2009', ' '))).toEqual(['0.40 N', '0.40 N', '0.40 N']);
    expect(told.get('least-speed')?.[1].than).toBe('same');
    expect(told.has('foot-speed')).toBe(false);
  });

  it('counts more headroom as better and says nothing where only one has any', () => {
    const headroom = (all: CompareRow[]) =>
      measureRows(all, 'track', show).find(({ key }) => key === 'headroom')?.cells;
    expect(headroom([row(null, 0, 5, 0.06), row('a', 0, 5, 0.07)])?.[1].than).toBe('better');
    expect(headroom([row(null, 0, 5), row('a', 0, 5, 0.07)])?.map(({ text, than }) => [text, than])[0]).toEqual([
      '–',
      null,
    ]);
  });
});
