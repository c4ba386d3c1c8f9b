import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { bundledScene } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

// The figures expected here are worked out by hand from the scene's own numbers.
describe('Larkspur Modules', { timeout: patience }, () => {
  const scene = bundledScene('03-larkspur-modules.json');
  const compiled = compileScene(scene);
  const drawn = compiled.tracks.get('true-ramp')!;
  const built = compiled.tracks.get('ramp')!;

  it('rises 75 mm over three modules at 2.46 %, rounded to 24.8 m', () => {
    expect(trackPoint(drawn, 5.86).z - trackPoint(drawn, 2.2).z).toBeCloseTo(0.075, 9);
    expect(100 * trackPoint(drawn, 4).grade).toBeCloseTo(2.46, 2);
    expect(1 / trackPoint(drawn, 2.5).verticalCurvature).toBeCloseTo(24.8, 1);
  });

  it('leaves 0.47 mm under a 12 in straightedge, against 1.59 mm that are allowed', () => {
    const edge = 0.3048;
    const gap =
      (trackPoint(drawn, 2.5 - edge / 2).z + trackPoint(drawn, 2.5 + edge / 2).z) / 2 - trackPoint(drawn, 2.5).z;
    expect(gap * 1000).toBeCloseTo(0.47, 2);
  });

  it('breaks the grade by 0.49 % at the leg that is 3 mm high, and leaves the average', () => {
    const before = trackPoint(built, 3.42 - 1e-6).grade;
    const after = trackPoint(built, 3.42 + 1e-6).grade;
    expect(100 * (before - after)).toBeCloseTo(0.49, 2);
    expect(trackPoint(built, 5.86).z).toBeCloseTo(trackPoint(drawn, 5.86).z, 9);
  });

  it('troubles no train: heads of 85 ft cars part by about 0.3 mm', async () => {
    for (const id of ['coaches-up', 'coaches-propelled-up', 'coaches-down', 'freight-up']) {
      const solved = await solve(scene, id);
      expect(solved.run.outcome).toBe('arrived');
      expect(solved.failing).toEqual([]);
    }
    const { value } = (await solve(scene, 'coaches-up')).worst('parting');
    expect(value * 1000).toBeCloseTo(0.3, 1);
  });

  it('parts them by 1.1 mm where there is no vertical curve', async () => {
    const { value } = (await solve(scene, 'coaches-up-abrupt')).worst('parting');
    expect(value * 1000).toBeCloseTo(1.1, 1);
  });
});
