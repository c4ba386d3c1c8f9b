import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../../src/core/findings/types.ts';
import type { RiskId } from '../../../../src/core/risks/types.ts';
import {
  allRows,
  chosenRows,
  fittingRows,
  movedRow,
  orderedRows,
  type RowId,
} from '../../../../src/ui/band/rows/rowChoice.ts';
import { makeRowKeeper } from '../../../../src/ui/band/rows/rowKeeper.ts';

const risks: RiskId[] = ['stall', 'wheelspin', 'override', 'buffer-lock', 'coupler-swing', 'parting', 'headroom'];
const findingsOf = (...order: RiskId[]) => order.map((risk) => ({ risk }) as Finding);
const heightOf = (row: RowId) => ({ section: 90, curvature: 25, speed: 22, carpet: 94 })[row as string] ?? 16;

describe('which rows are shown', () => {
  test('the gravest risk comes first, those without a finding last', () => {
    const rows = allRows(risks, findingsOf('override', 'headroom', 'override', 'stall'));
    expect(rows).toEqual([
      'section',
      'curvature',
      'speed',
      'carpet',
      'override',
      'headroom',
      'stall',
      'wheelspin',
      'buffer-lock',
      'coupler-swing',
      'parting',
    ]);
  });

  test('as many as fit: five risks on a desk', () => {
    const rows = allRows(risks, []);
    // 368 less transport 39 and axis 18.
    const shown = fittingRows(rows, heightOf, 311, new Set());
    expect(shown).toEqual(['section', 'curvature', 'speed', 'carpet', ...risks.slice(0, 5)]);
  });

  test('curvature goes before a third risk, speed after it, the section and the carpet never', () => {
    const rows = allRows(risks, []);
    expect(fittingRows(rows, heightOf, 270, new Set())).toEqual(['section', 'speed', 'carpet', ...risks.slice(0, 4)]);
    expect(fittingRows(rows, heightOf, 100, new Set())).toEqual(['section', 'carpet', ...risks.slice(0, 3)]);
  });

  test('a risk with nothing to say is left in the list', () => {
    const shown = fittingRows(allRows(risks, []), heightOf, 1000, new Set<RowId>(['wheelspin']));
    expect(shown).not.toContain('wheelspin');
    expect(shown).toHaveLength(10);
  });

  test('a choice keeps its order and its folds over trials with other risks', () => {
    const rows = allRows(['stall', 'headroom'], []);
    const choice = { order: ['headroom', 'override', 'section'] as RowId[], folded: new Set<RowId>(['speed']) };
    expect(orderedRows(rows, choice.order)).toEqual(['headroom', 'section', 'curvature', 'speed', 'carpet', 'stall']);
    expect(chosenRows(rows, choice)).toEqual(['headroom', 'section', 'curvature', 'carpet', 'stall']);
  });

  test('rows move one place, and not off the list', () => {
    const order: RowId[] = ['section', 'speed', 'stall'];
    expect(movedRow(order, 'speed', -1)).toEqual(['speed', 'section', 'stall']);
    expect(movedRow(order, 'stall', 1)).toEqual(order);
    expect(movedRow(order, 'section', -1)).toEqual(order);
  });
});

describe('a choice of rows kept on this machine', () => {
  const keeperOf = (first: string | null) => {
    let text = first;
    return makeRowKeeper({
      read: () => text,
      write: (next) => {
        text = next;
      },
    });
  };

  test('comes back as it was, and is gone when the person lets it go', () => {
    const keeper = keeperOf(null);
    const choice = { order: ['carpet', 'stall', 'section'] as RowId[], folded: new Set<RowId>(['stall']) };
    keeper.keep(choice);
    expect(keeper.read()).toEqual(choice);
    keeper.keep(null);
    expect(keeper.read()).toBeNull();
  });

  test.each(['', 'nonsense', '[]', '{"order":["stall"]}', '{"order":[3],"folded":[]}', 'null'])(
    'is none where %j was found',
    (text) => {
      expect(keeperOf(text).read()).toBeNull();
    },
  );
});
