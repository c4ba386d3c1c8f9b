import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskId } from '../../../src/core/risks/types.ts';
import type { Vehicle } from '../../../src/core/stock/index.ts';
import { straight, type Track } from '../../../src/core/track/index.ts';
import { madeUpTrial } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const worst = (risk: RiskId, track: Track, vehicle: Vehicle, lead: number) =>
  assessRun(madeUpTrial(track, [vehicle], [{ lead }]), [riskById(risk)])[0].worst;

/** Level up to 1 m, then falling, with no curve between. */
const hump = (grade: number): Track =>
  sampleTrack(
    [straight(2)],
    [
      { chainage: 0, height: 0 },
      { chainage: 1, height: 0 },
      { chainage: 2, height: -grade },
    ],
  );

describe('flanges of NEM 310', () => {
  // Source: NEM 310 (2009): in H0 flanges are D = 0.6 to 1.2 mm deep. A wheel lifted by less than 0.6 mm is guided whatever its flange, one lifted by
  // more than 1.2 mm never.
  const engine = sampleVehicle({ pivotSpacing: 0.06, overhang: 0.02, bogies: false }, { kind: 'locomotive' });
  // Over a hump of g with its middle axle at the break an end rocks up by g x 30 mm: 0.57 mm, 0.63 mm, 1.17 mm and 1.23 mm.
  it.each([
    [0.019, true, true],
    [0.021, false, true],
    [0.039, false, true],
    [0.041, false, false],
  ])('over a hump of %f guide every wheel: %s, the deepest: %s', (grade, every, deepest) => {
    const [least, greatest] = worst('axle-lift', hump(grade), engine, 1)?.range ?? [Number.NaN, Number.NaN];
    expect(least > 0).toBe(every);
    expect(greatest > 0).toBe(deepest);
  });
});

describe('the straightedge rule', () => {
  // Source: a modular group's guideline quoted in a trackwork handbook: under a straightedge of 12 in the gap is at most 1/16 in, which is a vertical radius of
  // 7.3 m. So a vehicle of 12 in between its running points finds the rail 1/16 in nearer in its middle on that summit.
  const inch = 0.0254;
  const summit = sampleTrack(
    [straight(4)],
    [
      { chainage: 0, height: 0 },
      { chainage: 2, height: 0, curve: { radius: 7.3 } },
      { chainage: 4, height: -0.1 },
    ],
  );

  it('of 12 in takes 1/16 in from a long vehicle’s underside', () => {
    const long = sampleVehicle({ pivotSpacing: 12 * inch, overhang: 0.02 });
    const rise = worst('grounding', summit, long, 2)?.value ?? Number.NaN;
    // The radius is printed to 0.1 m of 7.3, and a parabola of 5 % is gentler than its circle by less than 0.4 %.
    expect(Math.abs(rise / (inch / 16) - 1)).toBeLessThan(0.05 / 7.3 + 0.004);
  });
});
