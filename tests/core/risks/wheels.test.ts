import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import { wheelPlay, wheelPlayTolerance } from '../../../src/core/risks/wheels/wheelPlay.ts';
import type { WheelProfile } from '../../../src/core/stock/types.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial } from './samples.ts';

const still = { lead: 1.5, extension: 0, speed: [0, 0, 0] };
const coach = (wheels?: WheelProfile) =>
  sampleVehicle({ pivotSpacing: 0.18, overhang: 0.04 }, wheels === undefined ? {} : { wheels });

describe('play of a wheelset', () => {
  it('is 0.25 ± 0.1 mm in H0 where nothing is known', () => {
    expect(wheelPlay({ gauge: 0.0165 })).toBeCloseTo(0.00025, 12);
    expect(wheelPlayTolerance({ gauge: 0.0165 })).toBeCloseTo(0.0001, 12);
  });

  it('is what measured wheels leave: (16.5 - 14.4 - 2 × 0.9)/2 = 0.15 mm, and nothing in doubt', () => {
    const set = { gauge: 0.0165, wheels: { backToBack: 0.0144, flangeThickness: 0.0009 } };
    expect(wheelPlay(set)).toBeCloseTo(0.00015, 12);
    expect(wheelPlayTolerance(set)).toBe(0);
  });

  it('is none where wheels are set too wide: 15.0 and 2 × 0.8 mm in 16.5 mm', () => {
    expect(wheelPlay({ gauge: 0.0165, wheels: { backToBack: 0.015 } })).toBe(0);
  });
});

describe('what the play of wheels makes of a push', () => {
  const level = sampleTrack([straight(4)]);
  const worstOf = (wheels?: WheelProfile) =>
    assessRun(madeUpTrial(level, [coach(wheels), coach(wheels), coach(wheels)], [{ ...still, lead: 2, force: -1 }]), [
      riskById('jack-knife'),
    ])[0].worst;

  it('is a range, from wheels at the loose end of the standard to those at the snug end, measured ones at 0.15 mm', () => {
    const [least, greatest] = worstOf()?.range ?? [Number.NaN, Number.NaN];
    const snug = worstOf({ backToBack: 0.0144, flangeThickness: 0.0009 });
    expect(greatest).toBeCloseTo(snug?.margin ?? Number.NaN, 9);
    expect(least).toBeLessThan(worstOf()?.margin ?? Number.NaN);
    expect(snug?.range?.[0]).toBeCloseTo(snug?.range?.[1] ?? Number.NaN, 12);
  });
});

describe('a flange', () => {
  it('of 60° climbs at 1.138 of its wheel’s load in place of 1.644', () => {
    const curve = sampleTrack([arc(0.6, 4)]);
    const limit = (wheels?: WheelProfile) =>
      assessRun(madeUpTrial(curve, [coach(wheels)], [{ ...still, speed: [0] }]), [riskById('wheel-climb')])[0].worst
        ?.limit ?? Number.NaN;
    expect(limit({ flangeAngle: Math.PI / 3 }) / limit()).toBeCloseTo(1.137878 / 1.644069, 5);
  });

  it('by the sum over its axle agrees where wheels slide, and on 12 m stands half of the tread’s 0.2 more', () => {
    const compare = (radius: number) =>
      assessRun(madeUpTrial(sampleTrack([arc(radius, 4)]), [coach()], [{ ...still, speed: [0] }]), [
        riskById('wheel-climb'),
      ])[0].worst;
    const tight = compare(0.6);
    expect(tight?.compare?.[0].label).toBe('axle-sum');
    expect(tight?.compare?.[0].margin).toBeCloseTo(tight?.margin ?? Number.NaN, 12);
    // 30 mm on 12 m meets the rail at half the angle that wheels slide at: (1.644069 + 0.1)/1.644069.
    const gentle = compare(12);
    expect((gentle?.compare?.[0].limit ?? 0) / (gentle?.limit ?? 1)).toBeCloseTo(1.060825, 5);
  });
});
