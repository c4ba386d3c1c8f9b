import { describe, expect, it } from 'vitest';
import { haulTable } from '../../../src/sim/study/haul.ts';
import { bundledScene, sceneOf } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

describe('what a train takes along', { timeout: patience }, () => {
  const scene = bundledScene('02-marlow-fold.json');
  const coaches = (from: typeof scene, trialId: string) => {
    const { hauls } = haulTable(from, trialId);
    return Object.fromEntries(hauls.map(({ counts, vehicles }) => [counts, vehicles ?? Number.NaN]));
  };

  // By hand: 34 gf of grip carry 34/share grams up a share of the weight; less 290 g of engine and tender, by 150 g. The shares: 80 mm in 2π·505 mm; 1.5 % more for
  // rolling; 0.5 % more for curves at their least; 32 over the radius in inches, per cent, at their most.
  const grade = 80 / (2 * Math.PI * 505);
  it.each([
    ['grade', grade],
    ['rolling', grade + 0.015],
    ['curves-low', grade + 0.015 + 0.005],
    ['curves-high', grade + 0.015 + (32 * 25.4) / 505 / 100],
  ])('is worked out by what the rule of thumb counts: %s', (counts, share) => {
    const byHand = (34 / share - 290) / 150;
    expect(Math.abs(coaches(scene, 'three-up')[counts] - byHand)).toBeLessThan(0.02);
  });

  it('comes to the same whatever number of vehicles it starts from', () => {
    expect(coaches(scene, 'seven-up')).toEqual(coaches(scene, 'three-up'));
  });

  /**
   * By hand, all that a trial counts: curve drag 0.2 × (0.72 × 16.5 + 0.47 × wheelbase)/505 (Protopapadakis, as in forces.md) of each vehicle, and flanges that rub with 0.15. A train
   * of even weight w and length L that asks for a share k pulls in a curve with w·k·(R/0.15)·(e^x − 1), x = 0.15·L/R, and what is hung on a vehicle of length l
   * grows by e^(0.15·l/R) over it (a rope round a drum). Behind the engine half of that counts, as nothing pulls at its front. Coaches of 258 mm over buffers stand about 8 mm apart.
   */
  function pullByHand(count: number): number {
    const share = (wheelbase: number): number => grade + 0.015 + (0.2 * (0.72 * 16.5 + 0.47 * wheelbase)) / 505;
    const turn = (length: number): number => (0.15 * length) / 505;
    const x = turn(count * 266);
    const pulledAlong = (150 * count * share(34) * (Math.exp(x) - 1)) / x;
    const tender = pulledAlong * Math.exp(turn(92)) + 90 * share(52) * (1 + turn(92) / 2);
    return tender * (1 + turn(150) / 2) + 200 * share(59);
  }

  it('counts the wheelbases and flanges of the trial when it counts all: two coaches and next to nothing', () => {
    // Linear between two and three coaches: how many 34 gf pull.
    const byHand = 2 + (34 - pullByHand(2)) / (pullByHand(3) - pullByHand(2));
    expect(byHand).toBeGreaterThan(2);
    // The gaps before and behind the tender, some 30 mm, also bend the pull and are left out: 0.15 × 30/505 of it, 0.015 of a coach. 3 mm more or less between coaches: 0.004.
    expect(Math.abs(coaches(scene, 'three-up').trial - byHand)).toBeLessThan(0.02);
  });

  it('leaves one whole coach with the 2 % in hand that a verdict wants: by hand two ask for more than 34/1.02 gf', () => {
    expect(pullByHand(1)).toBeLessThan(34 / 1.02);
    expect(pullByHand(2)).toBeGreaterThan(34 / 1.02);
    expect(pullByHand(2)).toBeLessThan(34);
    expect(haulTable(scene, 'seven-up').surely).toBe(1);
  });

  it('agrees with what a verdict of stalling says would get over, which keeps 2 % in hand', async () => {
    const { findings } = await solve(scene, 'seven-up');
    const stalled = findings.find(({ risk }) => risk === 'stall');
    const { surely, hauls } = haulTable(scene, 'seven-up');
    expect(surely).toBe(stalled?.reach?.vehicles);
    expect(surely).toBeLessThanOrEqual(hauls.at(-1)?.vehicles ?? Number.NaN);
  });

  it('says where more do not fit', () => {
    const strong = sceneOf({
      ...scene,
      stock: scene.stock.map((one) =>
        one.drive === undefined
          ? one
          : { ...one, drive: { ...one.drive, adhesion: 1, drivenMassG: 200, stallForceN: 90 } },
      ),
      tracks: scene.tracks.map((one) => ({
        ...one,
        alignment: one.alignment.slice(0, 1),
        profile: [{ atMm: 0, heightMm: 0 }],
      })),
    });
    const { hauls } = haulTable(strong, 'three-up');
    // 2400 mm less an engine and tender of 250 mm hold eight coaches of 266 mm.
    expect(hauls.find(({ counts }) => counts === 'rolling')).toMatchObject({ vehicles: 8, fits: false });
    expect(hauls.find(({ counts }) => counts === 'grade')?.vehicles).toBeNull();
  });

  it('refuses a train with nothing to count', () => {
    const alone = { ...scene, trains: scene.trains.map((one) => ({ ...one, vehicles: one.vehicles.slice(0, 1) })) };
    expect(() => haulTable(alone, 'three-up')).toThrow(/nothing behind its engine/);
  });
});
