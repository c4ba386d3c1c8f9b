import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { averagedForce, type JointLaw, storedEnergy } from '../../../src/core/dynamics/couplerLaw.ts';
import { evenly } from '../../evenly.ts';

const law: JointLaw = { draftStiffness: 2000, buffStiffness: 3000, damping: 1.5, draftPlay: 0.001, buffPlay: 0.0005 };
const out = () => ({ force: 0, slope: 0 });

/** The same joint with a second stage either side: soft buffers that come to their stops, a drawgear that stiffens. */
const staged: JointLaw = {
  ...law,
  draftSecond: { from: 0.0008, stiffness: 9000 },
  buffSecond: { from: 0.0004, stiffness: 40_000 },
};

const rising = (x: number, k: number, from = Number.POSITIVE_INFINITY, second = 0) =>
  x < from ? k * x : k * from + second * (x - from);

/** The force at one instant, written from the description and not from the code under test. */
function instant(joint: JointLaw, e: number, r: number): number {
  const { draftPlay, buffPlay, damping, draftSecond: d, buffSecond: b } = joint;
  if (e > draftPlay) {
    return Math.max(0, rising(e - draftPlay, joint.draftStiffness, d?.from, d?.stiffness) + damping * r);
  }
  if (e < -buffPlay) {
    return Math.min(0, -rising(-e - buffPlay, joint.buffStiffness, b?.from, b?.stiffness) + damping * r);
  }
  return 0;
}

function averageByRule(joint: JointLaw, e0: number, r: number, h: number): number {
  const parts = 40_000;
  let sum = 0;
  for (let i = 0; i < parts; i++) sum += instant(joint, e0 + r * h * ((i + 0.5) / parts), r);
  return sum / parts;
}

const extensions = evenly(-0.004, 0.004);
const rates = evenly(-2, 2);

describe('the force of a joint averaged over a step', () => {
  it('is the plain spring and damper when contact lasts the whole step', () => {
    // 2000 N/m × (3 mm - 1 mm + half of 0.1 m/s × 1 ms) + 1.5 N·s/m × 0.1 m/s = 4.1 + 0.15 N
    expect(averagedForce(law, 0.003, 0.1, 0.001, out()).force).toBeCloseTo(4.25, 12);
  });

  it('is zero while the slack lasts', () => {
    expect(averagedForce(law, 0, 0.4, 0.001, out()).force).toBe(0);
  });

  it.each([
    ['one stage', law],
    ['two stages', staged],
  ])('agrees with the instant force summed over the step, touch and release included: %s', (_, joint) => {
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const got = averagedForce(joint, e0, r, 0.001, out()).force;
        // The midpoint rule errs by at most one part where the force jumps: |jump|/parts.
        expect(Math.abs(got - averageByRule(joint, e0, r, 0.001))).toBeLessThan(1e-4 * (1 + Math.abs(got)));
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    ['one stage', law],
    ['two stages', staged],
    ['a spring that gives way', { ...staged, draftSecond: { from: 0.0005, stiffness: 0 } }],
  ])('never falls as the rate grows, and its slope is its derivative: %s', (_, joint) => {
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const d = 1e-7;
        const low = averagedForce(joint, e0, r - d, 0.001, out()).force;
        const high = averagedForce(joint, e0, r + d, 0.001, out()).force;
        expect(high).toBeGreaterThanOrEqual(low - 1e-12);
        const { slope } = averagedForce(joint, e0, r, 0.001, out());
        const difference = (high - low) / (2 * d);
        const left = averagedForce(joint, e0, r - 2 * d, 0.001, out()).slope;
        const right = averagedForce(joint, e0, r + 2 * d, 0.001, out()).slope;
        // At a corner of the law the derivative is either side's.
        const nearest = Math.min(...[slope, left, right].map((s) => Math.abs(s - difference)));
        expect(nearest).toBeLessThan(1e-4 * (1 + Math.abs(difference)) + Math.abs(left - right));
      }),
    );
  });

  it.each([
    ['one stage', law],
    ['two stages', staged],
  ])('never gives energy: its work is at least what the spring gains: %s', (_, joint) => {
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const { force } = averagedForce(joint, e0, r, 0.001, out());
        const gained = storedEnergy(joint, e0 + r * 0.001) - storedEnergy(joint, e0);
        expect(force * r * 0.001 - gained).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });

  it('without its damper gives back to the last joule what its spring takes, through both stages', () => {
    const undamped = { ...staged, damping: 0 };
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const { force } = averagedForce(undamped, e0, r, 0.001, out());
        const gained = storedEnergy(undamped, e0 + r * 0.001) - storedEnergy(undamped, e0);
        // Energies here are some 1e-2 J: what is allowed is their rounding.
        expect(Math.abs(force * r * 0.001 - gained)).toBeLessThan(1e-15);
      }),
    );
  });

  it('stores what the area under a two-stage spring comes to', () => {
    // 0.8 mm at 2000 N/m, then 0.2 mm more at 9000 N/m: 0.64 mJ + 1.6 N × 0.2 mm + ½ × 9000 N/m × (0.2 mm)² = 1.14 mJ
    expect(storedEnergy(staged, 0.002)).toBeCloseTo(1.14e-3, 12);
    // 1.6 N + 9000 N/m × 0.2 mm at standstill
    expect(averagedForce(staged, 0.002, 0, 0.001, out()).force).toBeCloseTo(3.4, 12);
  });

  it('is the one-stage law where both stages are alike, and where the second is out of reach', () => {
    const alike = { ...law, draftSecond: { from: 0.0007, stiffness: 2000 }, buffSecond: { from: 0, stiffness: 3000 } };
    const far = { ...law, draftSecond: { from: 1, stiffness: 1e5 }, buffSecond: { from: 1, stiffness: 1e5 } };
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const plain = averagedForce(law, e0, r, 0.001, out());
        const same = averagedForce(alike, e0, r, 0.001, out());
        expect(same.force).toBeCloseTo(plain.force, 9);
        expect(same.slope).toBeCloseTo(plain.slope, 9);
        expect(averagedForce(far, e0, r, 0.001, out())).toEqual(plain);
      }),
    );
  });
});
