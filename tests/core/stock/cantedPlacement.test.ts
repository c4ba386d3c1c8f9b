import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointGeometry, placeVehicle, pointOnVehicle } from '../../../src/core/stock/index.ts';
import { arc, makeTrack, straight, trackPoint } from '../../../src/core/track/index.ts';
import type { CantPoint, PlanElement, Track } from '../../../src/core/track/types.ts';
import { evenly } from '../../evenly.ts';
import { sampleVehicle, variedElements, variedGrades } from './samples.ts';

const buffers = { spacing: 0.02, height: 0.0122, headWidth: 0.0052, headHeight: 0.004, length: 0.006 };
const coach = sampleVehicle({ pivotSpacing: 0.186, overhang: 0.036, buffers });

const track = (elements: readonly PlanElement[], ...points: CantPoint[]): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements,
    profile: { points: variedGrades },
    cant: { points, lever: 0 },
  });

const level = (points: CantPoint[]): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(3)],
    profile: { points: [{ chainage: 0, height: 0 }] },
    cant: { points, lever: 0 },
  });

describe('a vehicle on canted track', () => {
  it('leans to the low side: its left buffer falls by half the spacing times the sine', () => {
    // A lean whose sine is 0.06 and cosine 0.9982.
    const lean = Math.asin(0.06);
    const placed = placeVehicle(level([{ chainage: 0, cant: lean }]), coach, 1.5);
    expect(placed.roll).toBeCloseTo(lean, 15);
    expect(placed.twist).toBe(0);
    const left = pointOnVehicle(placed, 0, 0.01, 0);
    expect(left[2]).toBeCloseTo(-0.0006, 15);
    // The top of the body leans to the left as well: 45 mm up, 2.7 mm over.
    const roof = pointOnVehicle(placed, 0, 0, 0.045);
    expect(roof[1]).toBeCloseTo(0.0027, 15);
    expect(roof[2]).toBeCloseTo(0.045 * Math.sqrt(1 - 0.0036), 15);
  });

  it('rolls by the mean of its running points and tells the twist between them', () => {
    const placed = placeVehicle(
      level([
        { chainage: 1, cant: 0 },
        { chainage: 2, cant: 0.05 },
      ]),
      coach,
      1.5,
    );
    expect(placed.roll).toBeCloseTo(0.025, 14);
    // 0.05 rad a metre over 186 mm.
    expect(placed.twist).toBeCloseTo(0.0093, 14);
  });

  it('keeps an orthonormal right-handed frame whose left falls by the sine of the roll, square to the body', () => {
    const share = fc.double({ min: 0.1, max: 0.9, noNaN: true });
    const lean = evenly(-0.06, 0.06);
    fc.assert(
      fc.property(share, lean, lean, (at, c0, c1) => {
        const elements = variedElements(0.6);
        const laid = track(elements, { chainage: 0, cant: c0 }, { chainage: 4, cant: c1 });
        const placed = placeVehicle(laid, coach, at * laid.length);
        const { ahead, left, up } = placed;
        const dot = (u: readonly number[], v: readonly number[]) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
        for (const axis of [ahead, left, up]) expect(dot(axis, axis)).toBeCloseTo(1, 12);
        expect(dot(ahead, left)).toBeCloseTo(0, 12);
        expect(dot(left, up)).toBeCloseTo(0, 12);
        expect(left[0] * up[1] - left[1] * up[0]).toBeCloseTo(ahead[2], 12);
        expect(left[2]).toBeCloseTo(-Math.sin(placed.roll) * Math.hypot(ahead[0], ahead[1]), 12);
        const [front, rear] = [placed.frontChainage, placed.rearChainage].map((s) => trackPoint(laid, s).cant);
        expect(placed.roll).toBeCloseTo((front + rear) / 2, 14);
      }),
    );
  });

  it('stands in the same bits as before where the cant is 0', () => {
    const elements = variedElements(0.6);
    const spec = { start: { x: 0, y: 0, heading: 0 }, elements, profile: { points: variedGrades } };
    const plain = makeTrack(spec);
    const zero = track(elements, { chainage: 0, cant: 0 });
    for (const s of [0.3, 0.9, 1.7, 2.6]) expect(placeVehicle(zero, coach, s)).toEqual(placeVehicle(plain, coach, s));
  });

  it('meets a mate on the same cant with no offset, and on a ramp with its buffers one up, one down', () => {
    const standing = level([{ chainage: 0, cant: 0.06 }]);
    const same = jointGeometry(coach, coach, placeVehicle(standing, coach, 1.8), placeVehicle(standing, coach, 1.5));
    for (const offset of [same.verticalOffset, same.lateralOffset, ...same.bufferVertical, ...same.bufferLateral]) {
      expect(offset).toBeCloseTo(0, 14);
    }
    const ramp = level([
      { chainage: 1, cant: 0 },
      { chainage: 2, cant: 0.05 },
    ]);
    const joint = jointGeometry(coach, coach, placeVehicle(ramp, coach, 1.65), placeVehicle(ramp, coach, 1.35));
    // Rolls of 0.0325 and 0.0175: the leading left buffer is 10 mm times the difference of sines lower, and the buffers'
    // height of 12.2 mm gains nothing to first order (0.0122·(cos - cos) is 5 µm).
    const fall = 0.01 * (Math.sin(0.0325) - Math.sin(0.0175));
    const sink = 0.0122 * (Math.cos(0.0175) - Math.cos(0.0325));
    expect(joint.bufferVertical[0]).toBeCloseTo(-fall - sink, 12);
    expect(joint.bufferVertical[1]).toBeCloseTo(fall - sink, 12);
    // Heads lean with their bodies: the coupler, 9.9 mm up, goes over to the left by the sine.
    expect(joint.lateralOffset).toBeCloseTo(0.0099 * (Math.sin(0.0325) - Math.sin(0.0175)), 12);
  });

  it('carries a coupling on a bogie with the cant under that bogie', () => {
    const bogied = sampleVehicle({ pivotSpacing: 0.186, overhang: 0.036, coupling: { mount: 'bogie' } });
    const ramp = level([
      { chainage: 1, cant: 0 },
      { chainage: 2, cant: 0.05 },
    ]);
    const [leading, trailing] = [placeVehicle(ramp, bogied, 1.65), placeVehicle(ramp, bogied, 1.35)];
    const { swingLeading } = jointGeometry(bogied, bogied, leading, trailing);
    // The pivots stand 9.9 mm up over cants of 0.05·(1.65-0.093-1) and 0.05·(1.35+0.093-1), a few centimetres apart.
    const across = 0.0099 * (Math.sin(0.02785) - Math.sin(0.02215));
    const apart = 0.3 - 0.186 - 2 * 0.028;
    expect(swingLeading).toBeCloseTo(Math.atan2(across, apart), 9);
  });

  it('mirrors with the track', () => {
    const left = placeVehicle(track([arc(0.6, 6)], { chainage: 0, cant: 0.04 }), coach, 1);
    const right = placeVehicle(track([arc(0.6, -6)], { chainage: 0, cant: -0.04 }), coach, 1);
    for (const i of [0, 1, 2]) {
      const sign = i === 1 ? -1 : 1;
      expect(right.up[i]).toBeCloseTo(sign * left.up[i], 14);
      expect(right.left[i]).toBeCloseTo(-sign * left.left[i], 14);
    }
  });
});
