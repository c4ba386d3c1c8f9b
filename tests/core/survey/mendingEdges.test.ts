import fc from 'fast-check';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { acrossBelief, type LeanReading } from '../../../src/core/survey/acrossBelief.ts';
import {
  type Adjuster,
  checkLimits,
  headroomPairs,
  type LimitRow,
  limitMargins,
  limitSet,
  lineShape,
  shimTable,
  twistEstimate,
  usualLimits,
} from '../../../src/core/survey/index.ts';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { ramp, supports, surveyOf } from './spiral.ts';

// What reading the code alone would not show to be tried: each of these fails for one slip that the other tests let pass.

describe('what is believed across the rails', () => {
  it('is what the whole of the normal equations gives, three zeros and all, against ml-matrix', () => {
    const reading = fc.record({
      lean: fc.integer({ min: -20, max: 20 }).map((n) => n / 1000),
      variance: fc.integer({ min: 1, max: 9 }).map((n) => n * 1e-6),
      zero: fc.integer({ min: -1, max: 2 }),
    });
    const place = fc.array(reading, { minLength: 1, maxLength: 4 });
    const variance = fc.integer({ min: 1, max: 9 }).map((n) => n * 1e-6);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(place, fc.option(variance, { nil: Number.POSITIVE_INFINITY })), {
          minLength: 1,
          maxLength: 5,
        }),
        fc.tuple(variance, variance, variance),
        (places, zeros) => {
          const readings: readonly (readonly LeanReading[])[] = places.map(([one]) => one);
          const priors = places.map(([, prior]) => prior);
          const { mean, own, shared } = acrossBelief(readings, priors, zeros);
          const n = places.length;
          const normal = Matrix.zeros(n + 3, n + 3);
          const right = Matrix.zeros(n + 3, 1);
          const add = (i: number, k: number, value: number): void => {
            normal.set(i, k, normal.get(i, k) + value);
          };
          priors.forEach((prior, p) => {
            add(p, p, 1 / prior);
          });
          zeros.forEach((zero, k) => {
            add(n + k, n + k, 1 / zero);
          });
          readings.forEach((here, p) => {
            for (const { lean, variance: v, zero } of here) {
              const columns = zero < 0 ? [p] : [p, n + zero];
              for (const i of columns) {
                right.set(i, 0, right.get(i, 0) + lean / v);
                for (const k of columns) add(i, k, 1 / v);
              }
            }
          });
          const covariance = inverse(normal);
          const expected = covariance.mmul(right);
          for (let p = 0; p < n; p++) {
            expect(mean[p]).toBeCloseTo(expected.get(p, 0), 9);
            for (let q = 0; q < n; q++) {
              const together = shared.reduce((sum, moved) => sum + moved[p] * moved[q], p === q ? own[p] * own[p] : 0);
              expect(together * 1e6).toBeCloseTo(covariance.get(p, q) * 1e6, 6);
            }
          }
        },
      ),
    );
  });
});

