import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskId } from '../../../src/core/risks/types.ts';
import { placeVehicle, type Vehicle } from '../../../src/core/stock/index.ts';
import { arc, straight, type Track, trackPoint, transition } from '../../../src/core/track/index.ts';
import { madeUpTrial } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

// Source: the same geometry built another way, from nothing but points of the rail: dense sampling, and the rest of a rigid frame as the least of a convex function.

/** Breaks, a summit and a sag one after another, on the straight and in a curve. */
const heights = [
  { chainage: 0, height: 0 },
  { chainage: 0.5, height: 0.004 },
  { chainage: 0.9, height: 0.018, curve: { radius: 4 } },
  { chainage: 1.5, height: 0.021 },
  { chainage: 2, height: 0.0, curve: { radius: 5 } },
  { chainage: 3, height: 0.02 },
];
const line = sampleTrack([straight(3)], heights);
const bent = sampleTrack([straight(0.6), transition(0.3, 0, 1 / 0.45), arc(0.45, 1.2), straight(0.9)], heights);
const at = (id: RiskId, track: Track, vehicle: Vehicle, lead: number) =>
  assessRun(madeUpTrial(track, [vehicle], [{ lead }]), [riskById(id)])[0].worst;
const leads = Array.from({ length: 57 }, (_, k) => 0.2 + k * 0.045);

describe('a rigid frame of four axles', () => {
  const wheelbase = 0.09;
  const engine = sampleVehicle(
    { pivotSpacing: wheelbase, overhang: 0.02, bogies: false },
    { kind: 'locomotive', axles: 4 },
  );

  /** Greatest gap under a frame that rests with its weight at a share of the wheelbase: the pitch at which the weight lies lowest, by ternary search. */
  function gapOf(lead: number, weight: number): number {
    const rail = [0, 1 / 3, 2 / 3, 1].map((share) => trackPoint(line, lead + (share - 0.5) * wheelbase).z);
    const rest = (pitch: number): number => Math.max(...rail.map((z, k) => z - (pitch * k) / 3));
    const low = (pitch: number): number => rest(pitch) + pitch * weight;
    let from = -0.02;
    let to = 0.02;
    for (let turn = 0; turn < 200; turn++) {
      const [a, b] = [from + (to - from) / 3, to - (to - from) / 3];
      if (low(a) < low(b)) to = b;
      else from = a;
    }
    const pitch = (from + to) / 2;
    return Math.max(...rail.map((z, k) => rest(pitch) + (pitch * k) / 3 - z));
  }

  it('lifts what the lowest rest of its weight lifts, the weight anywhere within a twentieth of the middle', () => {
    let lifted = 0;
    for (const lead of leads) {
      const found = at('axle-lift', line, engine, lead)?.value ?? Number.NaN;
      const rests = Array.from({ length: 21 }, (_, k) => gapOf(lead, 0.45 + k * 0.005));
      // Heights are taken along the level here and square to the frame there: 3 % makes 0.05 %.
      expect(Math.abs(found - Math.max(...rests))).toBeLessThan(2e-6);
      lifted = Math.max(lifted, found);
    }
    expect(lifted).toBeGreaterThan(0.0003);
  });
});

describe('a long body over the rail', () => {
  const coach = sampleVehicle({ pivotSpacing: 0.2, overhang: 0.05 });

  /** Rise of the rail over the chord of its running points, looked for at 4000 places, each put on the chord where it really lies. */
  function riseOf(track: Track, lead: number): number {
    const placed = placeVehicle(track, coach, lead);
    const { frontChainage, rearChainage, origin, ahead } = placed;
    const level = ahead[0] ** 2 + ahead[1] ** 2;
    const span = frontChainage - rearChainage;
    let rise = 0;
    for (let k = 0; k <= 4000; k++) {
      const point = trackPoint(track, rearChainage + (-0.25 + (1.5 * k) / 4000) * span);
      const along = ((point.x - origin[0]) * ahead[0] + (point.y - origin[1]) * ahead[1]) / level;
      rise = Math.max(rise, point.z - origin[2] - along * ahead[2]);
    }
    return rise;
  }

  it.each([
    ['straight', line],
    ['in a curve', bent],
  ] as const)('grounds by what a dense look at the rail %s finds', (_, track) => {
    for (const lead of leads) {
      const found = at('grounding', track, coach, lead)?.value ?? Number.NaN;
      // Between two of its eleven places 30 mm apart a summit of 4 m rises by 0.03²/8/4 = 0.028 mm more.
      expect(Math.abs(found - riseOf(track, lead))).toBeLessThan(3e-5);
    }
  });
});
