import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import type { Scene } from '../../../src/scene/index.ts';
import { compileScene, compileTrial } from '../../../src/sim/index.ts';
import { bundledScene, sceneOf } from '../../scene/sample.ts';
import { gramsForce, patience, solve } from '../solved.ts';

// The figures expected here are worked out by hand from the scene's own numbers.
describe('Marlow Fold', { timeout: patience }, () => {
  const scene = bundledScene('02-marlow-fold.json');
  const compiled = compileScene(scene);
  const outer = compiled.tracks.get('outer')!;
  const inner = compiled.tracks.get('inner')!;
  const inHelix = 2.4 + 3 * 3.173;

  /** The scene with an engine that grips whatever is asked, which shows what a train needs. */
  const gripping = (trials: Scene['trials']): Scene =>
    sceneOf({
      ...scene,
      trials,
      stock: scene.stock.map((one) =>
        one.drive === undefined ? one : { ...one, drive: { ...one.drive, adhesion: 0.8, stallForceN: 6 } },
      ),
    });

  it('climbs 1 in 39.7 outside and 1 in 34.4 inside, 3173 and 2752 mm a turn', () => {
    expect(1 / trackPoint(outer, inHelix).grade).toBeCloseTo(39.7, 1);
    expect(1 / trackPoint(inner, 2.4 + 2 * 2.752).grade).toBeCloseTo(34.4, 1);
    const turn = (track: typeof outer) => 1000 * 2 * Math.PI * (1 / trackPoint(track, 6).curvature);
    expect(Math.round(turn(outer))).toBe(3173);
    expect(Math.round(turn(inner))).toBe(2752);
  });

  it('leaves 63 mm of clear height: 80 mm a turn less 17 mm of deck, underlay and track', () => {
    const { surroundings } = compileTrial(compiled, 'six-up');
    const rise = trackPoint(outer, inHelix).z - trackPoint(outer, inHelix - 3.17301).z;
    // A turn of 505 mm radius is 3173.01 mm.
    expect((rise - surroundings.deckDepth) * 1000).toBeCloseTo(63, 2);
  });

  it('lets the rule of thumb promise seven coaches, which then stall', async () => {
    const engine = 290;
    const grade = 80 / 3173.01;
    expect(Math.floor((34 / grade - engine) / 150)).toBe(7);
    const { run } = await solve(scene, 'seven-up');
    expect(run.outcome).toBe('stalled');
  });

  it('takes three coaches up with the least curve drag, with almost nothing in hand, and not with the most', async () => {
    // By hand: 740 g * (1.5 + 2.52 + 0.5) % = 33.4 gf against 34 gf of grip; with 32/R (1.61 %) 41.6 gf.
    const light = await solve(scene, 'three-up-light');
    expect(light.run.outcome).toBe('arrived');
    const stall = light.worst('stall');
    expect(gramsForce(stall.limit)).toBeCloseTo(34, 1);
    // 2 %: the curve drag of engine and tender is not the flat percentage of the hand figure.
    expect(Math.abs(gramsForce(stall.value) / 33.4 - 1)).toBeLessThan(0.02);
    expect((await solve(scene, 'three-up-heavy')).run.outcome).toBe('stalled');
  });

  it.each([
    ['three-up-light', 0, 3.7],
    ['three-up-light', undefined, 3.08],
    ['three-up-heavy', undefined, 2.09],
  ])('has grip for so many coaches, %s with a curve factor of %s: %f', async (id, curveFactor, coaches) => {
    const trials = scene.trials.map((one) =>
      one.id === id && curveFactor !== undefined ? { ...one, forces: { ...one.forces, curveFactor } } : one,
    );
    const { run } = await solve(gripping(trials), id);
    const middle = run.time.findIndex((_, frame) => run.chainage[frame * run.vehicles] > 2.4 + 1.5 * 3.173);
    // What three coaches of 150 g and 290 g of engine and tender ask for each gram, and what 34 gf of grip are enough for.
    const share = gramsForce(run.demand[middle]) / (290 + 3 * 150);
    // A tenth of a coach: 2 % of the need, as above.
    expect(Math.abs((34 / share - 290) / 150 - coaches)).toBeLessThan(0.1);
  });

  it('slips with six coaches in the first turn', async () => {
    for (const id of ['six-up-light', 'six-up-heavy']) {
      const { run } = await solve(scene, id);
      expect(run.outcome).toBe('stalled');
      const slip = run.events.find((event) => event.kind === 'slip');
      expect(slip?.chainage).toBeGreaterThan(2.4);
      expect(slip?.chainage).toBeLessThan(2.4 + 3.173);
    }
  });

  it.each([
    ['six-up-light', 53.8],
    ['six-up-heavy', 67],
  ])('asks %s for %f gf in the helix', async (id, expected) => {
    const { run } = await solve(gripping(scene.trials), id);
    expect(run.outcome).toBe('arrived');
    const middle = run.time.findIndex((_, frame) => run.chainage[frame * run.vehicles] > 2.4 + 2 * 3.173);
    // 2 %, for the same reason as above.
    expect(Math.abs(gramsForce(run.demand[middle]) / expected - 1)).toBeLessThan(0.02);
  });
});
