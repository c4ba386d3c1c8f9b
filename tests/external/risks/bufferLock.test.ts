import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import { bufferedClasses, bufferPlaceMm, bufferToleranceH0Mm, easementLength } from '../../../src/core/stock/index.ts';
import type { Buffers, Vehicle } from '../../../src/core/stock/types.ts';
import { arc, type PlanElement, straight, transition } from '../../../src/core/track/index.ts';
import { madeUpTrial, passing } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const degree = Math.PI / 180;

interface Coach {
  readonly overBuffers: number;
  readonly pivots: number;
  readonly heads: Buffers;
  /** Slack of a joint, m: enough that pushed heads reach past each other wherever overlap is lost, and pulled ones stay apart. */
  readonly slack: number;
}

/** A coach whose buffers just meet at the free length of its couplings. */
function coach({ overBuffers, pivots, heads, slack }: Coach): Vehicle {
  const overhang = (overBuffers - pivots) / 2 - heads.length;
  const size = overBuffers / 0.258;
  return sampleVehicle({
    pivotSpacing: pivots,
    overhang,
    buffers: heads,
    coupling: { pivotInset: 0.012 * size, reach: 0.012 * size + heads.length, slack: slack / 2, freeSwing: 2 },
  });
}

/** Least margin (m) of two such coaches pushed (or pulled) over the elements. */
function least(elements: readonly PlanElement[], kind: Coach, pushed = true, step = 0.002): number {
  const vehicle = coach(kind);
  const room = 2.2 * kind.overBuffers;
  const track = sampleTrack([straight(room), ...elements, straight(room)]);
  const size = kind.overBuffers / 0.258;
  const trial = madeUpTrial(
    track,
    [vehicle, vehicle],
    passing(room, track.length - room / 4, step * size, { force: pushed ? -0.01 : 0.01 }),
  );
  return assessRun(trial, [riskById('buffer-lock')])[0].worst?.margin ?? Number.NaN;
}

describe('a throat of points without straights, 00', () => {
  // Source: a worked example of common practice, no published source: coaches 258 mm over buffers, 186 mm between bogies, round heads of 6 mm, two points of
  // 914 mm and 12° leading into each other: heads stand 8.5 mm aside, past their 6 mm, and lock when propelled and not when pulled;
  // 5.25 mm on 1524 mm; with a straight of 258 mm 4.3 and 2.6 mm; 17.0 mm on set track of 438 mm.
  const heads: Buffers = { spacing: 0.0228, height: 0.0138, headWidth: 0.006, headHeight: 0.006, length: 0.006 };
  const kind: Coach = { overBuffers: 0.258, pivots: 0.186, heads, slack: 0.03 };
  const throat = (radius: number, between = 0): PlanElement[] => {
    const angle = 12 * degree;
    return [arc(radius, angle), ...(between > 0 ? [straight(between)] : []), arc(radius, -angle)];
  };
  // The example's offsets are handbook throws (L² - a²)/4R, exact to 1 % here, and rounded to 0.1 mm; buffers reach their greatest offset between
  // places 2 mm apart.
  const within = 0.00015;

  it.each([
    [0.914, 0, 8.5],
    [1.524, 0, 5.25],
    [0.914, 0.258, 4.3],
    [1.524, 0.258, 2.6],
  ])('of radius %f m with %f m between: 6 mm less %f mm', (radius, between, asideMm) => {
    expect(Math.abs(least(throat(radius, between), kind) - (0.006 - asideMm / 1000))).toBeLessThan(within);
  });

  it('locks on 914 mm when propelled and is fine when pulled', () => {
    expect(least(throat(0.914), kind)).toBeLessThan(-0.002);
    expect(least(throat(0.914), kind, false)).toBeGreaterThan(0);
  });
});

describe('NEM 303 (2015), H0', () => {
  it('lets vehicles within tolerance differ by 1.0 mm in height, which costs round heads of 450 mm next to no width', () => {
    // 12.2 ± 0.5 mm; heads of 450 mm in 1:87 are 5.17 mm: half-chord at 1.0 mm of 5.17 is 5.07 mm.
    const head = 0.45 / 87;
    const at = (heightMm: number): Vehicle =>
      coach({
        overBuffers: 0.23,
        pivots: 0.16,
        slack: 0.002,
        heads: { spacing: 0.02, height: heightMm / 1000, headWidth: head, headHeight: head, length: 0.006 },
      });
    const { height } = bufferPlaceMm.H0;
    const pair = [at(height + bufferToleranceH0Mm.height), at(height - bufferToleranceH0Mm.height)];
    const trial = madeUpTrial(sampleTrack([straight(3)]), pair, [{ lead: 2, force: -0.1 }]);
    expect((assessRun(trial, [riskById('buffer-lock')])[0].worst?.margin ?? 0) * 1000).toBeCloseTo(5.07, 2);
  });
});

describe('NEM 111 (2016) par. 3.2: least radii with buffers touching', () => {
  // Scale heads, sprung, with an easement to NEM 113: the norm's own radius for every class of vehicle has to pass, the widest head being for the longest.
  it.each(bufferedClasses.map((row) => [row.name, row] as const))(
    'pass for class %s when pushed through an eased curve',
    (_name, row) => {
      const width = (row.lengthOverBuffers > 14.6 ? 0.45 : 0.34) / 87;
      const heads: Buffers = { spacing: 0.02, height: 0.0122, headWidth: width, headHeight: width, length: 0.007 };
      const kind = { overBuffers: row.lengthOverBuffers / 87, pivots: row.wheelbase / 87, heads, slack: 0.01 };
      const radius = (row.radiusInGauges * 16.5) / 1000;
      const eased = easementLength('H0', radius);
      const k = 1 / radius;
      expect(least([transition(eased, 0, k), arc(radius, 0.4), transition(eased, k, 0)], kind)).toBeGreaterThan(0);
    },
  );
});

describe('full-size reverse curves without a straight', () => {
  // Source: the high-speed TSI asks for more than 190 m where curves reverse without a straight, and vehicles must pass 150 m otherwise; heads are
  // 550 mm wide (NEM 303 after the full-size drawing). Coach of 26.4 m and 19 m: 0.442 m aside at 190 m, 0.560 m at 150 m.
  const heads: Buffers = { spacing: 1.75, height: 1.06, headWidth: 0.55, headHeight: 0.55, length: 0.62 };
  const kind: Coach = { overBuffers: 26.4, pivots: 19, heads, slack: 3 };
  const reverse = (radius: number): PlanElement[] => [arc(radius, 0.35), arc(radius, -0.35)];
  it('keep overlap at 190 m', () => {
    expect(Math.abs(least(reverse(190), kind) - (0.55 - 0.442))).toBeLessThan(0.004);
  });
  it('lose it at 150 m', () => {
    expect(Math.abs(least(reverse(150), kind) - (0.55 - 0.56))).toBeLessThan(0.004);
  });
});
