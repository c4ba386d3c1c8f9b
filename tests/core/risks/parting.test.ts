import { describe, expect, it } from 'vitest';
import { headsAside } from '../../../src/core/risks/heads/headAside.ts';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext } from '../../../src/core/risks/types.ts';
import { newJointGeometry } from '../../../src/core/stock/index.ts';
import type { Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { type Moment, madeUpTrial } from './samples.ts';

const level = sampleTrack([straight(5)]);
const wagon = (coupling: Partial<Coupling> = {}): Vehicle =>
  sampleVehicle({ pivotSpacing: 0.2, overhang: 0.03, coupling });

/** Heads 0.6 mm apart that engage by 1.5 mm and let go at 2 N. */
const high = wagon({ headHeight: 0.0105, release: 2 });
const low = wagon({ headHeight: 0.0099, release: 2 });

const assess = (context: RiskContext) => assessRun(context, [riskById('parting')])[0];
const worstOf = (moment: Omit<Moment, 'lead'>, pair: readonly Vehicle[] = [high, low]) =>
  assess(madeUpTrial(level, pair, [{ lead: 2, ...moment }])).worst;

describe('letting go in draft', () => {
  it('by height leaves the engagement less the offset: 1.5 - 0.6 = 0.9 mm', () => {
    const worst = worstOf({ force: 0.2 });
    expect(worst?.governing).toBe('engagement');
    expect(worst?.value).toBeCloseTo(0.0006, 9);
    expect(worst?.margin).toBeCloseTo(0.0009, 9);
    expect(worst?.range?.[0]).toBeCloseTo(-0.0001, 9);
  });

  it('by force leaves the same share of the engagement as of the release force: 1.5 N of 2 N leaves a quarter', () => {
    const worst = worstOf({ force: 1.5 });
    expect(worst?.governing).toBe('release');
    expect(worst?.value).toBeCloseTo(1.5, 9);
    expect(worst?.limit).toBeCloseTo(2, 9);
    expect(worst?.margin).toBeCloseTo(0.0015 / 4, 9);
    expect(worst?.range).toBeNull();
  });

  it('lets the nearer of the two speak: at 0.8 N of 2 N both leave 0.9 mm', () => {
    expect(worstOf({ force: 0.79 })?.governing).toBe('engagement');
    expect(worstOf({ force: 0.81 })?.governing).toBe('release');
  });

  it('holds by the shallower and the weaker of two unlike halves', () => {
    const deep = wagon({ headHeight: 0.0105, engagement: 0.004, release: 9 });
    expect(worstOf({ force: 0.1 }, [deep, low])?.limit).toBeCloseTo(0.0015, 9);
    expect(worstOf({ force: 1.9 }, [deep, low])?.limit).toBeCloseTo(2, 9);
  });

  it('says nothing in buff, and looks at a jerk between frames', () => {
    expect(worstOf({ force: -0.2 })).toBeNull();
    expect(worstOf({ force: -0.2, draftPeak: 1.9 })?.value).toBeCloseTo(1.9, 9);
  });

  it('counts a floating joint that is about to stretch', () => {
    expect(worstOf({ speed: [0.202, 0.2] })?.margin).toBeCloseTo(0.0009, 9);
    expect(worstOf({ speed: [0.2, 0.202] })).toBeNull();
  });

  it('of a bar that only a force can break is measured against that force', () => {
    const bar = wagon({ engagement: Number.POSITIVE_INFINITY, release: 4 });
    const worst = worstOf({ force: 5 }, [bar, bar]);
    expect(worst?.governing).toBe('release');
    expect(worst?.margin).toBeLessThan(0);
  });

  it('does not arise where nothing can let go', () => {
    const bar = wagon({ engagement: Number.POSITIVE_INFINITY, release: Number.POSITIVE_INFINITY });
    expect(assessRun(madeUpTrial(level, [bar, bar], [{ lead: 2, force: 5 }]), [riskById('parting')])).toEqual([]);
  });
});

describe('a joint that floats', () => {
  const hooked = [high, low].map((vehicle) => ({
    ...vehicle,
    rear: { ...vehicle.rear, coupling: { ...vehicle.rear.coupling, kind: 'hook-and-bar' as const } },
    front: { ...vehicle.front, coupling: { ...vehicle.front.coupling, kind: 'hook-and-bar' as const } },
  }));

  it('of hooks may lift out by height wherever the slack goes: 1.5 - 0.6 = 0.9 mm', () => {
    for (const speed of [
      [0.2, 0.2],
      [0.2, 0.202],
    ]) {
      const worst = worstOf({ speed }, hooked);
      expect(worst?.governing).toBe('float');
      expect(worst?.margin).toBeCloseTo(0.0009, 9);
    }
  });

  it('counts as afloat under a pull or a push that holds no hook down, 0.01 N', () => {
    expect(worstOf({ force: 0.009 }, hooked)?.governing).toBe('float');
    expect(worstOf({ force: -0.009 }, hooked)?.governing).toBe('float');
    expect(worstOf({ force: 0.011 }, hooked)?.governing).toBe('engagement');
    expect(worstOf({ force: -0.011 }, hooked)).toBeNull();
  });

  it('of knuckles says nothing', () => {
    expect(worstOf({ speed: [0.2, 0.2] })).toBeNull();
  });
});

describe('letting go to the side', () => {
  const short = wagon({ sideHold: 0.002, freeSwing: 0.2, reach: 0.01, release: Number.POSITIVE_INFINITY });

  it('takes shanks past their free swing: 0.3 rad to the same side of 0.2, twice 10 mm × sin 0.1 = 1.997 mm', () => {
    const { coupling } = short.rear;
    const joint = { ...newJointGeometry(), swingLeading: 0.3, swingTrailing: 0.3 };
    expect(headsAside(coupling, coupling, joint)).toBeCloseTo(0.00199667, 8);
    // In a plain curve both heads are held to the same side, and still face each other.
    expect(headsAside(coupling, coupling, { ...joint, swingTrailing: -0.3 })).toBeCloseTo(0, 15);
    expect(headsAside(coupling, coupling, { ...joint, swingLeading: 0.2, swingTrailing: 0.1 })).toBe(0);
  });

  it('speaks where it is the nearest: heads in line and level leave 2 mm across, 1.5 mm in height', () => {
    expect(worstOf({ force: 0.2 }, [short, short])?.governing).toBe('engagement');
    const snug = wagon({ sideHold: 0.001, freeSwing: 0.2 });
    const worst = worstOf({ force: 0.2 }, [snug, snug]);
    expect(worst?.governing).toBe('side-hold');
    expect(worst?.margin).toBeCloseTo(0.001, 9);
  });
});
