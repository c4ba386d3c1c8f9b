import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLimits, lineAt, lineShape } from '../../../src/core/survey/index.ts';
import { extremeGrades, limitSet } from '../../../src/core/survey/limitRows.ts';
import { rowSystem } from '../../../src/core/survey/rows.ts';
import type { SurveyInput } from '../../../src/core/survey/types.ts';
import { makeTrack, straight, type Track, trackPoint } from '../../../src/core/track/index.ts';
import { gradeAt, surveyOf } from '../../core/survey/spiral.ts';
import { evenly } from '../../evenly.ts';

const laid = (supports: readonly number[], strip?: SurveyInput['strip'], departures: readonly number[] = []): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(supports[supports.length - 1])],
    profile: {
      points: [{ chainage: 0, height: 0 }],
      ...(strip && {
        strip: { ...strip, supports: supports.map((chainage, i) => ({ chainage, departure: departures[i] ?? 0 })) },
      }),
    },
  });

const ofStrip = (supports: readonly number[], strip: SurveyInput['strip'], more: Partial<SurveyInput> = {}) =>
  surveyOf([], { track: laid(supports), supports, strip, ...more });

describe('a surveyed strip sags between its supports', () => {
  // Civil Engineering Reference Manual, 15th edition, two equal spans under a uniform load: y = w/48EI·(L³x - 3Lx³ + 2x⁴) downward in the first,
  // L the span; -wL²/8 over the middle support. Slope and bend are its derivatives.
  const [span, weight, stiffness] = [0.4, 5, 3.78];
  const supports = [0, span, 2 * span];
  const strip = { hinges: [], sections: [{ from: 0, stiffness, weight }] };
  const factor = weight / (48 * stiffness);

  it.each([0, 0.05, 0.17, 0.3, 0.39])('as a handbook says of two equal spans, at %f m', (x) => {
    const shape = lineShape(ofStrip(supports, strip));
    expect(lineAt(shape, x, 0).planned).toBeCloseTo(-factor * (span ** 3 * x - 3 * span * x ** 3 + 2 * x ** 4), 14);
    expect(lineAt(shape, x, 1).planned).toBeCloseTo(-factor * (span ** 3 - 9 * span * x ** 2 + 8 * x ** 3), 13);
    expect(lineAt(shape, x, 2).planned).toBeCloseTo(-factor * (-18 * span * x + 24 * x ** 2), 12);
  });

  it('settles by its creep', () => {
    const fresh = lineShape(ofStrip(supports, strip));
    const settled = lineShape(ofStrip(supports, { ...strip, creep: 2.25 }));
    expect(lineAt(settled, 0.17, 0).planned).toBeCloseTo(3.25 * lineAt(fresh, 0.17, 0).planned, 14);
  });

  it('so a level in an end span reads a grade where every support stands right', () => {
    // 100 mm of level from 10 to 110 mm: (y(110) - y(10)) / 100 mm by the same formula, of a settled strip.
    const reading = gradeAt(0.06, 0, { base: 0.1 });
    const input = ofStrip(supports, { ...strip, creep: 2.25 }, { readings: [reading] });
    const y = (x: number): number => -3.25 * factor * (span ** 3 * x - 3 * span * x ** 3 + 2 * x ** 4);
    const [row] = rowSystem(input, lineShape(input)).rows;
    expect(row.planned).toBeCloseTo((y(0.11) - y(0.01)) / 0.1, 12);
    expect(Math.abs(row.planned)).toBeGreaterThan(0.004);
  });

  it('is steepest at the outer support, by wL³/48EI, and bends most over the middle one, by wL²/8EI', () => {
    const set = limitSet(lineShape(ofStrip(supports, strip)), { greatestGrade: 1, leastGrade: -1, leastRadius: 1 }, []);
    const [greatest, least, radius] = checkLimits(set, [0, 0, 0]);
    expect(greatest.value).toBeCloseTo(factor * span ** 3, 13);
    expect(least.value).toBeCloseTo(-factor * span ** 3, 13);
    expect(1 / radius.value).toBeCloseTo((weight * span ** 2) / (8 * stiffness), 10);
    expect(radius.chainage).toBeCloseTo(span, 9);
  });

  it('has its steepest place found, and height and grade of a track built so, wherever the supports stand', () => {
    const off = evenly(-0.002, 0.002);
    fc.assert(
      fc.property(fc.array(off, { minLength: 5, maxLength: 5 }), evenly(0, 1.6), (x, at) => {
        const places = [0, 0.4, 0.8, 1.2, 1.6];
        const heavy = { ...strip, creep: 0.8 };
        const shape = lineShape(ofStrip(places, heavy));
        const built = laid(places, heavy, x);
        for (const [order, of] of [[0, 'z'] as const, [1, 'grade'] as const]) {
          const { planned, weights } = lineAt(shape, at, order);
          const told = weights.reduce((sum, share, i) => sum + share * x[i], planned);
          expect(told).toBeCloseTo(trackPoint(built, at)[of], 11);
        }
        const set = limitSet(shape, {}, []);
        for (const sign of [1, -1] as const) {
          const found = Math.max(...extremeGrades(set, x, sign).map(({ grade }) => sign * grade));
          let walked = Number.NEGATIVE_INFINITY;
          for (let i = 0; i <= 1600; i++) walked = Math.max(walked, sign * trackPoint(built, i / 1000).grade);
          expect(found).toBeGreaterThan(walked - 1e-12);
          // Bend is below 0.3 1/m, so grade changes by less than this in the half millimetre to a place walked to.
          expect(found).toBeLessThan(walked + 1.5e-4);
        }
      }),
      { numRuns: 40 },
    );
  });
});
