import { describe, expect, it } from 'vitest';
import { frontReach, rearReach, transferredWeight, turnVehicle } from '../../../src/core/stock/index.ts';
import type { Drive } from '../../../src/core/stock/types.ts';
import { sampleCoupling, sampleVehicle } from './samples.ts';

const drive: Drive = {
  drivenMass: 0.2,
  adhesion: 0.25,
  slidingAdhesion: 0.18,
  slipScale: 0.05,
  stallForce: 1.2,
  freeSpeed: 0.5,
  rotatingMass: 0.3,
  worm: true,
  drawbarHeight: 0.01,
  drivenWheelbase: 0.08,
  transferShare: 1,
};

const engine = sampleVehicle(
  { pivotSpacing: 0.08, overhang: 0.03, rearOverhang: 0.02 },
  { massAhead: 0.004, drive, rear: { coupling: sampleCoupling({ kind: 'loop' }), buffers: null } },
);

describe('a turned vehicle', () => {
  const turned = turnVehicle(engine);

  it('has its ends, overhangs and centre of mass the other way round', () => {
    expect(frontReach(turned)).toBe(rearReach(engine));
    expect(turned.front.coupling.kind).toBe('loop');
    expect(turned.rear.coupling.kind).toBe('knuckle');
    expect(turned.massAhead).toBe(-0.004);
  });

  it('is itself again when turned twice', () => {
    expect(turnVehicle(turned)).toEqual(engine);
    const coach = sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02 });
    expect(turnVehicle(turnVehicle(coach))).toEqual(coach);
  });

  it('gains on its driven wheels by a pull what it lost the other way', () => {
    // 0.8 N at 10 mm over 80 mm moves 0.1 N.
    expect(transferredWeight(drive, 0.8)).toBeCloseTo(0.1, 15);
    expect(transferredWeight(turned.drive as Drive, 0.8)).toBeCloseTo(-0.1, 15);
    expect(transferredWeight({ ...drive, transferShare: 0 }, 0.8)).toBe(0);
  });
});
