import { describe, expect, it } from 'vitest';
import { jointGeometry, placeCoupled, placeVehicle } from '../../../src/core/stock/index.ts';
import { compileScene, compileTrial } from '../../../src/sim/index.ts';
import { bundledScene } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

// The figures expected here are worked out by hand from the scene's own numbers.
describe('Curlew Throat', { timeout: patience }, () => {
  const scene = bundledScene('11-curlew-throat.json');
  const compiled = compileScene(scene);

  it.each(['short-propelled', 'short-back-propelled', 'long-propelled'])('%s runs over tracks that meet', (id) => {
    const { joints, path } = compileTrial(compiled, id);
    expect(joints).toBeUndefined();
    expect(path.track.jumps.every(({ position, heading }) => position === 0 && heading === 0)).toBe(true);
  });

  it('takes 423 mm of rail over the short crossover, 681 mm over the long one', () => {
    // Twice a front of 20 mm and 12° of 914 mm; then 258 mm of straight between.
    const curves = 2 * (20 + (914 * 12 * Math.PI) / 180);
    const over = (id: string) => {
      const legs = compileTrial(compiled, id).legs ?? [];
      return (legs[3].start - legs[1].start) * 1000;
    };
    expect(over('short-pulled')).toBeCloseTo(curves, 5);
    expect(over('long-pulled')).toBeCloseTo(curves + 258, 5);
  });

  /** Greatest sideways offset of facing buffer heads of two coaches with their joint at its free length, mm. */
  function offset(trialId: string): number {
    const { path, train } = compileTrial(compiled, trialId);
    const [a, b] = train.vehicles.slice(1, 3);
    let most = 0;
    for (let s = 1.4; s < 3.6; s += 0.002) {
      const placed = placeVehicle(path.track, b, placeCoupled(path.track, a, b, s));
      const { bufferLateral } = jointGeometry(a, b, placeVehicle(path.track, a, s), placed);
      most = Math.max(most, Math.abs(bufferLateral[0]), Math.abs(bufferLateral[1]));
    }
    return most * 1000;
  }

  // By hand, with the faces taken at the middle of the joint; they lie a millimetre apart here, which is worth 0.1 mm.
  it.each([
    ['short-propelled', 8.5],
    ['short-back-propelled', 8.5],
    ['long-propelled', 4.3],
  ])('%s: heads stand %f mm aside', (id, expected) => {
    expect(Math.abs(offset(id) - expected)).toBeLessThan(0.11);
  });

  it.each(['short-propelled', 'short-back-propelled'])(
    'locks buffers %s, at the middle of the crossover',
    async (id) => {
      const solved = await solve(scene, id);
      expect(solved.failing).toEqual(['buffer-lock']);
      const { chainage } = solved.findings[0];
      const legs = solved.trial.legs ?? [];
      expect(Math.abs(chainage - legs[2].start)).toBeLessThan(0.13);
    },
  );

  it('is mended by pulling', async () => {
    const solved = await solve(scene, 'short-propelled');
    expect(solved.findings[0].cures).toEqual([{ kind: 'change-working' }]);
    expect((await solve(scene, 'short-pulled')).failing).toEqual([]);
  });

  it('the other way round is the same to the train: both halves are alike', async () => {
    const [there, back] = [await solve(scene, 'short-propelled'), await solve(scene, 'short-back-propelled')];
    expect(back.worst('buffer-lock').margin).toBeCloseTo(there.worst('buffer-lock').margin, 4);
  });

  it.each(['long-propelled', 'long-pulled'])('passes %s, with a coach of straight between', async (id) => {
    const solved = await solve(scene, id);
    expect(solved.failing).toEqual([]);
    expect(solved.run.outcome).toBe('arrived');
  });

  it('counts nothing at a junction as a track beside but what lies parallel', async () => {
    // 39.946 mm from road to road; a coach on the curve of the next turnout throws its end (258² - 186²)/8R = 4.4 mm over, and a half width each side is gone.
    const { margin } = (await solve(scene, 'short-pulled')).worst('passing');
    const { bodyWidth } = compileTrial(compiled, 'short-pulled').train.vehicles[1];
    const parallel = 0.039946 - bodyWidth;
    expect(margin).toBeLessThan(parallel);
    expect(margin).toBeGreaterThan(parallel - 2 * 0.0044);
  });
});
