import { describe, expect, it } from 'vitest';
import {
  couplerPivot,
  frontReach,
  lengthOverBuffers,
  makeJoint,
  rearReach,
  referenceSpacing,
} from '../../../src/core/stock/index.ts';
import { sampleCoupling, sampleVehicle } from './samples.ts';

describe('a joint of two couplings', () => {
  it('adds reach and slack, puts springs and dampers in series, and lets go where the weaker half does', () => {
    const joint = makeJoint(
      sampleCoupling({
        reach: 0.01,
        slack: 0.0004,
        draftStiffness: 3000,
        buffStiffness: 6000,
        damping: 2,
        release: 20,
      }),
      sampleCoupling({
        reach: 0.012,
        slack: 0.0001,
        draftStiffness: 6000,
        buffStiffness: 12000,
        damping: 2,
        release: 15,
      }),
    );
    expect(joint.freeLength).toBeCloseTo(0.022, 15);
    expect(joint.slack).toBeCloseTo(0.0005, 15);
    expect(joint.draftStiffness).toBeCloseTo(2000, 9);
    expect(joint.buffStiffness).toBeCloseTo(4000, 9);
    expect(joint.damping).toBeCloseTo(1, 12);
    expect(joint.release).toBe(15);
  });

  it('is as stiff as its other half when one is rigid', () => {
    const rigid = sampleCoupling({ draftStiffness: Number.POSITIVE_INFINITY, buffStiffness: Number.POSITIVE_INFINITY });
    const joint = makeJoint(rigid, sampleCoupling({ draftStiffness: 3000 }));
    expect(joint.draftStiffness).toBeCloseTo(3000, 9);
    expect(makeJoint(rigid, rigid).buffStiffness).toBe(Number.POSITIVE_INFINITY);
  });

  it('has no damping when one half has none', () => {
    expect(makeJoint(sampleCoupling({ damping: 0 }), sampleCoupling({ damping: 3 })).damping).toBe(0);
  });
});

describe('the ends of a vehicle', () => {
  const lopsided = sampleVehicle({
    pivotSpacing: 0.1,
    overhang: 0.03,
    rearOverhang: 0.02,
    coupling: { pivotInset: 0.004, headHeight: 0.0095 },
    buffers: { spacing: 0.02, height: 0.0122, headWidth: 0.005, headHeight: 0.004, length: 0.005 },
  });

  it('are reached from midway between the running points', () => {
    expect(frontReach(lopsided)).toBeCloseTo(0.08, 15);
    expect(rearReach(lopsided)).toBeCloseTo(0.07, 15);
    expect(lengthOverBuffers(lopsided)).toBeCloseTo(0.16, 15);
  });

  it('carry their pivots inside the body end, at the height of the head', () => {
    expect(couplerPivot(lopsided, 'front').ahead).toBeCloseTo(0.076, 15);
    expect(couplerPivot(lopsided, 'rear').ahead).toBeCloseTo(-0.066, 15);
    expect(couplerPivot(lopsided, 'rear').up).toBe(0.0095);
  });

  it('stand a hair closer when heads differ, since the free length runs from pivot to pivot in space', () => {
    // Pivots 5 apart in length and 3 by 4: a 3-4-5 triangle.
    const low = sampleVehicle({
      pivotSpacing: 0.1,
      overhang: 0,
      coupling: { pivotInset: 0, reach: 0.0025, headHeight: 0.01 },
    });
    const high = sampleVehicle({
      pivotSpacing: 0.1,
      overhang: 0,
      coupling: { pivotInset: 0, reach: 0.0025, headHeight: 0.013 },
    });
    expect(referenceSpacing(low, high)).toBeCloseTo(0.104, 15);
  });
});
