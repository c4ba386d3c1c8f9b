import { describe, expect, it } from 'vitest';
import { draggedLift } from '../../../src/core/risks/heads/endLift.ts';
import { assessRun, framePoser, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext } from '../../../src/core/risks/types.ts';
import type { Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { type Moment, madeUpTrial } from './samples.ts';

const level = sampleTrack([straight(5)]);

/** A wagon 200 mm between pivots; only its couplings matter. */
const wagon = (coupling: Partial<Coupling> = {}): Vehicle =>
  sampleVehicle({ pivotSpacing: 0.2, overhang: 0.03, coupling });

/** Two wagons on level straight track whose heads stand 1.0 mm apart; faces of 3.0 mm; ± 0.5 mm each. */
const high = wagon({ headHeight: 0.0109 });
const low = wagon({ headHeight: 0.0099 });

const override = riskById('override');
const assess = (context: RiskContext) => assessRun(context, [override])[0];
const marginOf = (moment: Omit<Moment, 'lead'>): number =>
  assess(madeUpTrial(level, [high, low], [{ lead: 2, ...moment }])).margins[0];

describe('riding up', () => {
  it('leaves the facing less the offset of the heads: 3.0 - 1.0 = 2.0 mm', () => {
    const { worst } = assess(madeUpTrial(level, [high, low], [{ lead: 2, force: -0.1 }]));
    expect(worst?.governing).toBe('facing');
    expect(worst?.value).toBeCloseTo(0.001, 9);
    expect(worst?.limit).toBeCloseTo(0.003, 9);
    expect(worst?.margin).toBeCloseTo(0.002, 9);
  });

  it('is the same whichever of the two is the higher', () => {
    const { worst } = assess(madeUpTrial(level, [low, high], [{ lead: 2, force: -0.1 }]));
    expect(worst?.margin).toBeCloseTo(0.002, 9);
    expect(worst?.parts[0].value).toBeCloseTo(0.001, 9);
  });

  it('takes the mean of unlike facings: heads of 3 and 5 mm part at 4 mm', () => {
    const { worst } = assess(madeUpTrial(level, [high, wagon({ facingHeight: 0.005 })], [{ lead: 2, force: -0.1 }]));
    expect(worst?.limit).toBeCloseTo(0.004, 9);
  });

  it('names what the offset is made of, and what tolerances may add or take', () => {
    const { worst } = assess(madeUpTrial(level, [high, low], [{ lead: 2, force: -0.1 }]));
    const part = (label: string) => worst?.parts.find((one) => one.label === label)?.value;
    expect(part('fitted-heads')).toBeCloseTo(0.001, 9);
    expect(part('track-geometry')).toBeCloseTo(0, 9);
    expect(part('tolerance')).toBeCloseTo(0.001, 9);
    expect(worst?.range?.[0]).toBeCloseTo(0.001, 9);
    // 1.0 mm of tolerance can bring them level, and level heads have all 3.0 mm.
    expect(worst?.range?.[1]).toBeCloseTo(0.003, 9);
  });

  it('gains no more by tolerance than heads that stand level: 2.6 mm, from 1.6 to 3.0 mm', () => {
    const { worst } = assess(madeUpTrial(level, [wagon({ headHeight: 0.0103 }), low], [{ lead: 2, force: -0.1 }]));
    expect(worst?.range?.[0]).toBeCloseTo(0.0016, 9);
    expect(worst?.range?.[1]).toBeCloseTo(0.003, 9);
  });

  it('says nothing in draft', () => {
    expect(marginOf({ force: 0.1 })).toBeNaN();
  });

  it('does not miss a blow between two frames', () => {
    expect(marginOf({ force: 0.1, buffPeak: -0.4 })).toBeCloseTo(0.002, 9);
  });

  it('counts a floating joint that is about to close, and no other', () => {
    // Slack 0.8 mm in all: from the free length 0.4 mm to go. At 2 mm/s that takes 0.2 s, at 1 mm/s 0.4 s.
    expect(marginOf({ speed: [0.2, 0.202] })).toBeCloseTo(0.002, 9);
    expect(marginOf({ speed: [0.2, 0.201] })).toBeNaN();
    // A quarter of a second is what counts as about to: 1.6 mm/s.
    expect(marginOf({ speed: [0.2, 0.20165] })).toBeCloseTo(0.002, 9);
    expect(marginOf({ speed: [0.2, 0.20155] })).toBeNaN();
    expect(marginOf({ speed: [0.2, 0.2] })).toBeNaN();
    expect(marginOf({ speed: [0.202, 0.2] })).toBeNaN();
  });

  it('says nothing of a joint that has parted', () => {
    const moments = [
      { lead: 2, force: -0.1 },
      { lead: 2.01, force: -0.1 },
      { lead: 2.02, force: -0.1 },
    ];
    const parted = { kind: 'parting', time: 0.015, chainage: 1.9, subject: 0, value: 20 } as const;
    const { margins } = assess(madeUpTrial(level, [high, low], moments, { events: [parted] }));
    expect(margins[0]).toBeCloseTo(0.002, 9);
    // The frame in which it parted still shows what it parted from.
    expect(margins[1]).toBeCloseTo(0.002, 9);
    expect(margins[2]).toBeNaN();
  });

  it('does not arise where heads cannot miss each other', () => {
    const bar = wagon({ facingHeight: Number.POSITIVE_INFINITY });
    expect(assessRun(madeUpTrial(level, [bar, bar], [{ lead: 2, force: -1 }]), [override])).toEqual([]);
  });
});

describe('an end lifted by leaning faces', () => {
  // Faces 30° off upright, friction 0.2 (angle 11.31°): lift is tan 18.69° = 0.3383 of the push.
  // Held by 120 g: 1.17680 N × 100 mm / (200 + 30 - 8 + 10 = 232 mm) = 0.50724 N at the head.
  const leaning = wagon({ faceTilt: Math.PI / 6, faceFriction: 0.2 });
  const worstAt = (buff: number) => assess(madeUpTrial(level, [leaning, leaning], [{ lead: 2, force: -buff }])).worst;

  it('lifts by the tangent of lean less friction angle', () => {
    const worst = worstAt(1);
    expect(worst?.governing).toBe('lift');
    expect(worst?.value).toBeCloseTo(0.3383, 3);
    expect(worst?.limit).toBeCloseTo(0.50724, 5);
  });

  it('has no margin left exactly when lift and hold are equal', () => {
    // 0.50724 / tan(30° - 11.3099°) = 0.50724 / 0.338298.
    expect(worstAt(1.49939)?.margin).toBeCloseTo(0, 6);
    expect(worstAt(1.45)?.margin).toBeGreaterThan(0);
    expect(worstAt(1.55)?.margin).toBeLessThan(0);
  });

  it('has no tolerance and no parts of height: it speaks of forces', () => {
    expect(worstAt(1)?.range).toBeNull();
    expect(worstAt(1)?.parts).toEqual([]);
  });

  it('does not lift at all while the lean is within the friction angle', () => {
    const steep = wagon({ faceTilt: 0.19, faceFriction: 0.2 });
    const { worst } = assess(madeUpTrial(level, [steep, steep], [{ lead: 2, force: -50 }]));
    expect(worst?.governing).toBe('facing');
    expect(worst?.margin).toBeCloseTo(0.003, 9);
  });

  it('holds an end by the weight on it: 20 mm nearer to the mass is 1.17680 N × 120/232, further 80/232', () => {
    const noseHeavy = { ...leaning, massAhead: 0.02 };
    const solid = { ...leaning, mass: 10 };
    const limitOf = (pair: readonly Vehicle[]) =>
      assess(madeUpTrial(level, pair, [{ lead: 2, force: -1 }])).worst?.limit;
    expect(limitOf([solid, noseHeavy])).toBeCloseTo(0.60869, 5);
    expect(limitOf([noseHeavy, solid])).toBeCloseTo(0.40579, 5);
  });

  it('lifts the lighter of two ends', () => {
    const light = { ...leaning, mass: 0.03 };
    const { worst } = assess(madeUpTrial(level, [leaning, light], [{ lead: 2, force: -0.5 }]));
    expect(worst?.limit).toBeCloseTo(0.50724 / 4, 5);
  });
});

describe('an end that its mate drags up', () => {
  it('is told beside: 0.3 N × tan(20° + atan 0.3) = 0.223607 N against the hold, and without end where that is upright', () => {
    expect(draggedLift(0.3, (20 * Math.PI) / 180, 0.3)).toBeCloseTo(0.223607, 5);
    expect(draggedLift(0.3, 1.3, 0.3)).toBe(Number.POSITIVE_INFINITY);
    const worst = assessRun(
      madeUpTrial(
        sampleTrack([straight(5)]),
        [0, 1].map(() =>
          sampleVehicle({ pivotSpacing: 0.2, overhang: 0.03, coupling: { faceTilt: (20 * Math.PI) / 180 } }),
        ),
        [{ lead: 2, force: -0.3 }],
      ),
      [riskById('override')],
    )[0].worst;
    // Half of 1.176798 N at the head 32 mm beyond the running points: × 100/232 = 0.507240 N.
    expect(worst?.compare?.[0].label).toBe('dragged-up');
    expect(worst?.compare?.[0].limit).toBeCloseTo(0.50724, 5);
    expect(worst?.compare?.[0].margin).toBeCloseTo(0.003 * (1 - 0.223607 / 0.50724), 6);
  });
});

describe('a frame', () => {
  it('is posed once and overwritten by the next', () => {
    const pose = framePoser(madeUpTrial(level, [high, low], [{ lead: 2 }, { lead: 3 }]));
    const first = pose(0);
    expect(first.placements[0].origin[0]).toBeCloseTo(2, 12);
    expect(pose(1)).toBe(first);
    expect(first.placements[0].origin[0]).toBeCloseTo(3, 12);
  });
});
