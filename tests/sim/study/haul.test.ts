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

  it('lies between the edges of the band of curve drag when all is counted', () => {
    const { trial, 'curves-low': low } = coaches(scene, 'three-up');
    expect(trial).toBeGreaterThan(1);
    expect(trial).toBeLessThan(low);
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
