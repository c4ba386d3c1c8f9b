import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arc,
  type LateralSpec,
  makeTrack,
  nearestChainage,
  reverseTrack,
  straight,
  type Track,
  TrackError,
  trackPoint,
  transition,
} from '../../../../src/core/track/index.ts';
import { evenly } from '../../../evenly.ts';

const elements = [straight(0.8), transition(0.3, 0, 1 / 0.6), arc(0.6, 1), straight(1)];

const laid = (lateral: LateralSpec | undefined, along = elements): Track =>
  makeTrack({
    start: { x: 0.3, y: -0.2, heading: 0.4 },
    elements: along,
    profile: { points: [{ chainage: 0, height: 0 }] },
    ...(lateral && { lateral }),
  });

const refusal = (lateral: LateralSpec): TrackError => {
  try {
    laid(lateral);
  } catch (error) {
    if (error instanceof TrackError) return error;
  }
  throw new Error('nothing was refused');
};

/** How far left of the planned line the laid one lies, square to it, by walking along the plan's normal. */
function offsetAt(plan: Track, track: Track, s: number): number {
  const on = trackPoint(plan, s);
  const near = nearestChainage(track, [on.x, on.y, 0]);
  const there = trackPoint(track, near.chainage);
  return Math.sign((there.y - on.y) * Math.cos(on.heading) - (there.x - on.x) * Math.sin(on.heading)) * near.distance;
}

const anyLateral: fc.Arbitrary<LateralSpec> = fc
  .record({
    offsets: fc.array(evenly(-0.002, 0.002), { minLength: 3, maxLength: 5 }),
    hinged: fc.boolean(),
    turn: evenly(-0.05, 0.05),
    reach: fc.constantFrom(0, 0.1, 0.2),
  })
  .map(({ offsets, hinged, turn, reach }) => ({
    points: [0, ...offsets, 0].map((offset, i) => ({ chainage: 0.3 + 0.25 * i, offset })),
    hinges: hinged ? [0.8] : [],
    kinks: [{ chainage: 2.2, turn, reach }],
  }));

