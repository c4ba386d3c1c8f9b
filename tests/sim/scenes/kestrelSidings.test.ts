import { describe, expect, it } from 'vitest';
import { jointGeometry, placeCoupled, placeVehicle } from '../../../src/core/stock/index.ts';
import { compileScene, compileTrial } from '../../../src/sim/index.ts';
import { bundledScene } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

// The figures expected here are worked out by hand from the scene's own numbers.
describe('Kestrel Sidings', { timeout: patience }, () => {
  const scene = bundledScene('04-kestrel-sidings.json');
  const compiled = compileScene(scene);

  /** Greatest sideways offset of facing buffer heads of two coaches with their joint at its free length, mm. */
  function offset(trialId: string): number {
    const { path, train } = compileTrial(compiled, trialId);
    const [a, b] = train.vehicles.slice(1, 3);
    let most = 0;
    for (let s = 1.4; s < 3; s += 0.002) {
      const placed = placeVehicle(path.track, b, placeCoupled(path.track, a, b, s));
      const { bufferLateral } = jointGeometry(a, b, placeVehicle(path.track, a, s), placed);
      most = Math.max(most, Math.abs(bufferLateral[0]), Math.abs(bufferLateral[1]));
    }
    return most * 1000;
  }

  // By hand, with the faces taken at the middle of the joint; they lie a millimetre apart here, which is worth 0.1 mm.
  it.each([
    ['medium-propelled', 8.5],
    ['large-propelled', 5.25],
    ['medium-eased-propelled', 4.3],
    ['large-eased-propelled', 2.6],
  ])('%s: heads stand %f mm aside', (id, expected) => {
    expect(Math.abs(offset(id) - expected)).toBeLessThan(0.11);
  });

  it('locks when propelled over medium points, and passes when pulled', async () => {
    expect((await solve(scene, 'medium-propelled')).failing).toEqual(['buffer-lock']);
    const pulled = await solve(scene, 'medium-pulled');
    expect(pulled.failing).toEqual([]);
    expect(pulled.run.outcome).toBe('arrived');
  });

  it('is near on large points, with about 0.75 mm of overlap left', async () => {
    const solved = await solve(scene, 'large-propelled');
    const finding = solved.findings.find((one) => one.risk === 'buffer-lock');
    expect(finding?.verdict).toBe('near');
    expect(Math.abs((finding?.margin ?? 0) * 1000 - 0.75)).toBeLessThan(0.11);
  });

  it.each(['medium-eased-propelled', 'large-eased-propelled'])(
    'passes %s, with a coach of straight between',
    async (id) => {
      expect((await solve(scene, id)).failing).toEqual([]);
    },
  );

  it.each([
    ['set-track-propelled', 17],
    ['set-track-half-propelled', 11.3],
    ['set-track-eased-propelled', 8.6],
  ])('locks on %s, where %f mm are expected', async (id, expected) => {
    const solved = await solve(scene, id);
    expect(solved.failing).toContain('buffer-lock');
    // Pushed together, the faces meet nearer to the inflection than at free length: up to 8 % less.
    const { value } = solved.worst('buffer-lock');
    expect(value * 1000).toBeGreaterThan(0.92 * expected);
    expect(value * 1000).toBeLessThan(1.02 * expected);
  });

  it('passes with four-wheel wagons on the same set-track, which therefore test nothing', async () => {
    const solved = await solve(scene, 'wagons-propelled');
    expect(solved.failing).toEqual([]);
    // 2.4 mm by hand between two wagons leave 3.6 mm of the 6 mm heads.
    expect(Math.abs(solved.leastAtJoint('buffer-lock', 2) - 3.6)).toBeLessThan(0.11);
  });
});
