import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../src/core/math/index.ts';
import {
  arc,
  fitAlignment,
  helix,
  type MeasuredPlace,
  makeTrack,
  nearestChainage,
  type PlanElement,
  straight,
  trackPoint,
  transition,
} from '../../../../src/core/track/index.ts';
import { evenly } from '../../../evenly.ts';

const level = { points: [{ chainage: 0, height: 0 }] };

/** Places every so often along elements, each off by at most `noise` in x and in y. */
function measured(elements: readonly PlanElement[], every: number, noise: number, seed = 1): MeasuredPlace[] {
  const track = makeTrack({ start: { x: 0.3, y: 0.2, heading: 0.3 }, elements, profile: level });
  const random = seededRandom(seed);
  const steps = Math.round(track.length / every);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const { x, y } = trackPoint(track, (track.length * i) / steps);
    return { x: x + noise * (2 * random.uniform() - 1), y: y + noise * (2 * random.uniform() - 1) };
  });
}

const kinds = (fit: { readonly elements: readonly PlanElement[] }) => fit.elements.map(({ kind }) => kind);

describe('a measured centreline fitted with elements', () => {
  it('is a quarter circle through five points of one', () => {
    // Written down by hand: 600 mm about the origin, at 0, 22.5, 45, 67.5 and 90 degrees.
    const places = [
      { x: 0.6, y: 0 },
      { x: 0.554328, y: 0.22961 },
      { x: 0.424264, y: 0.424264 },
      { x: 0.22961, y: 0.554328 },
      { x: 0, y: 0.6 },
    ];
    for (const eased of [false, true]) {
      const fit = fitAlignment(places, { tolerance: 1e-4, eased });
      expect(kinds(fit)).toEqual(['arc']);
      expect(1 / fit.elements[0].startCurvature).toBeCloseTo(0.6, 5);
      // A quarter of 2π·0.6.
      expect(fit.length).toBeCloseTo(0.942478, 5);
      expect(fit.start.heading).toBeCloseTo(Math.PI / 2, 4);
    }
  });

  it('is one straight along a straight', () => {
    expect(kinds(fitAlignment(measured([straight(2)], 0.1, 0.0003), { tolerance: 0.001 }))).toEqual(['straight']);
  });

  it('finds an S-bend again through 0.3 mm of scatter', () => {
    const places = measured([straight(0.5), arc(0.6, 0.8), arc(0.7, -0.8), straight(0.6)], 0.05, 0.0003);
    const fit = fitAlignment(places, { tolerance: 0.001 });
    expect(kinds(fit)).toEqual(['straight', 'arc', 'arc', 'straight']);
    // 0.3 mm more or less of sagitta over 0.5 m of arc are 8·0.3 mm/(0.5 m)² = 0.01 1/m of curvature: 0.6 % of the radius.
    expect(1 / fit.elements[1].startCurvature).toBeCloseTo(0.6, 2);
    expect(1 / fit.elements[2].startCurvature).toBeCloseTo(-0.7, 2);
    expect(fit.distance).toBeLessThan(0.0006);
  });

  it('follows a helix over its own turns', () => {
    const fit = fitAlignment(measured([straight(1), helix(0.6, 3), straight(1)], 0.1, 0.0003), { tolerance: 0.001 });
    expect(kinds(fit)).toEqual(['straight', 'arc', 'straight']);
    // Three turns of 2π·0.6 m.
    expect(fit.elements[1].length).toBeCloseTo(11.3097, 2);
  });

  it('eases curves so that curvature never jumps', () => {
    const easedBend = [
      straight(0.8),
      transition(0.36, 0, 1 / 0.6),
      arc(0.6, 1),
      transition(0.36, 1 / 0.6, 0),
      straight(0.7),
    ];
    const fit = fitAlignment(measured(easedBend, 0.04, 0.0002), { tolerance: 0.0005, eased: true });
    expect(kinds(fit)).toEqual(['straight', 'transition', 'arc', 'transition', 'straight']);
    expect(fit.elements[1].length).toBeCloseTo(0.36, 2);
    const track = makeTrack({ start: fit.start, elements: fit.elements, profile: level });
    expect(track.jumps).toEqual([]);
  });

  it('lies within the tolerance of every place, needs no more elements than were measured, and says how far off it is', () => {
    const bend = fc.tuple(
      fc.double({ min: 0.4, max: 1.5, noNaN: true }),
      fc.double({ min: 0.4, max: 2.5, noNaN: true }),
      fc.boolean(),
      fc.double({ min: 0.3, max: 1.5, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(bend, { minLength: 1, maxLength: 2 }), fc.integer({ min: 1, max: 99 }), (bends, seed) => {
        const elements = [
          straight(0.5),
          ...bends.flatMap(([radius, angle, left, length]) => [arc(radius, left ? angle : -angle), straight(length)]),
        ];
        const places = measured(elements, 0.06, 0.0003, seed);
        const fit = fitAlignment(places, { tolerance: 0.001 });
        expect(fit.elements.length).toBeLessThanOrEqual(elements.length);
        const track = makeTrack({ start: fit.start, elements: fit.elements, profile: level });
        const distances = places.map(({ x, y }) => nearestChainage(track, [x, y, 0]).distance);
        expect(Math.max(...distances)).toBeLessThanOrEqual(0.001 + 1e-9);
        // The nearest place of all is at most as far as the one of its own stretch.
        expect(Math.max(...distances)).toBeLessThanOrEqual(fit.distance + 1e-7);
      }),
      { numRuns: 12 },
    );
  }, 60_000);

  it('is refused in words where no track is', () => {
    const at = (...xy: [number, number][]) => xy.map(([x, y]) => ({ x, y }));
    const tolerance = 0.001;
    expect(() => fitAlignment([], { tolerance })).toThrow('at least two places');
    expect(() => fitAlignment(at([1, 1], [1, 1]), { tolerance })).toThrow('at least two places');
    expect(() => fitAlignment(at([0, 0], [Number.NaN, 1]), { tolerance })).toThrow('Place 2 is not');
    expect(() => fitAlignment(at([0, 0], [1, 0]), { tolerance: 0 })).toThrow('give a positive one');
    expect(() => fitAlignment(at([0, 0], [1, 0], [0.5, 0.01]), { tolerance })).toThrow('doubles back at place 2 of 3');
    const many = Array.from({ length: 2001 }, (_, i) => ({ x: i, y: 0 }));
    expect(() => fitAlignment(many, { tolerance })).toThrow('thin them out');
    // A zigzag of 90 degree corners that no 60 pieces follow.
    const zigzag = Array.from({ length: 400 }, (_, i) => ({ x: i, y: i % 2 }));
    expect(() => fitAlignment(zigzag, { tolerance })).toThrow('More than 60 pieces');
  });
});

describe('heights of a measured centreline', () => {
  const along = (height: (x: number) => number) =>
    Array.from({ length: 61 }, (_, i) => ({ x: i * 0.05, y: 0, z: height(i * 0.05) }));

  it('are one grade on one grade', () => {
    const fit = fitAlignment(
      along((x) => 0.01 + 0.025 * x),
      { tolerance: 0.0005 },
    );
    expect(fit.profile).toHaveLength(2);
    expect(fit.profile?.[1].height).toBeCloseTo(0.085, 4);
  });

  it('are two grades with a parabola where one rounds the other', () => {
    // Level to 1 m, a parabola of 1 m to 3 %, then 3 %: its point of intersection is at 1.5 m.
    const fit = fitAlignment(
      along((x) => (x < 1 ? 0 : x < 2 ? 0.015 * (x - 1) * (x - 1) : 0.015 + 0.03 * (x - 2))),
      { tolerance: 0.001 },
    );
    expect(fit.profile?.length).toBeLessThanOrEqual(4);
    expect(fit.heightDistance).toBeLessThanOrEqual(0.001);
    const track = makeTrack({ start: fit.start, elements: fit.elements, profile: { points: fit.profile ?? [] } });
    const off = along(() => 0).map(({ x }) => {
      const meant = x < 1 ? 0 : x < 2 ? 0.015 * (x - 1) * (x - 1) : 0.015 + 0.03 * (x - 2);
      return Math.abs(trackPoint(track, x).z - meant);
    });
    // What is said of the fit is what the track made of it does.
    expect(Math.max(...off)).toBeCloseTo(fit.heightDistance ?? Number.NaN, 6);
  });

  it('are left out when one place has none', () => {
    expect(
      fitAlignment(
        [
          { x: 0, y: 0, z: 1 },
          { x: 1, y: 0 },
        ],
        { tolerance: 0.001 },
      ).profile,
    ).toBeUndefined();
  });

  it('stay within the tolerance on any grades', () => {
    fc.assert(
      fc.property(fc.array(evenly(-0.05, 0.05), { minLength: 60, maxLength: 60 }), (steps) => {
        let z = 0;
        const places = steps.map((grade, i) => {
          z += grade * 0.1;
          return { x: i * 0.1, y: 0, z };
        });
        const fit = fitAlignment(places, { tolerance: 0.001 });
        const track = makeTrack({ start: fit.start, elements: fit.elements, profile: { points: fit.profile ?? [] } });
        places.forEach((place, i) => {
          expect(Math.abs(trackPoint(track, fit.chainages[i]).z - place.z)).toBeLessThanOrEqual(0.001 + 1e-9);
        });
      }),
      { numRuns: 30 },
    );
  });
});
