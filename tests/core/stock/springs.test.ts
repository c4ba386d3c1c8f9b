import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeJoint } from '../../../src/core/stock/index.ts';
import type { Coupling } from '../../../src/core/stock/types.ts';
import { sampleCoupling } from './samples.ts';

/** Travel of a half under a force, from its two stages alone, m. */
const travel = ({ draftStiffness: k, draftSecond }: Coupling, force: number) =>
  draftSecond === undefined || force <= k * draftSecond.from
    ? force / k
    : draftSecond.from + (force - k * draftSecond.from) / draftSecond.stiffness;

/** Force of the joint at a travel, from its own numbers, N. */
const force = (rear: Coupling, front: Coupling, x: number) => {
  const { draftStiffness: k, draftSecond } = makeJoint(rear, front);
  if (draftSecond === undefined || x <= draftSecond.from) return k * x;
  return k * draftSecond.from + draftSecond.stiffness * (x - draftSecond.from);
};

const half = (draftStiffness: number, from: number, stiffness: number) =>
  sampleCoupling({ draftStiffness, draftSecond: { from, stiffness } });

describe('two-stage springs in a joint', () => {
  it('of like halves are half as stiff and travel twice as far to the knee', () => {
    const joint = makeJoint(half(4000, 0.0005, 40_000), half(4000, 0.0005, 40_000));
    expect(joint.draftStiffness).toBeCloseTo(2000, 9);
    expect(joint.draftSecond?.from).toBeCloseTo(0.001, 12);
    expect(joint.draftSecond?.stiffness).toBeCloseTo(20_000, 6);
    expect(joint.buffSecond).toBeUndefined();
  });

  it('of one half and a plain one bend where that half meets its stop', () => {
    const [rear, front] = [half(3000, 0.001, 30_000), sampleCoupling({ draftStiffness: 6000 })];
    // 3 N closes the first stage: 1 mm of the one and 0.5 mm of the other.
    expect(makeJoint(rear, front).draftSecond?.from).toBeCloseTo(0.0015, 12);
    for (const f of [1, 2.9, 3.1, 6, 20]) {
      expect(force(rear, front, travel(rear, f) + travel(front, f))).toBeCloseTo(f, 9);
    }
  });

  it('of unlike halves are exact below both knees and beyond them', () => {
    const stiffness = fc.double({ min: 1000, max: 9000, noNaN: true });
    const from = fc.double({ min: 1e-4, max: 1e-3, noNaN: true });
    const more = fc.double({ min: 2, max: 20, noNaN: true });
    fc.assert(
      fc.property(stiffness, from, more, stiffness, from, more, (k, x, m, l, y, n) => {
        const [rear, front] = [half(k, x, m * k), half(l, y, n * l)];
        const knees = [k * x, l * y];
        for (const f of [0.9 * Math.min(...knees), 1.1 * Math.max(...knees), 5 * Math.max(...knees)]) {
          expect(force(rear, front, travel(rear, f) + travel(front, f)) / f).toBeCloseTo(1, 9);
        }
        // Between them it stays below the true line, which has already stiffened once.
        const { draftStiffness, draftSecond } = makeJoint(rear, front);
        expect(draftStiffness * draftSecond!.from).toBeGreaterThanOrEqual(Math.min(...knees) * (1 - 1e-9));
        expect(draftStiffness * draftSecond!.from).toBeLessThanOrEqual(Math.max(...knees) * (1 + 1e-9));
      }),
    );
  });

  it('are refused where the second stage is the softer one', () => {
    expect(() => makeJoint(half(4000, 0.001, 3000), sampleCoupling())).toThrow(/at least as stiff.*3000/);
  });
});

describe('a bar', () => {
  const rigid = { draftStiffness: Number.POSITIVE_INFINITY, buffStiffness: Number.POSITIVE_INFINITY, slack: 0 };

  it('of two rigid halves yields neither way and has no play', () => {
    const joint = makeJoint(sampleCoupling(rigid), sampleCoupling(rigid));
    expect(joint.draftStiffness).toBe(Number.POSITIVE_INFINITY);
    expect(joint.buffStiffness).toBe(Number.POSITIVE_INFINITY);
    expect(joint.slack).toBe(0);
  });

  it('with a sprung half keeps that half’s two stages', () => {
    const joint = makeJoint(sampleCoupling(rigid), half(4000, 0.0005, 40_000));
    expect(joint.draftSecond?.from).toBeCloseTo(0.0005, 12);
    expect(joint.draftSecond?.stiffness).toBeCloseTo(40_000, 6);
  });
});

describe('halves that couple again', () => {
  it('need each other: one alone does not', () => {
    const magnet = sampleCoupling({ recouples: true });
    expect(makeJoint(magnet, magnet).recouples).toBe(true);
    expect(makeJoint(magnet, sampleCoupling()).recouples).toBe(false);
  });
});
