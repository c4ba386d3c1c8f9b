import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arc,
  gradeBreaks,
  helix,
  makeTrack,
  plannedHeight,
  reverseTrack,
  straight,
  type TrackPoint,
  trackPoint,
  transition,
} from '../../../src/core/track/index.ts';
import { anyFraction, anySpec, anyTrack, isNearJoin, levelTrack } from './arbitraryTracks.ts';

/** Central differences over this step, m, err by step²/6 of a third derivative below 100 and by rounding over step. */
const STEP = 1e-5;
const DIFFERENCE_TOLERANCE = 1e-8;

const difference = (after: number, before: number): number => (after - before) / (2 * STEP);

function close(found: number, expected: number, tolerance: number): void {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);
}

describe('every query', () => {
  it('is the derivative of the one before it', () => {
    fc.assert(
      fc.property(anyTrack, anyFraction, (track, fraction) => {
        const s = fraction * track.length;
        fc.pre(!isNearJoin(track, s, STEP));
        const [before, at, after] = [s - STEP, s, s + STEP].map((place) => trackPoint(track, place));
        close(difference(after.x, before.x), Math.cos(at.heading), DIFFERENCE_TOLERANCE);
        close(difference(after.y, before.y), Math.sin(at.heading), DIFFERENCE_TOLERANCE);
        close(difference(after.heading, before.heading), at.curvature, DIFFERENCE_TOLERANCE);
        close(difference(after.z, before.z), at.grade, DIFFERENCE_TOLERANCE);
        close(difference(after.grade, before.grade), at.verticalCurvature, DIFFERENCE_TOLERANCE);
        close(difference(after.cant, before.cant), at.twist, DIFFERENCE_TOLERANCE);
      }),
    );
  });

  it('has the derivatives of a worked place: 0.1 m into a clothoid of 0.4 m to R 0.5 on a 2 m sag', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [transition(0.4, 0, 2)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 0.2, height: 0, curve: { radius: 20 } },
          { chainage: 0.4, height: 0.004 },
        ],
      },
    });
    // κ = 2·0.1/0.4, heading = 0.5·0.1/2; the sag starts at 0.2 - 20·0.02/2 = 0, so grade 0.1/20 and z = 0.1²/40.
    expect(trackPoint(track, 0.1)).toMatchObject({
      curvature: expect.closeTo(0.5, 14),
      heading: expect.closeTo(0.025, 14),
      z: expect.closeTo(0.00025, 14),
      grade: expect.closeTo(0.005, 14),
      verticalCurvature: expect.closeTo(0.05, 13),
    });
  });

  it('is continuous across every join in position, heading and height', () => {
    fc.assert(
      fc.property(anyTrack, (track) => {
        const joins = [
          ...track.plan.startChainage,
          ...track.profile.startChainage,
          ...(track.cant?.startChainage ?? []),
        ].filter((s) => s > 0);
        for (const s of joins) {
          const before = trackPoint(track, s - 1e-9);
          const after = trackPoint(track, s + 1e-9);
          // 2e-9 m apart: no more may change than the sharpest curvature (5 per metre) and the steepest grade allow.
          close(Math.hypot(after.x - before.x, after.y - before.y), 2e-9, 1e-13);
          close(after.heading, before.heading, 1.1e-8);
          close(after.z, before.z, 1e-9);
          // The steepest twist drawn: 0.12 rad over a twentieth of a metre.
          close(after.cant, before.cant, 1e-7);
        }
      }),
    );
  });

  it('keeps grade continuous except where a break is reported', () => {
    fc.assert(
      fc.property(anyTrack, (track) => {
        const breaks = gradeBreaks(track);
        for (const s of track.profile.startChainage.subarray(1)) {
          const before = trackPoint(track, s - 1e-9).grade;
          const after = trackPoint(track, s + 1e-9).grade;
          const reported = breaks.find((place) => place.chainage === s);
          // The steepest bend of these strips is some 2 per metre.
          if (reported === undefined) close(after, before, 1.1e-6);
          else {
            close(reported.before, before, 1e-8);
            close(reported.after, after, 1e-8);
          }
        }
      }),
    );
  });
});

