import { describe, expect, it } from 'vitest';
import { adviceWords } from '../../src/state/route/adviceWords.ts';
import { bareTrack, factsOf, railway } from '../sim/advice/sceneOf.ts';

/** Inches in mm. */
const inch = 25.4;

describe('advice while drawing, against what is published', () => {
  it('gives each track of a double helix the grade it has: 2.894 % at 22 in, 2.653 % at 24 in for 4 in a turn', () => {
    // A builder's published calculation (2016): 22 in, 4 in a turn. The 2.65 % given there is that of a ring at 24 in.
    const coil = (id: string, radius: number) =>
      bareTrack(
        id,
        [{ kind: 'helix', id: 'helix', radiusMm: radius * inch, turn: 'left', turns: 3 }],
        [
          { atMm: 0, heightMm: 0 },
          { at: { endOf: 'track' }, heightMm: 3 * 4 * inch },
        ],
        { xMm: 0, yMm: -radius * inch, headingDeg: 0 },
      );
    const scene = railway([coil('inner', 22), coil('outer', 24)]);
    const [fact, ...more] = factsOf(scene, 'helix-grades');
    expect(more).toEqual([]);
    expect(fact.value * 100).toBeCloseTo(2.894, 3);
    expect(fact.limit * 100).toBeCloseTo(2.653, 3);
    const { what } = adviceWords(fact, scene, { lengthUnit: 'in', gradeForm: 'percent' });
    expect(what).toMatch(/^2\.89\s% here, 2\.65\s% on outer/);
  });

  it('asks for the easements of the norm’s own table at the mouths of helices', () => {
    // NEM 113 (2016), Table 2, G = 16.5: R and L, mm, printed to the nearest 5 mm.
    const table = [
      [350, 275],
      [400, 295],
      [500, 330],
      [600, 360],
      [700, 390],
      [800, 415],
    ] as const;
    for (const [radiusMm, lengthMm] of table) {
      const line = bareTrack('line', [
        { kind: 'straight', lengthMm: 2000 },
        { kind: 'helix', id: 'helix', radiusMm, turn: 'left', turns: 2 },
      ]);
      const [fact] = factsOf(railway([line]), 'missing-easement');
      expect(Math.abs(fact.limit * 1000 - lengthMm)).toBeLessThanOrEqual(2.5);
    }
  });
});
