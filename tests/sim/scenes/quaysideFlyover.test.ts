import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { bundledScene } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

// The figures expected here are worked out by hand from the scene's own numbers.
describe('Quayside Flyover', { timeout: patience }, () => {
  const scene = bundledScene('05-quayside-flyover.json');
  const compiled = compileScene(scene);
  const steepest = (id: string): number => trackPoint(compiled.tracks.get(id)!, 3.1 + 1.6).grade;

  it('is 1 in 40 in 3700 mm, 1 in 33.75 in 3200 mm, and 1 in 67.5 when shared', () => {
    expect(1 / steepest('as-wished')).toBeCloseTo(40, 9);
    expect(1 / steepest('as-it-fits')).toBeCloseTo(33.75, 9);
    expect(1 / steepest('shared')).toBeCloseTo(67.5, 9);
  });

  it('stands 80 mm above the line below, either way', () => {
    const height = (id: string) => trackPoint(compiled.tracks.get(id)!, 0).z;
    const top = (id: string) => trackPoint(compiled.tracks.get(id)!, 7.5).z;
    expect(top('as-it-fits') - height('dock-line')).toBeCloseTo(0.08, 12);
    expect(top('shared') - height('sunk-dock-line')).toBeCloseTo(0.08, 12);
  });

  it('leaves the line below 63 mm', async () => {
    for (const id of ['shuttle-under', 'shuttle-under-sunk']) {
      expect((await solve(scene, id)).worst('headroom').limit * 1000).toBeCloseTo(63, 6);
    }
  });

  it('has more in hand the gentler the climb', async () => {
    const inHand = async (id: string) => (await solve(scene, id)).worst('stall').margin;
    const [fits, wished, shared] = [
      await inHand('ten-as-it-fits'),
      await inHand('ten-as-wished'),
      await inHand('ten-shared'),
    ];
    expect(fits).toBeGreaterThan(0);
    expect(fits).toBeLessThan(0.1);
    expect(wished).toBeGreaterThan(fits);
    expect(shared).toBeGreaterThan(wished);
  });
});
