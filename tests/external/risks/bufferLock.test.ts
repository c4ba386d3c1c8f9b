import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import {
  type BufferedClass,
  bufferedClasses,
  bufferPlaceMm,
  bufferToleranceH0Mm,
  easementLength,
} from '../../../src/core/stock/index.ts';
import type { Buffers, Vehicle } from '../../../src/core/stock/types.ts';
import { arc, type PlanElement, straight, transition } from '../../../src/core/track/index.ts';
import { madeUpTrial, passing } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const degree = Math.PI / 180;

/** Lengths over buffers and between running points, m, and the heads. */
interface Coach {
  readonly overBuffers: number;
  readonly pivots: number;
  readonly heads: Buffers;
}

/**
 * A coach that stands its length over buffers from the next when pushed, and 5 % of that further when pulled. Its heads are
 * 1.5 % longer than they stand then, pressed in as sprung buffers are, so that whether they meet is never in question when pushed; couplings
 * turn at the running points, where the bodies' throw hardly moves them.
 */
function coach({ overBuffers, pivots, heads }: Coach): Vehicle {
  const overhang = (overBuffers - pivots) / 2 - heads.length;
  const play = 0.05 * overBuffers;
  return sampleVehicle({
    pivotSpacing: pivots,
    overhang,
    buffers: { ...heads, length: heads.length + 0.015 * overBuffers },
    coupling: { pivotInset: overhang, reach: (overBuffers - pivots) / 2 + play / 4, slack: play / 2, freeSwing: 2 },
  });
}

/** Least margin (m) of two such coaches pushed (or pulled) over the elements. */
function least(elements: readonly PlanElement[], kind: Coach, pushed = true): number {
  const vehicle = coach(kind);
  const room = 2.2 * kind.overBuffers;
  const step = 0.008 * kind.overBuffers;
  const track = sampleTrack([straight(room), ...elements, straight(room)]);
  const trial = madeUpTrial(
    track,
    [vehicle, vehicle],
    passing(room, track.length - room / 4, step, { force: pushed ? -0.001 : 0.001 }),
  );
  return assessRun(trial, [riskById('buffer-lock')])[0].worst?.margin ?? Number.NaN;
}

describe('a throat of points without straights, 00', () => {
  // Source: a worked example of common practice, no published source: coaches 258 mm over buffers, 186 mm between bogies, round heads of 6 mm, two points of
  // 914 mm and 12° leading into each other: heads stand 8.5 mm aside, past their 6 mm, and lock when propelled and not when pulled;
  // 5.25 mm on 1524 mm; with a straight of 258 mm 4.3 and 2.6 mm; 17.0 mm on set track of 438 mm.
  const heads: Buffers = { spacing: 0.0228, height: 0.0138, headWidth: 0.006, headHeight: 0.006, length: 0.006 };
  const kind: Coach = { overBuffers: 0.258, pivots: 0.186, heads };
  const throat = (radius: number, between = 0): PlanElement[] => {
    const angle = 12 * degree;
    return [arc(radius, angle), ...(between > 0 ? [straight(between)] : []), arc(radius, -angle)];
  };
  // The example is rounded to 0.1 mm, and the pins pull the pair up to 0.5 mm closer in the S, which takes 0.1 mm off the offset.
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
        heads: { spacing: 0.02, height: heightMm / 1000, headWidth: head, headHeight: head, length: 0.006 },
      });
    const { height } = bufferPlaceMm.H0;
    const pair = [at(height + bufferToleranceH0Mm.height), at(height - bufferToleranceH0Mm.height)];
    const trial = madeUpTrial(sampleTrack([straight(3)]), pair, [{ lead: 2, force: -0.1 }]);
    expect((assessRun(trial, [riskById('buffer-lock')])[0].worst?.margin ?? 0) * 1000).toBeCloseTo(5.07, 2);
  });
});

describe('NEM 111 (2016) par. 3.2: least radii with buffers touching, H0', () => {
  // The norm's radius for each class, with easements to NEM 113 (2016), has to pass pushed, through an S of eased curves as well. Heads are
  // round ones of NEM 303 (2015): 340 mm up to 14.5 m of length, 450 mm beyond, in 1:87.
  const scale = 87;
  const kindOf = (row: BufferedClass): Coach => {
    const width = (row.lengthOverBuffers <= 14.5 ? 0.34 : 0.45) / scale;
    const heads = { spacing: 0.02, height: 0.0122, headWidth: width, headHeight: width, length: 0.007 };
    return { overBuffers: row.lengthOverBuffers / scale, pivots: row.pivotSpacing / scale, heads };
  };

  it.each(bufferedClasses)('$name passes at $gauges gauges', (row) => {
    const radius = row.gauges * 0.0165;
    const eased = easementLength('H0', radius);
    const k = 1 / radius;
    const bend = (way: number): PlanElement[] => [
      transition(eased, 0, way * k),
      arc(radius, way * 0.3),
      transition(eased, way * k, 0),
    ];
    expect(least(bend(1), kindOf(row))).toBeGreaterThan(0);
    expect(least([...bend(1), ...bend(-1)], kindOf(row))).toBeGreaterThan(0);
  });

  it('the longest class locks on a reverse curve of 500 mm without a straight', () => {
    // Offset by the handbook (L² - a²)/4R = 23.7 mm with L 312.6 and a 224.1 mm, several heads wide.
    const longest = bufferedClasses.filter((row) => row.name === 'C bogie')[0];
    const kind = { ...kindOf(longest), overBuffers: 0.3126, pivots: 0.2241 };
    expect(least([arc(0.5, 1), arc(0.5, -1)], kind)).toBeLessThan(0);
  });
});

describe('full-size reverse curves without a straight', () => {
  // Source: the high-speed TSI asks for more than 190 m where curves reverse without a straight, and vehicles must pass 150 m otherwise; heads are
  // 550 mm wide (NEM 303 after the full-size drawing). Coach of 26.4 m and 19 m: 0.442 m aside at 190 m, 0.560 m at 150 m.
  const heads: Buffers = { spacing: 1.75, height: 1.06, headWidth: 0.55, headHeight: 0.55, length: 0.62 };
  const kind: Coach = { overBuffers: 26.4, pivots: 19, heads };
  const reverse = (radius: number): PlanElement[] => [arc(radius, 0.35), arc(radius, -0.35)];
  it('keep overlap at 190 m', () => {
    expect(Math.abs(least(reverse(190), kind) - (0.55 - 0.442))).toBeLessThan(0.004);
  });
  it('lose it at 150 m', () => {
    expect(Math.abs(least(reverse(150), kind) - (0.55 - 0.56))).toBeLessThan(0.004);
  });
});
