import { describe, expect, it } from 'vitest';
import { errorBudget, errorBudgets } from '../../../../src/core/risks/index.ts';
import { makeTrack, straight } from '../../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../../stock/samples.ts';
import { madeUpTrial, passing } from '../samples.ts';

const van = (headHeight: number) => sampleVehicle({ pivotSpacing: 0.2, overhang: 0.03, coupling: { headHeight } });
const line = (budget: ReturnType<typeof errorBudget>, label: string) =>
  budget?.lines.find((one) => one.label === label);

describe('the error budget of a joint', () => {
  it('on level track is heads and their tolerances: 0.6 mm, with 0.5 mm each at worst 1.6 mm, likely 0.6 + √0.5 = 1.307 mm', () => {
    const context = madeUpTrial(sampleTrack([straight(4)]), [van(0.0105), van(0.0099)], [{ lead: 2 }]);
    const budget = errorBudget(context, 0);
    expect(budget?.mismatch).toBeCloseTo(0.0006, 9);
    expect(budget?.worstCase).toBeCloseTo(0.0016, 9);
    expect(budget?.likely).toBeCloseTo(0.0006 + 0.000707107, 9);
    expect(budget?.engagement).toBeCloseTo(0.0015, 9);
    expect(budget?.facing).toBeCloseTo(0.003, 9);
    expect(line(budget, 'fitted-heads')?.value).toBeCloseTo(0.0006, 9);
    expect(line(budget, 'supports')?.tolerance).toBe(0);
    expect(errorBudget(context, 1)).toBeNull();
  });

  it('puts a planned break of 3 % under the planned track: 0.03 × 30 mm of overhang and pivot', () => {
    const dip = sampleTrack(
      [straight(4)],
      [
        { chainage: 0, height: 0 },
        { chainage: 2, height: 0 },
        { chainage: 4, height: 0.06 },
      ],
    );
    const context = madeUpTrial(dip, [van(0.0099), van(0.0099)], passing(1.9, 2.4, 0.001, { extension: 0 }));
    const [budget] = errorBudgets(context);
    // Head 32 mm (30 - 8 + 10) beyond the running point that stands at the break, its mate's body still level.
    expect(budget.mismatch).toBeCloseTo(0.00096, 5);
    expect(line(budget, 'planned-track')?.value).toBeCloseTo(budget.mismatch, 12);
    expect(line(budget, 'built-track')?.value).toBeCloseTo(0, 15);
  });

  it('adds up: the values of its lines to the mismatch, the tolerances to the worst case', () => {
    const supports = Array.from({ length: 15 }, (_, k) => ({ chainage: 0.275 * k, departure: k === 7 ? 0.002 : 0 }));
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(3.85)],
      profile: { points: [{ chainage: 0, height: 0 }], strip: { supports, hinges: [] } },
    });
    const context = madeUpTrial(track, [van(0.0102), van(0.0099), van(0.0099)], passing(1, 3, 0.01, { extension: 0 }));
    for (const budget of errorBudgets(context, { supportTolerance: 0.001 })) {
      const values = budget.lines.reduce((sum, { value }) => sum + value, 0);
      const tolerances = budget.lines.reduce((sum, { tolerance }) => sum + tolerance, 0);
      expect(values).toBeCloseTo(budget.mismatch, 12);
      expect(budget.worstCase).toBeCloseTo(budget.mismatch + tolerances, 12);
      expect(budget.likely).toBeLessThan(budget.worstCase);
      // The strip is linear: the one support 2 mm out made at least what 1 mm of it, counted twice, is among the supports.
      expect(line(budget, 'supports')?.tolerance).toBeGreaterThan(
        Math.abs(line(budget, 'built-track')?.value ?? 0) / 2,
      );
    }
  });
});
