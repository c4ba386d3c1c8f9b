import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaussLegendre, integrate } from '../../../../src/core/math/index.ts';
import {
  chainageAtRail,
  type GradePoint,
  makeTrack,
  railAt,
  straight,
  type Track,
  trackPoint,
} from '../../../../src/core/track/index.ts';
import { anyFraction, anyTrack } from '../arbitraryTracks.ts';

const climb = (length: number, points: readonly GradePoint[]): Track =>
  makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(length)], profile: { points } });

describe('rail distance', () => {
  it('is the hypotenuse on a steady grade', () => {
    // 3-4-5: a grade of 75 % over 4 m is 5 m of rail.
    const track = climb(4, [
      { chainage: 0, height: 0 },
      { chainage: 4, height: 3 },
    ]);
    expect(track.railLength).toBeCloseTo(5, 14);
    expect(railAt(track, 2)).toBeCloseTo(2.5, 15);
    expect(chainageAtRail(track, 2.5)).toBeCloseTo(2, 15);
  });

  it('is the textbook length of a parabola, gentle or steep', () => {
    // y = s²/2p from the vertex: (s/2)√(1+s²/p²) + (p/2)·asinh(s/p).
    const parabola = (s: number, p: number): number => (s / 2) * Math.hypot(1, s / p) + (p / 2) * Math.asinh(s / p);
    for (const [p, half] of [
      [25, 0.5],
      [4, 1.5],
      [0.4, 1],
    ] as const) {
      const g = half / p;
      const track = climb(2 * half + 2, [
        { chainage: 0, height: g * (1 + half) },
        { chainage: 1 + half, height: 0, curve: { length: 2 * half } },
        { chainage: 2 + 2 * half, height: g * (1 + half) },
      ]);
      const found = railAt(track, 1 + 2 * half) - railAt(track, 1 + half);
      expect(Math.abs(found / parabola(half, p) - 1)).toBeLessThan(1e-14);
    }
  });

  it('agrees with fine quadrature of √(1+g²) to 1e-12 of the length', () => {
    const rule = gaussLegendre(20);
    fc.assert(
      fc.property(anyTrack, (track) => {
        let length = 0;
        const ends = [...track.profile.startChainage.subarray(1), track.length];
        ends.forEach((to, k) => {
          const from = track.profile.startChainage[k];
          // Kept off the ends, where the grade may break.
          const grade = (s: number): number => trackPoint(track, s).grade;
          length += integrate((s) => Math.hypot(1, grade(s)), from, to, rule);
        });
        expect(Math.abs(track.railLength / length - 1)).toBeLessThan(1e-12);
      }),
      { numRuns: 40 },
    );
  });

  it('holds on the violent grades of a strip far off its heights', () => {
    // Cubic pieces with grades beyond 100 %: checked against 20,000 chords, which fall short by some 1e-9.
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1)],
      profile: {
        points: [{ chainage: 0, height: 0 }],
        strip: {
          supports: [0, 0.3, -0.4, 0.5, 0].map((departure, i) => ({ chainage: i / 4, departure })),
          hinges: [],
        },
      },
    });
    let chords = 0;
    for (let i = 0; i < 20_000; i++) {
      const rise = trackPoint(track, (i + 1) / 20_000).z - trackPoint(track, i / 20_000).z;
      chords += Math.hypot(1 / 20_000, rise);
    }
    expect(track.railLength).toBeGreaterThan(2);
    expect(track.railLength - chords).toBeGreaterThan(0);
    expect(track.railLength - chords).toBeLessThan(1e-7);
    for (let s = 0; s <= 1; s += 0.01) expect(chainageAtRail(track, railAt(track, s))).toBeCloseTo(s, 13);
  });

  it('rises with chainage by at least as much, and its inverse comes back', () => {
    fc.assert(
      fc.property(anyTrack, anyFraction, anyFraction, (track, p, q) => {
        const [from, to] = [p, q].map((fraction) => -0.5 + fraction * (track.length + 1)).sort((a, b) => a - b);
        expect(railAt(track, to) - railAt(track, from)).toBeGreaterThanOrEqual((to - from) * (1 - 1e-14) - 1e-14);
        for (const s of [from, to]) {
          expect(Math.abs(chainageAtRail(track, railAt(track, s)) - s)).toBeLessThan(1e-13 * (1 + Math.abs(s)));
        }
      }),
    );
  });

  it('goes on at the grade of the ends', () => {
    const track = climb(4, [
      { chainage: 0, height: 0 },
      { chainage: 4, height: 3 },
    ]);
    expect(railAt(track, -4)).toBeCloseTo(-5, 14);
    expect(railAt(track, 8)).toBeCloseTo(10, 14);
    expect(chainageAtRail(track, -2.5)).toBeCloseTo(-2, 14);
    expect(chainageAtRail(track, 7.5)).toBeCloseTo(6, 14);
    expect(chainageAtRail(track, track.railLength)).toBe(4);
  });
});
