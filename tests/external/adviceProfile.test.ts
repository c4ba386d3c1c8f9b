import { describe, expect, it } from 'vitest';
import type { Scene, SceneElement } from '../../src/scene/index.ts';
import { advised } from '../../src/sim/advice/index.ts';
import { bareTrack, factsOf, railway } from '../sim/advice/sceneOf.ts';

/** Inches in mm. */
const inch = 25.4;

const straight = (lengthMm: number): SceneElement => ({ kind: 'straight', lengthMm });

describe('a turnout on a vertical curve', () => {
  /** A level line that turns to 8 % on a vertical curve of this radius about 3 m, with a turnout from `atMm` on. */
  const scene = (radiusMm: number, frontMm: number, atMm: number): Scene =>
    railway([
      bareTrack(
        'main',
        [straight(6000)],
        [
          { atMm: 0, heightMm: 0 },
          { atMm: 3000, heightMm: 0, verticalCurveRadiusMm: radiusMm },
          { at: { endOf: 'track' }, heightMm: 240 },
        ],
      ),
      bareTrack('siding', [straight(600)], [{ at: { endOf: 'track' }, gradePercent: 0 }], {
        branchOf: 'main',
        atMm,
        towards: 'end',
        turnout: { hand: 'left', radiusMm: 800, gaugeMm: 16.5, frontMm, heelMm: 40 },
      }),
    ]);

  /** How much rail before the toe makes a turnout so long. */
  function frontFor(lengthMm: number): number {
    const [{ from, to }] = factsOf(scene(8000, 20, 2900), 'bent-turnout');
    return 20 + lengthMm - (to - from) * 1000;
  }

  it.each([
    // The radius at which a straightedge of 12 in shows 1/16 in, R = c²/8s: the limit of a modular group, quoted in a trackwork handbook's appendix on vertical curves.
    ['the limit of a 12 in straightedge', (12 * inch * 12 * inch) / (8 * (inch / 16)), inch / 16, 0.001],
    // A ramp of 2.46 % with 610 mm of vertical curve, by hand: 610/0.0246 = 24.8 m, and 304.8²/(8·24 800) = 0.47 mm.
    ['a gentle ramp', 24_800, 0.47, 0.005],
  ])('stands off the plane as a straightedge of its length shows: %s', (_what, radiusMm, gapMm, within) => {
    // In the middle of the curve.
    const [fact, ...more] = factsOf(scene(radiusMm, frontFor(12 * inch), 3000 - 6 * inch), 'bent-turnout');
    expect(more).toEqual([]);
    expect((fact.to - fact.from) * 1000).toBeCloseTo(12 * inch, 6);
    expect(Math.abs(fact.value * 1000 - gapMm)).toBeLessThan(within);
    expect(fact.chainage).toBeCloseTo(3, 6);
  });

  it('lies flat where the curve ends before it, and bends by what reaches in', () => {
    // "No turnouts on a vertical curve" is a magazine's rule (trains.com, vertical track easements).
    const [radius, length] = [8000, 300];
    const front = frontFor(length);
    const reaching = (mm: number) => factsOf(scene(radius, front, 3000 + (0.08 * radius) / 2 - mm), 'bent-turnout');
    expect(reaching(0)).toEqual([]);
    // By hand: a parabola (x - s)²/2R over the first x of a length ℓ, against the chord from e = x²/2R to nothing, is furthest off x²/2ℓ before its end:
    // e(1 - (x - x²/2ℓ)/ℓ) - (x²/2ℓ)²/2R. At 35 mm that is 0.068 mm, less than the sheet of paper of 0.1 mm; at 90 mm 0.366.
    expect(reaching(35)).toEqual([]);
    const [fact] = reaching(90);
    // Places 12.5 mm apart miss the greatest by (6.25 mm)²/2R at most.
    expect(Math.abs(fact.value * 1000 - 0.366)).toBeLessThan(0.003);
  });
});

describe('a change of grade at once', () => {
  /** A level line that turns to a grade, and a coach of so much over buffers and bogie centres; its heads stand at its ends. */
  function broken(percent: number, over: number, pivots: number): Scene {
    const scene = railway(
      [
        bareTrack(
          'line',
          [straight(6000)],
          [
            { atMm: 0, heightMm: 0 },
            { atMm: 3000, heightMm: 0 },
            { at: { endOf: 'track' }, heightMm: 30 * percent },
          ],
        ),
      ],
      true,
    );
    const { buffers: _none, ...coach } = scene.stock[0];
    return {
      ...scene,
      stock: [{ ...coach, overBuffersMm: undefined, lengthMm: over, bogies: { centresMm: pivots, wheelbaseMm: 30 } }],
      couplings: [{ id: 'bar', kind: 'hook-and-bar', pivotInsetMm: 10, reachMm: 10 }],
    } as unknown as Scene;
  }

  it('of 2.46 % steps the ends of coaches that stand out 45 mm by 1.1 mm', () => {
    // By hand: 45 · 0.0246.
    const [fact] = factsOf(broken(2.46, 208 + 2 * 45, 208), 'grade-break');
    expect(fact.value * 1000).toBeCloseTo(1.107, 6);
  });

  it.each([
    [85, 208, 30],
    [40, 100, 15],
  ])(
    'is answered for coaches of %d ft on %d mm by one of their lengths a per cent: a vertical radius of some %d m',
    (feet, pivots, radius) => {
      // A builders' rule (cs.trains.com, thread 220453), in 1:87.1; the radii are worked from it to the nearest 5 m. Another, 1.5 lengths for 2 %
      // (trains.com, vertical track easements), asks for less.
      const long = (feet * 12 * inch) / 87.1;
      const scene = broken(2, long, pivots);
      const [{ edit, chainage }] = factsOf(scene, 'grade-break');
      if (edit?.kind !== 'vertical-curve') throw new Error('a vertical curve is proposed');
      expect(chainage).toBeCloseTo(3, 9);
      expect(Math.abs(edit.lengthMm / 0.02 / 1000 - radius)).toBeLessThan(2.5);
      expect(edit.lengthMm).toBeGreaterThan(1.5 * long);
      expect(factsOf(advised(scene, 'line', edit), 'grade-break')).toEqual([]);
    },
  );
});
