import { describe, expect, it } from 'vitest';
import { errorBudget } from '../../../src/core/risks/index.ts';
import { wheelPlay, wheelPlayTolerance } from '../../../src/core/risks/wheels/wheelPlay.ts';
import { gaugeLimitsMm, wheelLimitsMm, wheelsetMm } from '../../../src/core/stock/index.ts';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { madeUpTrial, passing } from '../../core/risks/samples.ts';
import { sampleVehicle } from '../../core/stock/samples.ts';

describe('wheels of the standards', () => {
  it('of NMRA S-4.2 fit tracks of S-3.2 with play on either side', () => {
    // Source: NMRA S-4.2, HO: K at most 15.4, B at least 14.4 mm, so a flange of at most 15.4 - 14.4 = 1.0 mm; S-3.2: gauge 16.5 to 17.1 mm.
    const { checkMost, backToBackLeast } = wheelLimitsMm.H0;
    const wheels = { backToBack: backToBackLeast / 1000, flangeThickness: (checkMost - backToBackLeast) / 1000 };
    const [least, greatest] = gaugeLimitsMm.HO;
    expect(wheelPlay({ gauge: least / 1000, wheels })).toBeCloseTo(0.00005, 9);
    expect(wheelPlay({ gauge: greatest / 1000, wheels })).toBeCloseTo(0.00035, 9);
  });

  it('of NEM 310 and NMRA S-4.2 agree on the least back to back of H0, 14.4 mm', () => {
    // Source: NEM 310 (2009), 14.4 to 14.6 mm; NMRA S-4.2, at least 14.4 mm.
    expect(wheelsetMm[16.5].backToBack[0]).toBe(wheelLimitsMm.H0.backToBackLeast);
  });

  it('of NEM 310 play by 0.15 to 0.35 mm in H0', () => {
    // Source: NEM 310 (2009): K 15.1 to 15.3, T 0.7 to 0.9 mm, so (16.5 - 16.2)/2 to (16.5 - 15.8)/2.
    const usual = { gauge: 0.0165 };
    expect(wheelPlay(usual) - wheelPlayTolerance(usual)).toBeCloseTo(0.00015, 12);
    expect(wheelPlay(usual) + wheelPlayTolerance(usual)).toBeCloseTo(0.00035, 12);
  });
});

describe('one support out of line, in the budget of a joint', () => {
  // Source: worked figures for 85 ft cars (bogies 208 mm apart, 45 mm of overhang) over rods 275 mm apart, one of them 2.5 mm high on 2.2 %: heads 0.81 mm apart; for
  // 1, 2, 3 and 4 mm 0.32, 0.65, 0.97 and 1.30 mm. With a droop of 1.0 mm and a height error of 0.6 mm 2.4 mm in all.
  const car = sampleVehicle({
    pivotSpacing: 0.208,
    overhang: 0.045,
    coupling: { pivotInset: 0.01, reach: 0.01, headHeightTolerance: 0.0008 },
  });
  const track = (off: number) =>
    makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(4.4)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 4.4, height: 0.0968 },
        ],
        strip: {
          supports: Array.from({ length: 17 }, (_, k) => ({ chainage: 0.275 * k, departure: k === 8 ? off : 0 })),
          hinges: [],
        },
      },
    });
  const budget = (off: number, supportTolerance = 0) =>
    errorBudget(madeUpTrial(track(off), [car, car], passing(1.7, 3.1, 0.005, { extension: 0 })), 0, {
      supportTolerance,
    });

  it.each([
    [1, 0.32],
    [2, 0.65],
    [2.5, 0.81],
    [3, 0.97],
    [4, 1.3],
  ])('%f mm out puts heads %f mm apart, all of it under the track as built', (off, apart) => {
    const found = budget(off / 1000);
    // Printed to 0.01 mm.
    expect(Math.abs((found?.mismatch ?? Number.NaN) * 1000 - apart)).toBeLessThan(0.01);
    const built = found?.lines.find(({ label }) => label === 'built-track');
    expect(built?.value).toBeCloseTo(found?.mismatch ?? Number.NaN, 6);
  });

  it('with 0.8 mm in doubt on either head comes to 2.4 mm at worst', () => {
    expect(Math.abs((budget(0.0025)?.worstCase ?? Number.NaN) * 1000 - 2.4)).toBeLessThan(0.02);
  });
});
