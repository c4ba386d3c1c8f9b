import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  jointGeometry,
  placeCoupled,
  placeVehicle,
  referenceSpacing,
  standTrain,
} from '../../../src/core/stock/index.ts';
import { arc, makeTrack, straight } from '../../../src/core/track/index.ts';
import { evenly } from '../../evenly.ts';
import { sampleTrack, sampleVehicle, variedElements, variedGrades } from './samples.ts';

const coach = sampleVehicle({ pivotSpacing: 0.186, overhang: 0.036 });
const wagon = sampleVehicle({ pivotSpacing: 0.06, overhang: 0.018, coupling: { headHeight: 0.0104 } });

describe('coupling a vehicle behind another', () => {
  it('stands it at the reference spacing on straight level track', () => {
    const track = sampleTrack([straight(3)]);
    expect(2 - placeCoupled(track, coach, coach, 2)).toBeCloseTo(referenceSpacing(coach, coach), 11);
    // 2 (93 + 36 - 8) + 2 × 10.
    expect(referenceSpacing(coach, coach)).toBeCloseTo(0.262, 12);
    expect(2 - placeCoupled(track, coach, wagon, 2, 0)).toBeCloseTo(referenceSpacing(coach, wagon), 11);
    expect(2 - placeCoupled(track, coach, coach, 2, 0.0015)).toBeCloseTo(0.2635, 11);
  });

  it('leaves the pivots at the free length plus the extension in space, anywhere on a varied route', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        fc.double({ min: 0.2, max: 0.9, noNaN: true }),
        evenly(-0.001, 0.002),
        (r, at, extension) => {
          const track = sampleTrack(variedElements(r), variedGrades);
          const s = at * track.length;
          const behind = placeCoupled(track, coach, wagon, s, extension);
          const g = jointGeometry(coach, wagon, placeVehicle(track, coach, s), placeVehicle(track, wagon, behind));
          expect(g.pinDistance).toBeCloseTo(0.02 + extension, 11);
          expect(behind).toBeLessThan(s);
        },
      ),
    );
  });

  it('still finds its place a kilometre from the origin, where coordinates are rounded to a ten-billionth of a millimetre', () => {
    const track = makeTrack({
      start: { x: 1000, y: -1000, heading: 0.3 },
      elements: variedElements(0.5),
      profile: { points: variedGrades },
    });
    for (let s = 0.6; s < track.length - 0.1; s += 0.0137) {
      const behind = placeCoupled(track, coach, wagon, s);
      const g = jointGeometry(coach, wagon, placeVehicle(track, coach, s), placeVehicle(track, wagon, behind));
      expect(g.pinDistance).toBeCloseTo(0.02, 10);
    }
  });

  it('takes up more chainage in a curve than on the straight, where pivots of long bodies are thrown out', () => {
    const track = sampleTrack([arc(0.5, 5)]);
    expect(2 - placeCoupled(track, coach, coach, 2)).not.toBeCloseTo(referenceSpacing(coach, coach), 4);
  });

  it('refuses an extension that no place gives', () => {
    const track = sampleTrack([straight(3)]);
    expect(() => placeCoupled(track, coach, wagon, 2, -0.0199)).toThrow(RangeError);
  });
});

describe('standing a train', () => {
  it('couples each vehicle behind the one before', () => {
    const track = sampleTrack(variedElements(0.6), variedGrades);
    const train = [coach, wagon, coach];
    const chainages = standTrain(track, train, 2.5);
    expect(chainages[0]).toBe(2.5);
    expect(chainages[1]).toBe(placeCoupled(track, coach, wagon, 2.5));
    expect(chainages[2]).toBe(placeCoupled(track, wagon, coach, chainages[1]));
  });
});
