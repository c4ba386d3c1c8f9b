import { describe, expect, it } from 'vitest';
import {
  arc,
  helix,
  makeTrack,
  straight,
  TrackError,
  trackPoint,
  transition,
} from '../../../../src/core/track/index.ts';
import { levelTrack } from '../arbitraryTracks.ts';

describe('plan elements', () => {
  it('have the length and curvature their names say', () => {
    expect(straight(2)).toEqual({ kind: 'straight', length: 2, startCurvature: 0, endCurvature: 0 });
    expect(arc(0.5, Math.PI)).toEqual({ kind: 'arc', length: Math.PI / 2, startCurvature: 2, endCurvature: 2 });
    expect(arc(0.5, -1)).toMatchObject({ length: 0.5, startCurvature: -2 });
    expect(helix(0.6, -2.5).length).toBeCloseTo(2 * Math.PI * 0.6 * 2.5, 12);
    expect(helix(0.6, -2.5).startCurvature).toBeCloseTo(-1 / 0.6, 14);
    expect(transition(0.3, 0, 2)).toEqual({ kind: 'transition', length: 0.3, startCurvature: 0, endCurvature: 2 });
  });

  it('refuse what has no geometry, with a sentence', () => {
    expect(() => straight(-1)).toThrow(/-1 m long/);
    expect(() => arc(0, 1)).toThrow(/radius of 0 m/);
    expect(() => arc(Number.NaN, 1)).toThrow(RangeError);
    expect(() => helix(0.5, Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => transition(1, Number.NaN, 0)).toThrow(TrackError);
  });
});

describe('the plan', () => {
  it('turns a quarter circle to the left to (R, R) and to the right to (R, -R)', () => {
    const left = trackPoint(levelTrack(arc(0.6, Math.PI / 2)), 0.3 * Math.PI);
    expect([left.x, left.y, left.heading]).toEqual([
      expect.closeTo(0.6, 14),
      expect.closeTo(0.6, 14),
      expect.closeTo(Math.PI / 2, 14),
    ]);
    expect(trackPoint(levelTrack(arc(0.6, -Math.PI / 2)), 0.3 * Math.PI).y).toBeCloseTo(-0.6, 14);
  });

  it('unwinds heading over many turns and comes back to where it was', () => {
    const track = levelTrack(helix(0.5, 12));
    const end = trackPoint(track, track.length);
    expect(end.heading).toBeCloseTo(24 * Math.PI, 11);
    // A heading of 75 rad is rounded to 1e-14.
    expect(Math.hypot(end.x, end.y)).toBeLessThan(2e-14);
  });

  it('goes on straight before its start and past its end, without curvature', () => {
    const track = makeTrack({
      start: { x: 1, y: 2, heading: Math.PI / 2 },
      elements: [arc(0.5, Math.PI / 2)],
      profile: {
        points: [
          { chainage: 0, height: 0.1 },
          { chainage: 1, height: 0.13 },
        ],
      },
    });
    expect(trackPoint(track, -0.2)).toMatchObject({
      chainage: -0.2,
      x: expect.closeTo(1, 14),
      y: expect.closeTo(1.8, 14),
      z: expect.closeTo(0.094, 14),
      curvature: 0,
      grade: expect.closeTo(0.03, 14),
    });
    const past = trackPoint(track, track.length + 0.4);
    expect([past.x, past.y, past.heading]).toEqual([
      expect.closeTo(0.5 - 0.4, 14),
      expect.closeTo(2.5, 14),
      expect.closeTo(Math.PI, 14),
    ]);
    expect(past.curvature).toBe(0);
    expect(trackPoint(track, track.length).curvature).toBe(2);
  });

  it('passes over elements of no length', () => {
    const track = levelTrack(straight(1), transition(0, 0, 5), arc(0.5, 1), straight(0));
    expect(track.plan.elements).toHaveLength(2);
    expect(trackPoint(track, track.length).curvature).toBe(2);
    expect(track.jumps).toEqual([{ chainage: 1, position: 0, heading: 0, curvature: 2 }]);
  });

  it('refuses a track without length, elements that are not finite, and absurd turning', () => {
    expect(() => levelTrack()).toThrow(/at least one element/);
    expect(() => levelTrack(straight(0))).toThrow(/at least one element/);
    expect(() => levelTrack({ ...straight(1), length: Number.NaN })).toThrow(/Element 1 \(straight\)/);
    expect(() => levelTrack(straight(1), transition(1, 0, 1e9))).toThrow(/Element 2 \(transition\) turns through more/);
    const start = { x: Number.NaN, y: 0, heading: 0 };
    expect(() =>
      makeTrack({ start, elements: [straight(1)], profile: { points: [{ chainage: 0, height: 0 }] } }),
    ).toThrow(/finite x, y and heading/);
  });

  it('writes into the object given and returns it', () => {
    const track = levelTrack(straight(1));
    const out = trackPoint(track, 0);
    expect(trackPoint(track, 0.7, out)).toBe(out);
    expect(out.x).toBe(0.7);
  });

  it('answers NaN for NaN', () => {
    expect(trackPoint(levelTrack(straight(1), arc(1, 1)), Number.NaN).x).toBeNaN();
  });
});
