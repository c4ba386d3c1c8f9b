import { describe, expect, it } from 'vitest';
import {
  gradeBreaks,
  makeTrack,
  plannedHeight,
  type StripSpec,
  straight,
  type Track,
  trackPoint,
} from '../../src/core/track/index.ts';

const STRAIGHTEDGE = 0.3048;

/** Signed gap under the middle of a 12 in straightedge laid on the rail about `s`: positive over a hollow, negative on a hump. */
function gap(track: Track, s: number): number {
  const [back, ahead] = [trackPoint(track, s - STRAIGHTEDGE / 2).z, trackPoint(track, s + STRAIGHTEDGE / 2).z];
  return (back + ahead) / 2 - trackPoint(track, s).z;
}

const sampled = (from: number, to: number): number[] =>
  Array.from({ length: 2001 }, (_, i) => from + ((to - from) * i) / 2000);

describe('a club ramp of three 1220 mm modules that rise 75 mm with 610 mm vertical curves at both ends', () => {
  // Worked by hand with formulas of the trade (common practice, no source): grade = rise/(length - one curve), vertical
  // radius = length/change, gap under a straightedge = c²/8R, limit 1/16 in (a modular group's guideline).
  const grade = 75 / (3660 - 610);
  const ramp = (strip?: StripSpec): Track =>
    makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(3.66)],
      profile: {
        points: [
          { chainage: -1, height: 0 },
          { chainage: 0.305, height: 0, curve: { length: 0.61 } },
          { chainage: 3.355, height: 0.075, curve: { length: 0.61 } },
          { chainage: 5, height: 0.075 },
        ],
        ...(strip && { strip }),
      },
    });

  it('is nowhere steeper than 2.46 %', () => {
    const steepest = Math.max(...sampled(0, 3.66).map((s) => trackPoint(ramp(), s).grade));
    expect(steepest).toBeCloseTo(grade, 14);
    expect(steepest * 100).toBeCloseTo(2.46, 2);
  });

  it('has a vertical radius of 24.8 m and a gap of 0.47 mm under the straightedge', () => {
    const track = ramp();
    expect(1 / trackPoint(track, 0.3).verticalCurvature).toBeCloseTo(24.8, 1);
    expect(gap(track, 0.3) * 1000).toBeCloseTo(0.47, 2);
    const widest = Math.max(...sampled(0.153, 3.5).map((s) => Math.abs(gap(track, s))));
    expect(widest * 1000).toBeLessThan(1.5875);
  });

  it('breaks its grade by 0.49 % when the first joint stands 3 mm high, and climbs 75 mm as before', () => {
    // Modules butt without a splice: 3 mm up over 1220 mm and 3 mm down again, 0.246 % twice.
    const track = ramp({
      supports: [0, 0.003, 0, 0].map((departure, i) => ({ chainage: i * 1.22, departure })),
      hinges: [1.22, 2.44],
    });
    expect(trackPoint(track, 3.66).z - trackPoint(track, 0).z).toBeCloseTo(0.075, 14);
    const [first, second] = gradeBreaks(track);
    expect(first.chainage).toBe(1.22);
    expect((first.before - first.after) * 100).toBeCloseTo(0.49, 2);
    expect((second.after - second.before) * 100).toBeCloseTo(0.246, 3);
    expect(trackPoint(track, 1.22).z - plannedHeight(track, 1.22)).toBeCloseTo(0.003, 14);
  });
});

describe('a ramp of 2.2 % on rods 275 mm apart with rod 6 out by 2.5 mm', () => {
  // Worked by hand from the infinite row of equal spans (a cardinal spline): slopes at the rods follow the factor √3 - 2 and
  // the neighbours of the raised rod have slope ±0.804·δ/h (common practice, no source).
  const track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(11 * 0.275)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 1, height: 0.022 },
      ],
      strip: {
        supports: Array.from({ length: 12 }, (_, i) => ({ chainage: i * 0.275, departure: i === 5 ? 0.0025 : 0 })),
        hinges: [],
      },
    },
  });
  const rod = 5 * 0.275;
  const gradesBetween = (from: number, to: number): number[] =>
    sampled(from, to).map((s) => trackPoint(track, s).grade * 100);

  it('climbs at up to 3.42 % before it and down to 0.98 % after it', () => {
    expect(Math.max(...gradesBetween(rod - 0.275, rod))).toBeCloseTo(3.42, 2);
    expect(Math.min(...gradesBetween(rod, rod + 0.275))).toBeCloseTo(0.98, 2);
    expect(trackPoint(track, rod).grade * 100).toBeCloseTo(2.2, 3);
  });

  it('shows 1.18 mm under a 12 in straightedge on the rod and a hollow of 0.72 mm beside it', () => {
    expect(-gap(track, rod) * 1000).toBeCloseTo(1.18, 2);
    expect(Math.max(...sampled(rod - 0.55, rod).map((s) => gap(track, s))) * 1000).toBeCloseTo(0.72, 2);
  });

  it('scales with the error of the rod', () => {
    const steepest = (departure: number): number => {
      const spec = track.spec;
      const supports = Array.from({ length: 12 }, (_, i) => ({
        chainage: i * 0.275,
        departure: i === 5 ? departure : 0,
      }));
      const other = makeTrack({ ...spec, profile: { ...spec.profile, strip: { supports, hinges: [] } } });
      return Math.max(...sampled(rod - 0.275, rod).map((s) => trackPoint(other, s).grade)) - 0.022;
    };
    expect(steepest(0.005)).toBeCloseTo(2 * steepest(0.0025), 14);
  });
});