describe('rails laid beside their line', () => {
  it('lie off it by the offsets given, and on it where they are held', () => {
    const points = [0, 0.0015, 0.0005, -0.001, 0].map((offset, i) => ({ chainage: 0.4 + 0.3 * i, offset }));
    const wander = { points, hinges: [], kinks: [] };
    const [plan, track] = [laid(undefined, [straight(2)]), laid(wander, [straight(2)])];
    // Second order in slopes of a hundredth: a tenth of a micrometre.
    for (const { chainage, offset } of points) expect(offsetAt(plan, track, chainage)).toBeCloseTo(offset, 6);
    for (const s of [0, 0.2, 0.4]) expect(offsetAt(plan, track, s)).toBeCloseTo(0, 12);
    const [end, meant] = [trackPoint(track, track.length), trackPoint(plan, plan.length)];
    expect(end.heading).toBeCloseTo(meant.heading, 12);
    expect(Math.hypot(end.x - meant.x, end.y - meant.y)).toBeLessThan(2e-5);
    // On a curve the length of the line is another as well: ∫κn ds comes to tenths of a millimetre, and the turning puts part of it sideways.
    const [curve, bent] = [laid(undefined), laid(wander)];
    for (const { chainage, offset } of points) {
      expect(Math.abs(offsetAt(curve, bent, chainage) - offset)).toBeLessThan(0.00014);
    }
  });

  it('on a straight bend as a clamped beam pushed in the middle: y = δ·(3u² - 2u³) over half the span', () => {
    // Fixed-ended beam, point load in the middle, u along half of it: any beam table, from memory.
    const points = [0, 0.001, 0].map((offset, i) => ({ chainage: 0.5 + 0.5 * i, offset }));
    const track = laid({ points, hinges: [], kinks: [] }, [straight(2)]);
    const [cos, sin] = [Math.cos(0.4), Math.sin(0.4)];
    for (const u of [0.25, 0.5, 0.75]) {
      const { x, y } = trackPoint(track, 0.5 + 0.5 * u);
      expect((y + 0.2) * cos - (x - 0.3) * sin).toBeCloseTo(0.001 * (3 * u * u - 2 * u ** 3), 8);
    }
    // Curvature 6δ/l² at the hold, l half the span.
    expect(trackPoint(track, 0.5 + 1e-9).curvature).toBeCloseTo(0.006 / 0.25, 6);
  });

  it('turn at a kinked joint by just its angle and come back to the line at its reach', () => {
    const track = laid({ points: [], hinges: [], kinks: [{ chainage: 1.6, turn: 0.03, reach: 0.2 }] });
    const jump = trackPoint(track, 1.6 + 1e-9).heading - trackPoint(track, 1.6 - 1e-9).heading;
    expect(jump).toBeCloseTo(0.03, 7);
    const plan = laid(undefined);
    // A joint that turns 0.03 left over 0.2 m either side stands 2 mm to the right, less (reach/R)²/8 = 1.4 % on this curve.
    expect(offsetAt(plan, track, 1.6) / -0.002).toBeGreaterThan(0.985);
    expect(offsetAt(plan, track, 1.6) / -0.002).toBeLessThan(1);
    expect(offsetAt(plan, track, 1.39)).toBeCloseTo(0, 12);
    expect(Math.abs(offsetAt(plan, track, 1.85))).toBeLessThan(0.0001);
    const reported = track.jumps.filter((place) => place.heading !== 0);
    expect(reported).toEqual([
      {
        chainage: expect.closeTo(1.6, 12),
        position: 0,
        heading: expect.closeTo(0.03, 12),
        curvature: expect.closeTo(0, 9),
      },
    ]);
  });

  it('swing all that follows where the kink has no reach', () => {
    const track = laid({ points: [], hinges: [], kinks: [{ chainage: 1, turn: -0.01, reach: 0 }] }, [straight(2)]);
    const end = trackPoint(track, 2);
    expect(end.heading).toBeCloseTo(0.39, 14);
    expect(end.x).toBeCloseTo(0.3 + Math.cos(0.4) + Math.cos(0.39), 14);
    expect(end.y).toBeCloseTo(-0.2 + Math.sin(0.4) + Math.sin(0.39), 14);
  });

  it('answer every query as its own derivative', () => {
    fc.assert(
      fc.property(anyLateral, evenly(0, 1), (lateral, share) => {
        const track = laid(lateral);
        const s = share * track.length;
        fc.pre(![0, track.length, ...track.plan.startChainage].some((place) => Math.abs(place - s) <= 1e-5));
        const [before, at, after] = [s - 1e-5, s, s + 1e-5].map((place) => trackPoint(track, place));
        expect((after.x - before.x) / 2e-5).toBeCloseTo(Math.cos(at.heading), 8);
        expect((after.y - before.y) / 2e-5).toBeCloseTo(Math.sin(at.heading), 8);
        expect((after.heading - before.heading) / 2e-5).toBeCloseTo(at.curvature, 8);
      }),
    );
  });

  it('keep their heading but at the joints, where every turn is reported', () => {
    fc.assert(
      fc.property(anyLateral, (lateral) => {
        const track = laid(lateral);
        for (const s of track.plan.startChainage.subarray(1)) {
          const turned = trackPoint(track, s + 1e-9).heading - trackPoint(track, s - 1e-9).heading;
          const reported = track.jumps.find((place) => place.chainage === s)?.heading ?? 0;
          expect(Math.abs(turned - reported)).toBeLessThan(1e-8);
        }
      }),
    );
  });

  it('are the same rails run the other way', () => {
    fc.assert(
      fc.property(anyLateral, evenly(0, 1), (lateral, share) => {
        const track = laid(lateral);
        const back = reverseTrack(track);
        const s = share * track.length;
        const [here, there] = [trackPoint(track, s), trackPoint(back, track.length - s)];
        expect(there.x).toBeCloseTo(here.x, 11);
        expect(there.y).toBeCloseTo(here.y, 11);
        fc.pre(!track.jumps.some((jump) => Math.abs(jump.chainage - s) < 1e-9));
        expect(there.heading).toBeCloseTo(here.heading + Math.PI, 11);
        expect(there.curvature).toBeCloseTo(-here.curvature, 9);
      }),
    );
  });

  it('keep every bit of the plan when they do not wander', () => {
    const [plan, track] = [laid(undefined), laid({ points: [], hinges: [], kinks: [] })];
    for (const s of [0, 0.5, 0.95, 1.5, 2.4]) expect(trackPoint(track, s)).toEqual(trackPoint(plan, s));
  });

  it('are refused off the track, out of order, or when the outer places are off the line', () => {
    const point = (chainage: number, offset = 0) => ({ chainage, offset });
    const only = (points: LateralSpec['points'], kinks: LateralSpec['kinks'] = []) => ({ points, hinges: [], kinks });
    expect(refusal(only([point(0.2, 0.001), point(0.5)])).message).toMatch(/offset 0, at either end/);
    expect(refusal(only([point(0.2)])).problem).toBe('bad-lateral');
    expect(refusal(only([point(0.5), point(0.2)])).message).toMatch(/Offset 2 of the rails, at chainage 0.2 m/);
    expect(refusal(only([point(0.2), point(9)])).problem).toBe('bad-lateral');
    expect(refusal(only([], [{ chainage: 0.1, turn: 0.01, reach: 0.3 }]))).toMatchObject({
      problem: 'bad-lateral',
      amount: expect.closeTo(0.2, 12),
    });
  });
});
