import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  axleGap,
  bodyOutline,
  centreThrow,
  centreThrowHandbook,
  cornerThrow,
  endThrow,
  endThrowHandbook,
  middleAxleLift,
  placeVehicle,
  pointOnVehicle,
  sweptWidth,
} from '../../../src/core/stock/index.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from './samples.ts';

const coach = sampleVehicle({ pivotSpacing: 0.186, overhang: 0.036, rearOverhang: 0.028 });
const radius = fc.double({ min: 0.3, max: 5, noNaN: true });

describe('throw in a circular curve', () => {
  it('is what a placed vehicle shows', () => {
    fc.assert(
      fc.property(radius, (r) => {
        const track = sampleTrack([arc(r, 3)]);
        const placed = placeVehicle(track, coach, track.length / 2);
        const offset = (ahead: number, left = 0) => {
          const p = pointOnVehicle(placed, ahead, left, 0);
          return Math.hypot(p[0], p[1] - r) - r;
        };
        expect(offset(0)).toBeCloseTo(-centreThrow(r, 0.186), 12);
        expect(offset(0.093 + 0.036)).toBeCloseTo(endThrow(r, 0.186, 0.036), 12);
        expect(offset(-0.093 - 0.028)).toBeCloseTo(endThrow(r, 0.186, 0.028), 12);
        expect(offset(0.129, -0.017) - 0.017).toBeCloseTo(cornerThrow(r, 0.186, 0.036, 0.034), 12);
      }),
    );
  });

  it('has a 3-4-5 triangle of its own', () => {
    expect(centreThrow(5, 6)).toBeCloseTo(1, 15);
    expect(endThrow(5, 6, 0)).toBe(0);
    // The end lies 4 from the centre across and √20 along: 6 from it.
    expect(endThrow(5, 6, Math.sqrt(20) - 3)).toBeCloseTo(1, 14);
  });

  it('comes close to the handbook on wide curves: the next term is of the order of (L/R)²', () => {
    fc.assert(
      fc.property(radius, (r) => {
        const order = (0.258 / r) ** 2;
        expect(Math.abs(centreThrow(r, 0.186) / centreThrowHandbook(r, 0.186) - 1)).toBeLessThan(order);
        expect(Math.abs(endThrow(r, 0.186, 0.036) / endThrowHandbook(r, 0.186, 0.036) - 1)).toBeLessThan(order);
      }),
    );
  });

  it('is refused for a chord wider than the circle', () => {
    expect(() => centreThrow(0.1, 0.2)).toThrow(RangeError);
    expect(() => endThrow(0.1, 0.3, 0.01)).toThrow(RangeError);
  });
});

describe('the width swept', () => {
  it('is the body on straight track', () => {
    const swept = sweptWidth(sampleTrack([straight(2)]), coach, 1);
    expect(swept.left).toBeCloseTo(0.017, 12);
    expect(swept.right).toBeCloseTo(0.017, 12);
  });

  it('adds centre throw inside and corner throw outside in a long curve', () => {
    const swept = sweptWidth(sampleTrack([arc(0.5, 4)]), coach, 1);
    // Samples 2 mm apart miss step²/8R: a micrometre.
    expect(Math.abs(swept.left - 0.017 - centreThrow(0.5, 0.186))).toBeLessThan(1e-6);
    expect(Math.abs(swept.right - 0.017 - cornerThrow(0.5, 0.186, 0.036, 0.034))).toBeLessThan(1e-6);
  });

  it('is mirrored in the other hand of curve', () => {
    const one = sweptWidth(sampleTrack([straight(1), arc(0.5, 1)]), coach, 1.1);
    const other = sweptWidth(sampleTrack([straight(1), arc(0.5, -1)]), coach, 1.1);
    expect(other.left).toBeCloseTo(one.right, 12);
    expect(other.right).toBeCloseTo(one.left, 12);
  });

  it('already widens on the straight before a curve', () => {
    const swept = sweptWidth(sampleTrack([straight(1), arc(0.5, 1)]), coach, 0.98);
    expect(swept.left).toBeGreaterThan(0.0175);
  });
});

describe('the outline of a body', () => {
  it('has its corners where the body has, front left first', () => {
    const placed = placeVehicle(sampleTrack([straight(2)]), coach, 1);
    const flat = bodyOutline(coach, placed).flat();
    const expected = [1.129, 0.017, 1.129, -0.017, 0.879, -0.017, 0.879, 0.017];
    flat.forEach((v, i) => {
      expect(v).toBeCloseTo(expected[i], 12);
    });
  });
});

describe('a middle axle on a vertical curve', () => {
  const curve = (sign: number) =>
    sampleTrack(
      [straight(2)],
      [
        { chainage: 0, height: sign * 0.02 },
        { chainage: 1, height: 0, curve: { length: 0.8 } },
        { chainage: 2, height: sign * 0.02 },
      ],
    );
  const frame = sampleVehicle({ pivotSpacing: 0.09, overhang: 0.02, bogies: false });

  it('hangs in a sag and carries on a summit, by the sagitta of the wheelbase', () => {
    // Change of grade 4 % over 0.8 m: radius 20 m. 90²/(8·20000) = 0.0506 mm.
    const inSag = axleGap(curve(1), placeVehicle(curve(1), frame, 1));
    const onSummit = axleGap(curve(-1), placeVehicle(curve(-1), frame, 1));
    expect(inSag).toBeCloseTo(5.0625e-5, 9);
    expect(onSummit).toBeCloseTo(-5.0625e-5, 9);
    expect(middleAxleLift(20, 0.09)).toBeCloseTo(5.0625e-5, 9);
  });

  it('stands on the rail wherever the track is straight', () => {
    expect(axleGap(curve(1), placeVehicle(curve(1), frame, 0.3), 0.4)).toBeCloseTo(0, 12);
  });

  it('is exact on a circle: a 3-4-5 triangle', () => {
    expect(middleAxleLift(5, 6)).toBeCloseTo(1, 15);
    expect(() => middleAxleLift(2, 6)).toThrow(RangeError);
  });
});