describe('mending', () => {
  const row = (weights: readonly number[], planned: number, bound: number, sign: 1 | -1): LimitRow => ({
    planned,
    weights: Float64Array.from(weights),
    sign,
    bound,
    place: { limit: 'headroom', chainage: 0, support: -1 },
  });

  it('keeps the room that nineteen in twenty ask for, and never more than the plan has', () => {
    // By hand: a difference of two heights of deviation 3 and 4 mm is known to 5 mm; 1.64485 of them.
    const belief = { mean: new Float64Array(2), covariance: Float64Array.from([9e-6, 0, 0, 16e-6]) };
    const atBest = [0.001, 0.002];
    const margins = limitMargins(
      [
        row([-1, 1], 0.06, 0.05, -1),
        row([-1, 1], 0.055, 0.05, -1),
        row([-1, 1], 0.045, 0.05, -1),
        row([1, 0], 0.01, 0.02, 1),
      ],
      atBest,
      belief,
    );
    // At its best the first stands at 60 + 1 mm, 11 over its bound; the second 6 mm, less than 8.22; the third is short already; the fourth goes up to 11 of 20 mm.
    expect(margins[0]).toBeCloseTo(1.64485 * 0.005, 7);
    expect(margins[1]).toBeCloseTo(0.006, 12);
    expect(margins[2]).toBe(0);
    expect(margins[3]).toBeCloseTo(1.64485 * 0.003, 7);
    // Heights that go together: the difference of two that are surely alike is sure.
    const alike = { mean: new Float64Array(2), covariance: new Float64Array(4).fill(9e-6) };
    expect(limitMargins([row([-1, 1], 0.06, 0.05, -1)], atBest, alike)[0]).toBeCloseTo(0, 12);
  });

  it('has no kink to check on two supports', () => {
    const two = lineShape(surveyOf([], { track: ramp(1), supports: [0, 1] }));
    expect(checkLimits(limitSet(two, { greatestKink: 0.01 }, []), [0, 0.001])).toEqual([]);
  });

  it('checks each limit by its own rows: kink, radius and headroom of one support that is off, by hand', () => {
    const [apart, off] = [0.5, 0.001];
    const shape = lineShape(surveyOf([], { track: ramp(1), supports: [0, apart, 2 * apart] }));
    const pair = { below: apart, above: null, fixed: 0.08, depth: 0.01 };
    const limits = { greatestKink: 0.01, leastRadius: 60, headroom: 0.05 };
    const checks = checkLimits(limitSet(shape, limits, [pair]), [0, off, 0]);
    const by = Object.fromEntries(checks.map((check) => [check.limit, check]));
    expect(by.greatestKink.value).toBeCloseTo((2 * off) / apart, 12);
    expect(by.greatestKink.chainage).toBe(apart);
    // A strip over three supports of which the middle one is off by d bends there by 3d/l² (beam on two spans, any table).
    expect(by.leastRadius.value).toBeCloseTo((apart * apart) / (3 * off), 6);
    // Rail of the deck above 80 mm, 10 mm deep, over a rail at 11 mm and 1 mm more.
    expect(by.headroom.value).toBeCloseTo(0.07 - 0.022 * apart - off, 12);
    expect(checks.map(({ holds }) => holds)).toEqual([true, true, true]);
    // The kink is one support's; a bend and a deck lie anywhere.
    expect(limitSet(shape, limits, [pair]).rows.map(({ place }) => [place.limit, place.support])).toEqual(
      expect.arrayContaining([
        ['greatestKink', 1],
        ['leastRadius', -1],
        ['headroom', -1],
      ]),
    );
    expect(limitSet(shape, { headroom: 0.05 }, [pair]).rows).toHaveLength(1);
  });

  it('takes its usual limits from the plan: nothing against a climb or a fall, and its own curves', () => {
    const plan = (percent: number, radius?: number) =>
      usualLimits({
        track: makeTrack({
          start: { x: 0, y: 0, heading: 0 },
          elements: [straight(4)],
          profile: {
            points: [
              { chainage: 0, height: 0 },
              { chainage: 2, height: percent / 50, ...(radius !== undefined && { curve: { radius } }) },
              { chainage: 4, height: (percent + (radius === undefined ? percent : percent + 4)) / 50 },
            ],
          },
        }),
        supports: [0, 1, 2, 3, 4],
        strip: { hinges: [] },
      });
    // Half a per cent either way of 0.3 % would go past level.
    expect(plan(0.3)).toMatchObject({ leastGrade: 0, greatestGrade: expect.closeTo(0.008, 9) });
    expect(plan(-0.3)).toMatchObject({ greatestGrade: 0, leastGrade: expect.closeTo(-0.008, 9) });
    // 1/16 in under a straightedge of 12 in, R = c²/8s, where the plan is straight; else the plan's own, when that is sharper.
    expect(plan(2).leastRadius).toBeCloseTo((304.8 * 304.8) / (8 * (25.4 / 16)) / 1000, 9);
    expect(plan(2, 5).leastRadius).toBeCloseTo(5, 9);
    expect(plan(2, 9).leastRadius).toBeCloseTo(7.315, 2);
  });

  it('finds where a spiral passes over itself, from its first support on, and a track over it near that track’s beginning', () => {
    const turn = 2 * Math.PI * 0.6;
    const decks = { depth: 0.017, halfWidth: 0.035, others: [] };
    const input = surveyOf([], { supports: supports.slice(1) });
    const own = headroomPairs(input, decks);
    expect(own.length).toBeGreaterThan(20);
    // The turn above is one turn further on, within half the distance of the places looked at.
    for (const { below, above } of own) {
      const turns = ((above ?? 0) - (below ?? 0)) / turn;
      expect(Math.abs(turns - Math.round(turns)) * turn).toBeLessThan(0.5 * 0.5 * 0.035 + 1e-9);
    }
    const over = makeTrack({
      start: { x: 0.8, y: -0.5, heading: Math.PI / 2 },
      elements: [straight(3)],
      profile: { points: [{ chainage: 0, height: 0.2 }] },
    });
    const line = surveyOf([], { track: ramp(1.6), supports: [0, 0.4, 0.8, 1.2, 1.6] });
    const crossing = headroomPairs(line, { ...decks, others: [over] });
    expect(crossing).toEqual([{ below: 0.8, above: null, fixed: 0.2, depth: 0.017 }]);
  });

  it('packs every height with as few pieces as there can be, dearest first', () => {
    const three = [0, 0.5, 1];
    const set = limitSet(lineShape(surveyOf([], { track: ramp(1), supports: three })), {}, []);
    // Two of 0.7 mm, not one of 1.0 and two of 0.2.
    const few: Adjuster = { kind: 'packing', thicknesses: [0.001, 0.0007, 0.0002], most: 6 };
    expect(shimTable([0.0014, 0, 0], few, set, [0, 0, 0])[0].pieces).toEqual([{ thickness: 0.0007, count: 2 }]);
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 2, max: 30 }), { minLength: 1, maxLength: 3 }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }),
        (tenths, counts) => {
          fc.pre(tenths.some((_, k) => counts[k] > 0));
          const wanted = tenths.reduce((sum, tenth, k) => sum + counts[k] * tenth, 0);
          const adjuster: Adjuster = { kind: 'packing', thicknesses: tenths.map((tenth) => tenth / 1e4), most: 6 };
          const [step] = shimTable([0, wanted / 1e4, 0], adjuster, set, [0, 0, 0]);
          expect(step.support).toBe(1);
          const height = step.pieces.reduce((sum, { thickness, count }) => sum + thickness * count, 0);
          expect(height).toBeCloseTo(wanted / 1e4, 9);
          // By trying every number of each.
          let fewest = Number.POSITIVE_INFINITY;
          for (let a = 0; a <= 6; a++) {
            for (let b = 0; b <= (tenths.length > 1 ? 6 : 0); b++) {
              for (let c = 0; c <= (tenths.length > 2 ? 6 : 0); c++) {
                const sum = a * tenths[0] + b * (tenths[1] ?? 0) + c * (tenths[2] ?? 0);
                if (sum === wanted) fewest = Math.min(fewest, a + b + c);
              }
            }
          }
          expect(step.pieces.reduce((sum, { count }) => sum + count, 0)).toBe(fewest);
          const sizes = step.pieces.map(({ thickness }) => thickness);
          expect(sizes).toEqual([...sizes].sort((x, y) => y - x));
        },
      ),
    );
  });
});

