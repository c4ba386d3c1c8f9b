import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPlacement, placeVehicle, pointOnVehicle } from '../../../src/core/stock/index.ts';
import { arc, helix, reverseTrack, straight, trackPoint } from '../../../src/core/track/index.ts';
import type { PlanElement } from '../../../src/core/track/types.ts';
import { sampleTrack, sampleVehicle, variedElements, variedGrades } from './samples.ts';

const coach = sampleVehicle({ pivotSpacing: 0.186, overhang: 0.036 });

const radius = fc.double({ min: 0.35, max: 3, noNaN: true });
const spacing = fc.double({ min: 0.03, max: 0.26, noNaN: true });
const share = fc.double({ min: 0.1, max: 0.9, noNaN: true });

/** Places agree to half a picometre: rounding of room-sized coordinates carried through a few sums. */
const exact = 12;
/** Directions are such places over a wheelbase of down to 30 mm: a digit less. */
const exactDirection = 11;

const mirrored = (elements: readonly PlanElement[]): PlanElement[] =>
  elements.map((e) => ({ ...e, startCurvature: -e.startCurvature, endCurvature: -e.endCurvature }));

describe('a vehicle placed on a track', () => {
  it('stands on straight level track with its running points half the spacing either side', () => {
    const placed = placeVehicle(sampleTrack([straight(2)]), coach, 1);
    expect(placed.frontChainage).toBeCloseTo(1.093, exact);
    expect(placed.rearChainage).toBeCloseTo(0.907, exact);
    expect(placed.origin).toEqual([1, 0, 0]);
    expect(placed.ahead).toEqual([1, 0, 0]);
    expect(placed.left.map((v) => v + 0)).toEqual([0, 1, 0]);
    expect(placed.up.map((v) => v + 0)).toEqual([0, 0, 1]);
  });

  it('covers less chainage than its spacing on a steep straight, by the cosine', () => {
    // A 3-4-5 slope.
    const track = sampleTrack(
      [straight(2)],
      [
        { chainage: 0, height: 0 },
        { chainage: 2, height: 1.5 },
      ],
    );
    const placed = placeVehicle(track, sampleVehicle({ pivotSpacing: 0.25, overhang: 0 }), 1);
    expect(placed.frontChainage - placed.rearChainage).toBeCloseTo(0.2, exact);
    expect(placed.ahead[0]).toBeCloseTo(0.8, exact);
    expect(placed.ahead[2]).toBeCloseTo(0.6, exact);
    expect(placed.up[0]).toBeCloseTo(-0.6, exact);
    expect(placed.up[2]).toBeCloseTo(0.8, exact);
  });

  it('puts its running points on a circle at the angle whose chord they are', () => {
    // Chord equal to the radius subtends 60 degrees.
    const track = sampleTrack([arc(0.25, Math.PI)]);
    const placed = placeVehicle(track, sampleVehicle({ pivotSpacing: 0.25, overhang: 0 }), 0.4);
    expect(placed.frontChainage - placed.rearChainage).toBeCloseTo((0.25 * Math.PI) / 3, exact);
    const centre = Math.hypot(placed.origin[0], placed.origin[1] - 0.25);
    expect(centre).toBeCloseTo((0.25 * Math.sqrt(3)) / 2, exact);
  });

  it('keeps its running points exactly the pivot spacing apart in space, at any place of a varied route', () => {
    fc.assert(
      fc.property(radius, spacing, share, (r, b, at) => {
        const track = sampleTrack(variedElements(r), variedGrades);
        const placed = placeVehicle(track, sampleVehicle({ pivotSpacing: b, overhang: 0.03 }), at * track.length);
        const front = trackPoint(track, placed.frontChainage);
        const rear = trackPoint(track, placed.rearChainage);
        expect(Math.hypot(front.x - rear.x, front.y - rear.y, front.z - rear.z)).toBeCloseTo(b, exact);
        expect((placed.frontChainage + placed.rearChainage) / 2).toBeCloseTo(at * track.length, exact);
        const nose = pointOnVehicle(placed, b / 2, 0, 0);
        expect(Math.hypot(nose[0] - front.x, nose[1] - front.y, nose[2] - front.z)).toBeLessThan(1e-12);
      }),
    );
  });

  it('has an orthonormal right-handed frame whose left is level', () => {
    fc.assert(
      fc.property(radius, spacing, share, (r, b, at) => {
        const track = sampleTrack(variedElements(r), variedGrades);
        const { ahead, left, up } = placeVehicle(
          track,
          sampleVehicle({ pivotSpacing: b, overhang: 0 }),
          at * track.length,
        );
        const dot = (u: readonly number[], v: readonly number[]) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
        for (const axis of [ahead, left, up]) expect(dot(axis, axis)).toBeCloseTo(1, exact);
        expect(dot(ahead, left)).toBeCloseTo(0, exact);
        expect(dot(ahead, up)).toBeCloseTo(0, exact);
        expect(dot(left, up)).toBeCloseTo(0, exact);
        expect(left[2]).toBe(0);
        expect(up[2]).toBeGreaterThan(0);
        expect(left[0] * up[1] - left[1] * up[0]).toBeCloseTo(ahead[2], exact);
      }),
    );
  });

  it('stands in the same place when the track is run the other way', () => {
    fc.assert(
      fc.property(radius, spacing, share, (r, b, at) => {
        const track = sampleTrack(variedElements(r), variedGrades);
        const body = sampleVehicle({ pivotSpacing: b, overhang: 0.03 });
        const there = placeVehicle(track, body, at * track.length);
        const back = placeVehicle(reverseTrack(track), body, track.length - at * track.length);
        for (let i = 0; i < 3; i++) {
          expect(back.origin[i]).toBeCloseTo(there.origin[i], exact);
          expect(back.ahead[i]).toBeCloseTo(-there.ahead[i], exactDirection);
          expect(back.left[i]).toBeCloseTo(-there.left[i], exactDirection);
          expect(back.up[i]).toBeCloseTo(there.up[i], exactDirection);
          expect(back.frontTangent[i]).toBeCloseTo(-there.rearTangent[i], exactDirection);
        }
        expect(back.frontChainage).toBeCloseTo(track.length - there.rearChainage, exact);
      }),
    );
  });

  it('stands mirrored on the mirrored track', () => {
    fc.assert(
      fc.property(radius, spacing, share, (r, b, at) => {
        const elements = variedElements(r);
        const track = sampleTrack(elements, variedGrades);
        const body = sampleVehicle({ pivotSpacing: b, overhang: 0.03 });
        const one = placeVehicle(track, body, at * track.length);
        const other = placeVehicle(sampleTrack(mirrored(elements), variedGrades), body, at * track.length);
        expect(other.origin[0]).toBeCloseTo(one.origin[0], exact);
        expect(other.origin[1]).toBeCloseTo(-one.origin[1], exact);
        expect(other.origin[2]).toBeCloseTo(one.origin[2], exact);
        expect(other.frontChainage).toBeCloseTo(one.frontChainage, exact);
      }),
    );
  });

  it('fills the placement it is given', () => {
    const out = newPlacement();
    expect(placeVehicle(sampleTrack([straight(1)]), coach, 0.5, out)).toBe(out);
    expect(out.chainage).toBe(0.5);
  });

  it('is refused where the vehicle is longer than the curve is wide', () => {
    const track = sampleTrack([arc(0.1, 6 * Math.PI)]);
    const long = sampleVehicle({ pivotSpacing: 0.25, overhang: 0 });
    expect(() => placeVehicle(track, long, track.length / 2)).toThrow(RangeError);
  });

  it('lies along a helix with the pitch of its chord', () => {
    // Rise 0.08 a turn on radius 0.5; a chord over angle β rises 0.08 β/2π over a plan of 2R sin(β/2).
    const track = sampleTrack(
      [helix(0.5, 3)],
      [
        { chainage: 0, height: 0 },
        { chainage: 3 * Math.PI, height: 0.24 },
      ],
    );
    const placed = placeVehicle(track, coach, 4);
    const angle = (placed.frontChainage - placed.rearChainage) / 0.5;
    const rise = (0.08 * angle) / (2 * Math.PI);
    expect(Math.hypot(2 * 0.5 * Math.sin(angle / 2), rise)).toBeCloseTo(0.186, exact);
    expect(placed.ahead[2]).toBeCloseTo(rise / 0.186, exact);
  });
});
