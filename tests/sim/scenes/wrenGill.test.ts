import { describe, expect, it } from 'vitest';
import type { Scene } from '../../../src/scene/index.ts';
import { applyCure } from '../../../src/sim/index.ts';
import { bundledScene, sceneOf } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

// The figures expected here are worked out by hand from the scene's own numbers.
describe('Wren Gill Spiral', { timeout: patience }, () => {
  const scene = bundledScene('01-wren-gill.json');

  it('is eighteen metres of line whose first trial takes 60 to 100 s', async () => {
    const { run, trial } = await solve(scene, scene.trials[0].id);
    expect(trial.path.track.length).toBeGreaterThan(17);
    expect(trial.path.track.length).toBeLessThan(19);
    expect(trial.propelled).toBe(true);
    expect(run.outcome).toBe('arrived');
    const duration = run.time[run.frames - 1];
    expect(duration).toBeGreaterThan(60);
    expect(duration).toBeLessThan(100);
  });

  it('fails by riding up at the high support only, between the drooping and the high head', async () => {
    const solved = await solve(scene, 'propelled-down');
    expect(solved.failing).toEqual(['override']);
    const [finding] = solved.findings;
    expect(finding.subject).toBe(5);
    // Support 38 stands at 60 + 37 * 235.6 = 8777.2 mm, and the long van is there when its bogie is.
    expect(Math.abs(finding.chainage - 8.7772)).toBeLessThan(0.1);
    expect(finding.causes).toContainEqual(expect.objectContaining({ kind: 'support-off', support: 37 }));
    // One head 1.1 mm low and one 0.6 mm high are 1.7 mm.
    expect(finding.causes).toContainEqual(expect.objectContaining({ kind: 'heads-differ' }));
    expect(finding.parts.find((part) => part.label === 'fitted-heads')?.value).toBeCloseTo(0.0017, 9);
  });

  it('passes the reverse curve of the viaduct with little left', async () => {
    const finding = (await solve(scene, 'propelled-down')).findings.find((one) => one.risk === 'buffer-lock');
    expect(finding?.verdict).toBe('near');
    // The curves of the viaduct lie from 1100 to 1549 mm; the joint is at their first one or between them.
    expect(finding?.chainage).toBeGreaterThan(1.1);
    expect(finding?.chainage).toBeLessThan(1.549);
  });

  it.each([
    { kind: 'set-support', support: 37, by: -0.0025 },
    { kind: 'match-heads', joint: 5 },
    { kind: 'change-working' },
  ] as const)('passes with $kind', async (cure) => {
    const cured = applyCure(scene, 'propelled-down', cure);
    expect(cured).not.toBeNull();
    const solved = await solve(cured as Scene, 'propelled-down');
    expect(solved.failing).toEqual([]);
    expect(solved.run.outcome).toBe('arrived');
  });

  it('would pass with either error alone', async () => {
    const straightHeads = sceneOf({
      ...scene,
      trains: [
        { ...scene.trains[0], vehicles: scene.trains[0].vehicles.map(({ headHeightOffMm: _off, ...entry }) => entry) },
      ],
    });
    expect((await solve(straightHeads, 'propelled-down')).failing).toEqual([]);
  });
});
