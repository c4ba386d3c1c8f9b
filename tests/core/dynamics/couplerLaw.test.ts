import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { averagedForce, type JointLaw, storedEnergy } from '../../../src/core/dynamics/couplerLaw.ts';

const law: JointLaw = { draftStiffness: 2000, buffStiffness: 3000, damping: 1.5, draftPlay: 0.001, buffPlay: 0.0005 };
const out = () => ({ force: 0, slope: 0 });

/** The force at one instant, written from the description and not from the code under test. */
function instant(e: number, r: number): number {
  if (e > law.draftPlay) return Math.max(0, law.draftStiffness * (e - law.draftPlay) + law.damping * r);
  if (e < -law.buffPlay) return Math.min(0, law.buffStiffness * (e + law.buffPlay) + law.damping * r);
  return 0;
}

function averageByRule(e0: number, r: number, h: number): number {
  const parts = 40_000;
  let sum = 0;
  for (let i = 0; i < parts; i++) sum += instant(e0 + r * h * ((i + 0.5) / parts), r);
  return sum / parts;
}

const extensions = fc.double({ min: -0.004, max: 0.004, noNaN: true });
const rates = fc.double({ min: -2, max: 2, noNaN: true });

describe('the force of a joint averaged over a step', () => {
  it('is the plain spring and damper when contact lasts the whole step', () => {
    // 2000 N/m × (3 mm - 1 mm + half of 0.1 m/s × 1 ms) + 1.5 N·s/m × 0.1 m/s = 4.1 + 0.15 N
    expect(averagedForce(law, 0.003, 0.1, 0.001, out()).force).toBeCloseTo(4.25, 12);
  });

  it('is zero while the slack lasts', () => {
    expect(averagedForce(law, 0, 0.4, 0.001, out()).force).toBe(0);
  });

  it('agrees with the instant force summed over the step, touch and release included', () => {
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const got = averagedForce(law, e0, r, 0.001, out()).force;
        // The midpoint rule errs by at most one part where the force jumps: |jump|/parts.
        expect(Math.abs(got - averageByRule(e0, r, 0.001))).toBeLessThan(1e-4 * (1 + Math.abs(got)));
      }),
      { numRuns: 60 },
    );
  });

  it('never falls as the rate grows, and its slope is its derivative', () => {
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const d = 1e-7;
        const low = averagedForce(law, e0, r - d, 0.001, out()).force;
        const high = averagedForce(law, e0, r + d, 0.001, out()).force;
        expect(high).toBeGreaterThanOrEqual(low - 1e-12);
        const { slope } = averagedForce(law, e0, r, 0.001, out());
        const difference = (high - low) / (2 * d);
        const left = averagedForce(law, e0, r - 2 * d, 0.001, out()).slope;
        const right = averagedForce(law, e0, r + 2 * d, 0.001, out()).slope;
        // At a corner of the law the derivative is either side's.
        const nearest = Math.min(...[slope, left, right].map((s) => Math.abs(s - difference)));
        expect(nearest).toBeLessThan(1e-4 * (1 + Math.abs(difference)) + Math.abs(left - right));
      }),
    );
  });

  it('never gives energy: its work is at least what the spring gains', () => {
    fc.assert(
      fc.property(extensions, rates, (e0, r) => {
        const { force } = averagedForce(law, e0, r, 0.001, out());
        const gained = storedEnergy(law, e0 + r * 0.001) - storedEnergy(law, e0);
        expect(force * r * 0.001 - gained).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });
});