describe('symmetry', () => {
  const sampled = (track: { length: number }): number[] =>
    Array.from({ length: 41 }, (_, i) => -0.1 + (i / 40) * (track.length + 0.2));

  it('reversed, the track has the same places with heading turned and signs changed', () => {
    fc.assert(
      fc.property(anyTrack, (track) => {
        const reversed = reverseTrack(track);
        close(reversed.length, track.length, 1e-13);
        close(reversed.railLength, track.railLength, 1e-12);
        for (const s of sampled(track)) {
          const there = trackPoint(track, s);
          const back = trackPoint(reversed, track.length - s);
          close(back.x, there.x, 1e-12);
          close(back.y, there.y, 1e-12);
          close(back.z, there.z, 1e-12);
          close(back.heading, there.heading + Math.PI, 1e-12);
          close(plannedHeight(reversed, track.length - s), plannedHeight(track, s), 1e-12);
          close(back.cant, -there.cant, 1e-12);
          if (isNearJoin(track, s, 1e-9)) continue;
          close(back.curvature, -there.curvature, 1e-11);
          close(back.grade, -there.grade, 1e-11);
          close(back.verticalCurvature, there.verticalCurvature, 1e-9);
          close(back.twist, there.twist, 1e-10);
        }
      }),
    );
  });

  it('reversed, a straight climb from the origin comes back down it', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(2)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 2, height: 0.05 },
        ],
      },
    });
    expect(trackPoint(reverseTrack(track), 0.5)).toMatchObject({
      x: 1.5,
      z: expect.closeTo(0.0375, 15),
      grade: -0.025,
    });
  });

  it('with every curvature negated, the track is mirrored in the x axis', () => {
    fc.assert(
      fc.property(anySpec, (spec) => {
        const track = makeTrack(spec);
        const mirrored = makeTrack({
          start: { x: spec.start.x, y: -spec.start.y, heading: -spec.start.heading },
          elements: spec.elements.map((element) => ({
            ...element,
            startCurvature: -element.startCurvature,
            endCurvature: -element.endCurvature,
          })),
          profile: spec.profile,
          ...(spec.cant && {
            cant: { ...spec.cant, points: spec.cant.points.map((point) => ({ ...point, cant: -point.cant })) },
          }),
        });
        for (const s of sampled(track)) {
          const here = trackPoint(track, s);
          const there = trackPoint(mirrored, s);
          close(there.cant, -here.cant, 1e-16);
          close(there.x, here.x, 1e-14);
          close(there.y, -here.y, 1e-14);
          close(there.heading, -here.heading, 1e-14);
          close(there.z, here.z, 0);
        }
      }),
    );
  });

  it('mirrored, an S that ends a known way to the left ends as far to the right', () => {
    // Two arcs of 60°: R·(1-cos 60°) twice is R.
    const s = (way: number): TrackPoint => {
      const track = levelTrack(arc(0.5, (way * Math.PI) / 3), arc(0.5, (-way * Math.PI) / 3));
      return trackPoint(track, track.length);
    };
    expect(s(1).y).toBeCloseTo(0.5, 14);
    expect(s(-1).y).toBeCloseTo(-0.5, 14);
  });

  it('does not change when an element is cut in two', () => {
    fc.assert(
      fc.property(anySpec, fc.nat(), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (spec, which, fraction) => {
        const track = makeTrack(spec);
        const k = which % spec.elements.length;
        const { kind, length, startCurvature, endCurvature } = spec.elements[k];
        const middle = startCurvature + (endCurvature - startCurvature) * fraction;
        const first = { kind, length: length * fraction, startCurvature, endCurvature: middle };
        const second = { kind, length: length * (1 - fraction), startCurvature: middle, endCurvature };
        const cut = makeTrack({
          ...spec,
          elements: [...spec.elements.slice(0, k), first, second, ...spec.elements.slice(k + 1)],
        });
        close(cut.length, track.length, 1e-13);
        expect(cut.jumps).toHaveLength(track.jumps.length);
        for (const s of sampled(track)) {
          const here = trackPoint(track, s);
          const there = trackPoint(cut, s);
          close(there.x, here.x, 1e-12);
          close(there.y, here.y, 1e-12);
          close(there.heading, here.heading, 1e-12);
        }
      }),
    );
  });

  it('a helix of three turns is three helixes of one', () => {
    const once = levelTrack(helix(0.6, 3));
    const thrice = levelTrack(helix(0.6, 1), helix(0.6, 1), helix(0.6, 1));
    expect(thrice.jumps).toEqual([]);
    const [a, b] = [trackPoint(once, 9), trackPoint(thrice, 9)];
    expect([b.x, b.y, b.heading]).toEqual([expect.closeTo(a.x, 13), expect.closeTo(a.y, 13), expect.closeTo(15, 13)]);
  });
});
