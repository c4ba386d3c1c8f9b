import { describe, expect, it } from 'vitest';
import {
  bufferPlaceMm,
  bufferToleranceH0Mm,
  jointGeometry,
  placeCoupled,
  placeVehicle,
} from '../../../src/core/stock/index.ts';
import type { JointGeometry, Vehicle } from '../../../src/core/stock/types.ts';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import type { GradePoint, StripSpec, Track } from '../../../src/core/track/types.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const pairAt = (track: Track, leading: Vehicle, trailing: Vehicle, s: number): JointGeometry =>
  jointGeometry(
    leading,
    trailing,
    placeVehicle(track, leading, s),
    placeVehicle(track, trailing, placeCoupled(track, leading, trailing, s)),
  );

/** Greatest height between facing heads, mm, as a pair goes along, its leading vehicle between two chainages. */
function greatestMismatch(
  track: Track,
  leading: Vehicle,
  trailing: Vehicle,
  from = 0.7,
  to = track.length - 0.3,
  step = 0.0005,
): number {
  let greatest = 0;
  for (let s = from; s < to; s += step) {
    greatest = Math.max(greatest, Math.abs(pairAt(track, leading, trailing, s).verticalOffset));
  }
  return greatest * 1000;
}

/** Heads meet where the body ends are: pivots as far inside as the shanks reach. */
const car = (pivots: number, overhang: number): Vehicle =>
  sampleVehicle({ pivotSpacing: pivots, overhang, coupling: { pivotInset: 0.01, reach: 0.01 } });
/** HO cars of 85 ft and of 40 ft. */
const long = car(0.208, 0.045);
const short = car(0.1, 0.024);

describe('NEM 303 (2015): buffer heights, H0', () => {
  it('lets two vehicles within tolerance differ by 1.0 mm', () => {
    // Source: 12.2 ± 0.5 mm above rail top.
    const at = (heightMm: number): Vehicle =>
      sampleVehicle({
        pivotSpacing: 0.1,
        overhang: 0.03,
        buffers: { spacing: 0.02, height: heightMm / 1000, headWidth: 0.0052, headHeight: 0.004, length: 0.006 },
      });
    const { height } = bufferPlaceMm.H0;
    const high = at(height + bufferToleranceH0Mm.height);
    const low = at(height - bufferToleranceH0Mm.height);
    const g = pairAt(sampleTrack([straight(3)]), high, low, 2);
    expect(g.bufferVertical[0] * 1000).toBeCloseTo(1, 9);
    expect(g.bufferVertical[1] * 1000).toBeCloseTo(1, 9);
  });
});

describe('a break of grade without a vertical curve', () => {
  // Source: rigid bodies on a kink, mismatch = change of grade × overhang when a running point is at the kink: 3 % and 40 mm
  // give 1.20 mm, 60 mm give 1.80. Common practice, no source. That is for heads at rail level; at their height h the bodies'
  // tilt moves where they meet by h·δ/2, 0.15 mm of overhang. Grades are tangents and bodies lie at angles: 3 % errs
  // by half its square, 0.0005 of the value, and steps of 0.05 mm may miss the peak by as much.
  it.each([
    { overhang: 0.04, mm: 1.2 },
    { overhang: 0.06, mm: 1.8 },
  ])('of 3 % under $overhang m of overhang: $mm mm', ({ overhang, mm }) => {
    for (const grades of [
      [0, 0.03],
      [0.015, -0.015],
    ]) {
      const track = sampleTrack(
        [straight(4)],
        [
          { chainage: 0, height: -2 * grades[0] },
          { chainage: 2, height: 0 },
          { chainage: 4, height: 2 * grades[1] },
        ],
      );
      const vehicle = car(0.15, overhang);
      expect(Math.abs(greatestMismatch(track, vehicle, vehicle, 1.9, 2.4, 5e-5) / mm - 1)).toBeLessThan(
        0.00015 / overhang + 0.001,
      );
    }
  });
});

describe('a club ramp of three 1220 mm modules that climbs 75 mm', () => {
  // Source: a worked example of common practice, no published source: 2.46 % between vertical curves of 610 mm; mismatch of a pair of 85 ft HO
  // cars 1.1 mm where the grade starts unrounded, about 0.3 mm with vertical curves and one joint 3 mm high.
  const rise = 0.075;
  const foot = 1;
  const top = foot + 3 * 1.22;
  const ramp = (rounded: boolean, strip?: StripSpec): Track => {
    const curve = rounded ? { curve: { length: 0.61 } } : {};
    const points: GradePoint[] = [
      { chainage: 0, height: 0 },
      { chainage: foot + 0.305, height: 0, ...curve },
      { chainage: top - 0.305, height: rise, ...curve },
      { chainage: top + 1, height: rise },
    ];
    return makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(top + 1)],
      profile: strip ? { points, strip } : { points },
    });
  };

  it('without vertical curves: 1.1 mm at the foot', () => {
    expect(greatestMismatch(ramp(false), long, long)).toBeCloseTo(1.1, 1);
  });

  it('with them: the end throw o(a + o)/2R on a radius of 24.8 m', () => {
    expect(greatestMismatch(ramp(true), long, long)).toBeCloseTo((45 * 253) / (2 * 24806), 2);
  });

  it('with the leg at the first joint 3 mm high and modules butted: about 0.3 mm, so it passes though a level shows it', () => {
    const joints = [foot, foot + 1.22, foot + 2.44, top];
    const supports = [0, ...joints, top + 1].map((chainage) => ({
      chainage,
      departure: chainage === joints[1] ? 0.003 : 0,
    }));
    expect(greatestMismatch(ramp(true, { supports, hinges: joints }), long, long)).toBeCloseTo(0.3, 1);
  });
});

describe('one support of a 2.2 % strip set 2.5 mm high, supports 275 mm apart', () => {
  // Source: a worked example of common practice, no published source: natural cubic spline through the supports, chords of 85 ft cars (208 between pivots,
  // 45 overhang) and 40 ft cars (100, 24), greatest height between ends that meet.
  const stripWith = (departure: number): Track => {
    const length = 12 * 0.275;
    const supports = Array.from({ length: 13 }, (_, i) => ({
      chainage: i * 0.275,
      departure: i === 6 ? departure : 0,
    }));
    return makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(length)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: length, height: 0.022 * length },
        ],
        strip: { supports, hinges: [] },
      },
    });
  };

  it.each([
    { name: 'long and long', leading: long, trailing: long, mm: 0.81 },
    { name: 'long and short', leading: long, trailing: short, mm: 0.58 },
    { name: 'short and long', leading: short, trailing: long, mm: 0.58 },
    { name: 'short and short', leading: short, trailing: short, mm: 0.13 },
  ])('$name: $mm mm', ({ leading, trailing, mm }) => {
    expect(Math.abs(greatestMismatch(stripWith(0.0025), leading, trailing) - mm)).toBeLessThan(0.006);
  });

  it.each([
    [1, 0.32],
    [2, 0.65],
    [3, 0.97],
    [4, 1.3],
  ])('%i mm high: %f mm between long cars', (departureMm, mm) => {
    expect(Math.abs(greatestMismatch(stripWith(departureMm / 1000), long, long) - mm)).toBeLessThan(0.006);
  });
});
