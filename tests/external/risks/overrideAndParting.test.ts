import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext, RiskId } from '../../../src/core/risks/types.ts';
import type { Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { makeTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { madeUpTrial, passing } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const worst = (id: RiskId, context: RiskContext) => assessRun(context, [riskById(id)])[0].worst;

/** Heads meet where the body ends are: pivots as far inside as the shanks reach. */
const car = (pivots: number, overhang: number, coupling: Partial<Coupling> = {}): Vehicle =>
  sampleVehicle({ pivotSpacing: pivots, overhang, coupling: { pivotInset: 0.01, reach: 0.01, ...coupling } });

describe('a break of grade without a vertical curve', () => {
  // Source: rigid bodies on a kink, greatest mismatch = change of grade × overhang, with a running point at the kink; 3 % and 40 mm give
  // 1.20 mm, 60 mm give 1.80 mm. Common practice, no source. It is for heads at rail level: at their height h the tilt of the
  // bodies moves where they meet by h·δ/2 = 0.15 mm of overhang; places 0.5 mm apart may miss the peak by 0.0005 × δ × 1 mm.
  const kink = sampleTrack(
    [straight(4)],
    [
      { chainage: 0, height: 0 },
      { chainage: 2, height: 0 },
      { chainage: 4, height: 0.06 },
    ],
  );

  it.each([
    [0.04, 0.0012],
    [0.06, 0.0018],
  ])('takes change of grade × overhang of %f m off the facing when pushed over', (overhang, mismatch) => {
    const vehicle = car(0.15, overhang);
    const trial = madeUpTrial(kink, [vehicle, vehicle], passing(1.9, 2.5, 0.0005, { force: -0.05 }));
    // Faces of 3.0 mm.
    const left = worst('override', trial)?.margin ?? Number.NaN;
    expect(Math.abs(left - (0.003 - mismatch))).toBeLessThan(0.00015 * 0.03 + 0.00002);
  });

  it('fails a face no higher than the mismatch', () => {
    const vehicle = car(0.15, 0.06, { facingHeight: 0.0017 });
    expect(
      worst('override', madeUpTrial(kink, [vehicle, vehicle], passing(1.9, 2.5, 0.001, { force: -0.05 })))?.margin,
    ).toBeLessThan(0);
  });
});

describe('a face that leans', () => {
  // Source: full-size practice with centre couplers, ba-bautzen.de on trains in service: the upward component lifts the higher vehicle when it exceeds the
  // weight on that end, F·sin φ - μ·F·cos φ > share of the weight, F the force square to the face, φ its lean.
  // The run's force is horizontal: F·cos φ + μ·F·sin φ.
  const lean = (40 * Math.PI) / 180;
  const friction = 0.25;
  // Head over the far running point by 150 + 30 mm, mass over it by 75 mm: share of 1.17680 N at the head.
  const vehicle = car(0.15, 0.03, { faceTilt: lean, faceFriction: friction });
  const share = (0.12 * 9.80665 * 75) / 180;
  const square = share / (Math.sin(lean) - friction * Math.cos(lean));
  const horizontal = square * (Math.cos(lean) + friction * Math.sin(lean));
  const level = sampleTrack([straight(4)]);
  const at = (push: number) => worst('override', madeUpTrial(level, [vehicle, vehicle], [{ lead: 2, force: -push }]));

  it('lifts its end above that force and not below', () => {
    expect(at(1.001 * horizontal)?.margin).toBeLessThan(0);
    expect(at(0.999 * horizontal)?.margin).toBeGreaterThan(0);
    expect(at(1.001 * horizontal)?.governing).toBe('lift');
  });
});

describe('one support of a 2.2 % strip set 2.5 mm high, supports 275 mm apart', () => {
  // Source: a worked example of common practice, no published source: heads of 85 ft HO cars (208 mm between pivots, 45 mm overhang) come to stand 0.81 mm apart,
  // long against short (100, 24) 0.58, short 0.13; half an engagement is 1.4 mm. Alone it holds; with 1.0 mm of droop and 0.6 mm of
  // wrong height the long cars stand 2.4 mm apart and part under load.
  const length = 12 * 0.275;
  const strip: Track = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(length)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: length, height: 0.022 * length },
      ],
      strip: {
        supports: Array.from({ length: 13 }, (_, i) => ({ chainage: i * 0.275, departure: i === 6 ? 0.0025 : 0 })),
        hinges: [],
      },
    },
  });
  const held: Partial<Coupling> = { engagement: 0.0014 };
  const long = car(0.208, 0.045, held);
  const short = car(0.1, 0.024, held);
  const pulled = (pair: readonly Vehicle[]) =>
    worst('parting', madeUpTrial(strip, pair, passing(0.7, length - 0.3, 0.001, { force: 0.2 })));

  it.each([
    ['long and long', [long, long], 0.81],
    ['long and short', [long, short], 0.58],
    ['short and short', [short, short], 0.13],
  ] as const)('leaves %s 1.4 mm less their mismatch', (_name, pair, mismatchMm) => {
    expect(Math.abs((pulled(pair)?.margin ?? 0) * 1000 - (1.4 - mismatchMm))).toBeLessThan(0.006);
  });

  it('parts long cars of which one droops by 1.0 mm and is 0.6 mm wrong, at that support', () => {
    const drooping = {
      ...long,
      front: { ...long.front, coupling: { ...long.front.coupling, headHeight: 0.0099 - 0.0016 } },
    };
    const found = pulled([long, drooping]);
    expect(Math.abs((found?.margin ?? 0) * 1000 - (1.4 - 2.4))).toBeLessThan(0.02);
    // The joint is past the support while a bogie is on it: no further than a car is long between them.
    expect(Math.abs((found?.chainage ?? 0) - 6 * 0.275)).toBeLessThan(0.208);
  });

  it('does not part them where nothing pulls', () => {
    expect(
      worst('parting', madeUpTrial(strip, [long, long], passing(0.7, length - 0.3, 0.01, { force: -0.2 }))),
    ).toBeNull();
  });
});