describe('the lean of one place', () => {
  const apart = 0.0175;
  const [setting, reads] = [0.0002, { id: 'cross', deviation: 0.003, step: 0.001, zero: 0.002 }];
  const belief = (mm: number) => {
    const plain = surveyOf([], { instruments: [reads], setting });
    const readings = [
      { name: 'one', instrument: 'cross', at: { support: 3 }, slope: mm / 1000 / apart, unit: 'percent' as const },
    ];
    const found = twistEstimate({ ...plain, cross: { gauge: 0.0165, readings } });
    if (found === null) throw new Error('One place was read.');
    const { mean, own, shared } = found.belief;
    const variance = own[0] * own[0] + shared.reduce((sum, moved) => sum + moved[0] * moved[0], 0);
    return { wrong: found.places[0].wrong, mean: mean[0], variance };
  };
  // By hand: how closely both sides are set, as a slope; the reading's own variance with its step; the zero's.
  const set = (2 * setting * setting) / (apart * apart);
  const read = reads.deviation * reads.deviation + (reads.step * reads.step) / 12 + reads.zero * reads.zero;

  it('is believed between the reading and how closely decks are set, by their variances', () => {
    const { wrong, mean, variance } = belief(0.2);
    expect(wrong).toBe(false);
    expect(mean).toBeCloseTo(((0.2 / 1000 / apart) * set) / (set + read), 12);
    expect(variance / ((set * read) / (set + read))).toBeCloseTo(1, 9);
  });

  it('is believed as read where it is shown to be wrong', () => {
    const { wrong, mean, variance } = belief(2);
    expect(wrong).toBe(true);
    expect(mean).toBeCloseTo(2 / 1000 / apart, 12);
    expect(variance / read).toBeCloseTo(1, 9);
  });
});
