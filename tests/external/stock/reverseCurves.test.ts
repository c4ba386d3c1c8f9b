import { describe, expect, it } from 'vitest';
import {
  bufferedClasses,
  easementLength,
  jointGeometry,
  newJointGeometry,
  newPlacement,
  placeCoupled,
  placeVehicle,
  prototypeHeadMm,
  reverseOffsetHandbook,
} from '../../../src/core/stock/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, straight, transition } from '../../../src/core/track/index.ts';
import type { PlanElement } from '../../../src/core/track/types.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const degrees = Math.PI / 180;

/** Greatest offset of facing buffers (body ends where there are none) as a coupled pair goes along, in steps of `step`. */
function greatestOffset(elements: readonly PlanElement[], vehicle: Vehicle, step: number): number {
  const track = sampleTrack(elements);
  const leading = newPlacement();
  const trailing = newPlacement();
  const g = newJointGeometry();
  const room = 2 * (vehicle.pivotSpacing + vehicle.frontOverhang + vehicle.rearOverhang);
  let greatest = 0;
  for (let s = room; s < track.length - room / 2; s += step) {
    placeVehicle(track, vehicle, s, leading);
    placeVehicle(track, vehicle, placeCoupled(track, vehicle, vehicle, s), trailing);
    jointGeometry(vehicle, vehicle, leading, trailing, g);
    const offsets = Number.isNaN(g.bufferLateral[0]) ? [g.lateralOffset] : g.bufferLateral;
    for (const offset of offsets) greatest = Math.max(greatest, Math.abs(offset));
  }
  return greatest;
}

/** Faces touch on straight track and the couplings turn well inside the body, as close couplings do. */
const buffered = (length: number, pivots: number, face: number): Vehicle =>
  sampleVehicle({
    pivotSpacing: pivots,
    overhang: (length - pivots) / 2 - face,
    buffers: { spacing: 0.02, height: 0.0122, headWidth: 0.005, headHeight: 0.004, length: face },
    coupling: { pivotInset: 0.02, reach: 0.02 + face },
  });

describe('NEM 111 (2016) par. 3.2: radii on which touching buffers may be pushed, H0', () => {
  // Heads by NEM 303 (2015): round, 340 mm on stock up to 14.5 m and 450 mm beyond, over the scale. Two equal heads face
  // each other while their middles are less than a head's width apart.
  const scale = 87;
  const lengthOfRun = 1.2;
  it.each(bufferedClasses)(
    '$name: heads stay before each other at $gauges gauges, with easements or a straight',
    (stock) => {
      const radius = stock.gauges * 0.0165;
      const k = 1 / radius;
      const length = stock.lengthOverBuffers / scale;
      const vehicle = buffered(length, stock.pivotSpacing / scale, 0.0075);
      const head =
        (stock.lengthOverBuffers <= 14.5 ? prototypeHeadMm.olderWidthsTo14500[0] : prototypeHeadMm.roundWidths[0]) /
        scale /
        1000;
      const eased = easementLength('H0', radius);
      const angle = lengthOfRun / 3 / radius;
      const entry = [straight(1), transition(eased, 0, k), arc(radius, angle), straight(1)].slice(0, 3);
      const reverse = [
        straight(1),
        transition(eased, 0, k),
        arc(radius, angle),
        transition(eased, k, 0),
        transition(eased, 0, -k),
        arc(radius, -angle),
        transition(eased, -k, 0),
        straight(1),
      ];
      const withStraight = [straight(1), arc(radius, angle), straight(length), arc(radius, -angle), straight(1)];
      const onEntry = greatestOffset([...entry, transition(eased, k, 0), straight(1)], vehicle, 0.001);
      const onReverse = greatestOffset(reverse, vehicle, 0.001);
      expect(onEntry).toBeLessThan(head);
      expect(onReverse).toBeLessThan(head);
      // An easement keeps the offset below what any length of straight can: that is the offset of entering a bare curve.
      const onStraight = greatestOffset(withStraight, vehicle, 0.001);
      expect(onStraight).toBeLessThan(head);
      expect(onEntry).toBeLessThan(onStraight);
    },
  );

  it.each([
    ['A bogie', 3.79],
    ['B bogie', 5.08],
    ['C bogie', 4.48],
  ] as const)(
    '%s: entering the bare curve offsets the heads by (L² - a²)/8R = %f mm, the bare reverse by nearly twice that, past the heads',
    (name, offsetMm) => {
      const stock = bufferedClasses.find((c) => c.name === name) as (typeof bufferedClasses)[number];
      const radius = stock.gauges * 0.0165;
      const length = stock.lengthOverBuffers / scale;
      const vehicle = buffered(length, stock.pivotSpacing / scale, 0.0075);
      const angle = lengthOfRun / 2 / radius;
      const entry = greatestOffset(
        [straight(1), arc(radius, angle), arc(2 * radius, 0.6), straight(1)],
        vehicle,
        0.001,
      );
      // The handbook form is the first term in (L/2R)², at most 2 % here.
      expect(entry * 1000).toBeGreaterThan(offsetMm * 0.98);
      expect(entry * 1000).toBeLessThan(offsetMm * 1.001);
      const reverse = greatestOffset(
        [straight(1), arc(radius, angle), arc(radius, -angle), straight(1)],
        vehicle,
        0.001,
      );
      expect(reverse).toBeGreaterThan(prototypeHeadMm.roundWidths[1] / scale / 1000);
      expect(reverse).toBeGreaterThan(1.95 * entry);
    },
  );
});

