import { describe, expect, it } from 'vitest';
import { compileScene, compileTrial } from '../../../src/sim/index.ts';
import { bundledScene } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

// The figures expected here are worked out by hand from the scene's own numbers.
describe('Thistledown Bank', { timeout: patience }, () => {
  const scene = bundledScene('07-thistledown-bank.json');

  it.each(scene.trials.map((trial) => trial.id))('passes %s with nothing near', async (id) => {
    const solved = await solve(scene, id);
    expect(solved.run.outcome).toBe('arrived');
    expect(solved.findings.map((finding) => finding.verdict)).toEqual(solved.findings.map(() => 'passes'));
  });

  it('goes both ways, pulled and propelled', () => {
    const ways = scene.trials.map((trial) => {
      const { path, propelled } = compileTrial(compileScene(scene), trial.id);
      return `${path.reversed} ${propelled}`;
    });
    expect(new Set(ways).size).toBe(4);
  });
});
