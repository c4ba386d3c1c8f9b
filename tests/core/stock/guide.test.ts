import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  guideLengthening,
  jointGeometry,
  placeCoupled,
  placeVehicle,
  turnVehicle,
} from '../../../src/core/stock/index.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { evenly } from '../../evenly.ts';
import { sampleCoupling, sampleTrack, sampleVehicle, variedElements, variedGrades } from './samples.ts';

const guide = { lengthening: 0.003, fullSwing: 0.3 };
const buffers = { spacing: 0.02, height: 0.0122, headWidth: 0.0052, headHeight: 0.004, length: 0.004 };
/** Faces 10 mm beyond pivots 8 mm inside the body end and buffers of 4 mm: buffer faces press 4 mm on the straight without play. */
const coach = (guided: boolean) =>
  sampleVehicle({
    pivotSpacing: 0.186,
    overhang: 0.036,
    buffers,
    coupling: { reach: 0.0125, ...(guided ? { guide } : {}) },
  });

const coupledOn = (track: ReturnType<typeof sampleTrack>, guided: boolean, s: number) => {
  const one = coach(guided);
  return jointGeometry(
    one,
    one,
    placeVehicle(track, one, s),
    placeVehicle(track, one, placeCoupled(track, one, one, s)),
  );
};

describe('a guided shank', () => {
  const coupling = sampleCoupling({ guide });

  it('leads the head out by nothing on the straight, half at half its swing, all at its full swing and beyond', () => {
    expect(guideLengthening(coupling, 0)).toBe(0);
    expect(guideLengthening(coupling, 0.15)).toBeCloseTo(0.0015, 12);
    expect(guideLengthening(coupling, -0.3)).toBe(0.003);
    expect(guideLengthening(coupling, 0.5)).toBe(0.003);
    expect(guideLengthening(sampleCoupling(), 0.2)).toBe(0);
  });

  it('never shortens as it swings', () => {
    const swing = evenly(0, 0.6);
    fc.assert(
      fc.property(swing, swing, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(guideLengthening(coupling, less)).toBeLessThanOrEqual(guideLengthening(coupling, more));
      }),
    );
  });

  it('lengthens a coupled pair in a curve by what both sides give at their swing, and opens the inner buffers by it', () => {
    const curve = sampleTrack([arc(0.5, 5)]);
    const [plain, guided] = [coupledOn(curve, false, 1.5), coupledOn(curve, true, 1.5)];
    const t = Math.abs(guided.swingLeading) / guide.fullSwing;
    expect(t).toBeGreaterThan(0.5);
    const each = guide.lengthening * t * t * (3 - 2 * t);
    expect(guided.lengthening).toBeCloseTo(2 * each, 12);
    expect(guided.pinDistance - plain.pinDistance).toBeCloseTo(2 * each, 9);
    // Along the bisector the gap opens by the lengthening but for the cosine of the swing, a few parts in a hundred.
    expect((guided.bufferGap[0] - plain.bufferGap[0]) / (2 * each)).toBeCloseTo(1, 1);
    // Inner faces that would press 3 mm deeper into each other than on the straight are clear with it.
    const straightGap = coupledOn(sampleTrack([straight(3)]), false, 1.5).bufferGap[0];
    expect(plain.bufferGap[0]).toBeLessThan(straightGap - 0.002);
    expect(guided.bufferGap[0]).toBeGreaterThan(straightGap);
  });

  it('is on the straight what it is without a guide', () => {
    const track = sampleTrack([straight(3)]);
    expect(coupledOn(track, true, 1.5).bufferGap[0]).toBeCloseTo(coupledOn(track, false, 1.5).bufferGap[0], 12);
  });

  it('keeps its pivots the led-out length apart on a route with everything on it, turned vehicles too', () => {
    const track = sampleTrack(variedElements(0.6), variedGrades);
    const [a, b] = [coach(true), turnVehicle(coach(true))];
    for (let s = 0.6; s < track.length - 0.3; s += 0.17) {
      const g = jointGeometry(a, b, placeVehicle(track, a, s), placeVehicle(track, b, placeCoupled(track, a, b, s)));
      expect(g.pinDistance).toBeCloseTo(0.025 + g.lengthening, 10);
    }
  });
});