describe('the point of reverse on full-size lines, 26.4 m coaches on 19 m', () => {
  // Source: trainweb.us, railengineering, buffer locking: B is the offset of the ends where a curve turns into its reverse;
  // up to 300 mm the layout may stand, else it is redesigned. B = (L² - a²)/4R by the handbook.
  it.each([
    { radius: 150, offset: 0.56, stands: false },
    { radius: 190, offset: 0.442, stands: false },
    { radius: 300, offset: 0.28, stands: true },
  ])('radius $radius m: B $offset m', ({ radius, offset, stands }) => {
    expect(reverseOffsetHandbook(radius, 19, 3.7)).toBeCloseTo(offset, 3);
    const vehicle = sampleVehicle({
      pivotSpacing: 19,
      overhang: 3.7,
      coupling: { pivotInset: 1.5, reach: 1.5, headHeight: 1 },
    });
    const exact = greatestOffset([straight(80), arc(radius, 0.4), arc(radius, -0.4), straight(80)], vehicle, 0.02);
    // The exact pass stays below the handbook's first term by the next, of the order (L/2R)².
    expect(exact).toBeLessThan(offset + 0.0005);
    expect(exact).toBeGreaterThan(offset * (1 - (26.4 / (2 * radius)) ** 2) - 0.0005);
    expect(exact <= 0.3).toBe(stands);
  });
});

describe('00 coaches, 258 over buffers on 186, through points back to back', () => {
  // Source: worked figures for 12° points and 22.5° set-track curves set back to back, to a tenth of a millimetre, for buffers
  // that touch; common practice, no published source. They follow from the geometry and are no rule of thumb:
  // o(b + o)/R would be 8.7, 5.2 and 18.2 mm. What is left is how close the bodies are coupled: 0.26 mm of offset per millimetre.
  const coach = buffered(0.258, 0.186, 0.004);
  it.each([
    { radius: 0.914, angle: 12, between: 0, offsetMm: 8.5, within: 0.05 },
    { radius: 0.914, angle: 12, between: 0.258, offsetMm: 4.3, within: 0.05 },
    { radius: 1.524, angle: 12, between: 0, offsetMm: 5.25, within: 0.05 },
    { radius: 1.524, angle: 12, between: 0.258, offsetMm: 2.6, within: 0.05 },
    { radius: 0.438, angle: 22.5, between: 0, offsetMm: 17.0, within: 0.26 },
    { radius: 0.438, angle: 22.5, between: 0.129, offsetMm: 11.3, within: 0.05 },
    { radius: 0.438, angle: 22.5, between: 0.258, offsetMm: 8.6, within: 0.05 },
  ])('$radius m, $between m of straight between: $offsetMm mm', ({ radius, angle, between, offsetMm, within }) => {
    const middle = between === 0 ? [] : [straight(between)];
    const elements = [straight(1), arc(radius, angle * degrees), ...middle, arc(radius, -angle * degrees), straight(1)];
    expect(Math.abs(greatestOffset(elements, coach, 0.0005) * 1000 - offsetMm)).toBeLessThan(within);
  });

  it('hide it from a four-wheeled wagon of 76 over buffers on 40', () => {
    const wagon = { ...buffered(0.076, 0.04, 0.004), bogies: false };
    const elements = [straight(1), arc(0.438, 22.5 * degrees), arc(0.438, -22.5 * degrees), straight(1)];
    expect(greatestOffset(elements, wagon, 0.0005) * 1000).toBeCloseTo(2.4, 1);
  });
});
