import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testsToMake } from '../../../src/sim/page/testsToMake.ts';
import type { PageTrial } from '../../../src/sim/page/types.ts';

const trial = (name: string, marks: readonly number[], own = true): PageTrial => ({
  name,
  train: name,
  propelled: false,
  climbs: true,
  own,
  standing: 'fails',
  words: '',
  marks,
});

const names = (trials: readonly PageTrial[]) => testsToMake(trials).map(({ trial: { name }, shows }) => [name, shows]);

describe('the runs to make', () => {
  it('show every place, each what those before it do not, the one with most first', () => {
    const trials = [trial('a', [1]), trial('b', [1, 2, 3]), trial('c', [3, 4]), trial('d', [2])];
    expect(names(trials)).toEqual([
      ['b', [1, 2, 3]],
      ['c', [4]],
    ]);
  });

  it('are the scene’s own where others show as much', () => {
    expect(names([trial('made', [1, 2], false), trial('own', [2, 1])])).toEqual([['own', [2, 1]]]);
    expect(names([trial('made', [1, 2], false), trial('own', [1])])).toEqual([['made', [1, 2]]]);
  });

  it('are none where nothing is numbered', () => {
    expect(testsToMake([])).toEqual([]);
    expect(testsToMake([trial('a', [])])).toEqual([]);
  });

  it('miss nothing and run nothing for nothing, whatever there is', () => {
    fc.assert(
      fc.property(fc.array(fc.uniqueArray(fc.integer({ min: 1, max: 12 })), { maxLength: 12 }), (lists) => {
        const made = testsToMake(lists.map((marks, i) => trial(String(i), marks)));
        const shown = made.flatMap(({ shows }) => shows);
        expect([...shown].sort()).toEqual([...new Set(lists.flat())].sort());
        expect(made.every(({ shows }) => shows.length > 0)).toBe(true);
      }),
    );
  });
});
