import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial } from './samples.ts';

const risk = riskById('coupler-swing');
const car = (freeSwing: number): Vehicle =>
  sampleVehicle({ pivotSpacing: 0.16, overhang: 0.03, coupling: { freeSwing } });

describe('coupler swing', () => {
  it('of equal vehicles on an arc is half the angle between them, pulled or pushed', () => {
    // Two like bodies whose origins are s apart on radius R turn by s/R against each other; each coupling takes half of it.
    const track = sampleTrack([arc(0.5, 3)]);
    for (const force of [0.2, -0.2]) {
      const context = madeUpTrial(track, [car(0.35), car(0.35)], [{ lead: 0.8, force }]);
      const apart = context.run.chainage[0] - context.run.chainage[1];
      const { worst } = assessRun(context, [risk])[0];
      expect(worst?.value).toBeCloseTo(apart / 1, 9);
      expect(worst?.margin).toBeCloseTo(0.35 - apart / 1, 9);
    }
  });

  it('is that of the half with less left', () => {
    const track = sampleTrack([arc(0.5, 3)]);
    const { worst } = assessRun(madeUpTrial(track, [car(0.35), car(0.25)], [{ lead: 0.8 }]), [risk])[0];
    expect(worst?.limit).toBe(0.25);
  });

  it('is none on straight track', () => {
    const { worst } = assessRun(madeUpTrial(sampleTrack([straight(3)]), [car(0.3), car(0.3)], [{ lead: 2 }]), [
      risk,
    ])[0];
    expect(worst?.margin).toBeCloseTo(0.3, 12);
  });

  it('does not arise for couplings that turn all the way', () => {
    const free = car(Number.POSITIVE_INFINITY);
    expect(assessRun(madeUpTrial(sampleTrack([straight(3)]), [free, free], [{ lead: 2 }]), [risk])).toEqual([]);
  });
});
