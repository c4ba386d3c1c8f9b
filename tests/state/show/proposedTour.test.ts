import { describe, expect, it } from 'vitest';
import { standingOf } from '../../../src/core/findings/index.ts';
import type { Cure } from '../../../src/core/findings/types.ts';
import { nearestChainage } from '../../../src/core/track/index.ts';
import { namedStops, parseScene, putTour } from '../../../src/scene/index.ts';
import { applyCure } from '../../../src/sim/index.ts';
import { proposedTour, trialOfStop, verdictOfStop } from '../../../src/state/show/index.ts';
import { bundledFiles, bundledScene } from '../../scene/sample.ts';
import { patience, solve } from '../../sim/solved.ts';

const show = { lengthUnit: 'mm', gradeForm: 'one-in' } as const;

async function proposal(file: string) {
  const scene = bundledScene(file);
  const solved = await solve(scene, scene.opensWith ?? scene.trials[0].id);
  const stops = proposedTour({ scene, trial: solved.trial, result: solved, show });
  return { scene, solved, stops };
}

describe.each(bundledFiles)('the tour proposed for %s', (file) => {
  it(
    'begins with the whole, goes through what is worst in order of gravity, and ends with the run',
    async () => {
      const { scene, solved, stops } = await proposal(file);
      const { trial, findings, run } = solved;
      expect(stops[0].view.kind).toBe('whole');
      expect(stops.at(-1)?.atS).toBeCloseTo(run.time.at(-1) ?? Number.NaN, 1);
      const bad = findings.filter((finding) => standingOf(finding) !== 'passes').map(({ risk }) => risk);
      const told = stops.flatMap(({ risk }) => risk ?? []);
      // The first of each check, in the order that the findings are in; and headroom last where a track crosses over.
      const order = [...new Set(bad)].filter((risk) => told.includes(risk));
      expect([...new Set(told)].slice(0, order.length)).toEqual(order);
      if (bad.length > 0) expect(told[0]).toBe(bad[0]);
      if (findings.some(({ risk }) => risk === 'headroom')) expect(told).toContain('headroom');
      expect(stops.length).toBeLessThanOrEqual(8);

      // The file takes it, and every moment lies within the run.
      const parsed = parseScene(putTour(scene, namedStops(stops)));
      expect(parsed.ok).toBe(true);
      for (const { atS = 0, tillS = atS } of stops) {
        expect(atS).toBeGreaterThanOrEqual(0);
        expect(tillS).toBeLessThanOrEqual((run.time.at(-1) ?? 0) + 0.01);
      }

      // A view of a place looks at a rail, from above it.
      for (const { view } of stops) {
        if (view.kind !== 'place') continue;
        const { xMm, yMm, heightMm } = view.target;
        const { distance } = nearestChainage(trial.path.track, [xMm / 1000, yMm / 1000, heightMm / 1000]);
        // Written to a millimetre: half of one each way.
        expect(distance).toBeLessThan(0.001);
        expect(view.eye.heightMm).toBeGreaterThan(heightMm);
      }
    },
    patience,
  );
});

describe('the tour proposed for Wren Gill', () => {
  it('magnifies the joint that rides up, by the number that the ledger gives it, as it comes to its worst', async () => {
    const { solved, stops } = await proposal('01-wren-gill.json');
    const { time } = solved.findings[0];
    expect(stops[1]).toMatchObject({ view: { kind: 'lens', joint: 6 }, risk: 'override', trial: 'propelled-down' });
    expect(stops[1].title).toContain('joint 6');
    expect(stops[1].tillS).toBeCloseTo(time, 2);
    expect(stops[1].atS).toBeLessThan(time);
  });
});

describe('the tour that comes with Wren Gill', () => {
  it('tells at every stop what its words lead to', async () => {
    const scene = bundledScene('01-wren-gill.json');
    const told: string[] = [];
    for (const stop of scene.tour ?? []) {
      if (stop.risk === undefined) continue;
      const solved = await solve(scene, trialOfStop(scene, stop));
      const verdict = verdictOfStop({ trial: solved.trial, result: solved, ...show }, stop);
      expect(verdict?.ofTrial, stop.id).toBe(false);
      expect(stop.tillS).toBeLessThan(solved.run.time.at(-1) ?? 0);
      told.push(`${stop.id} ${verdict?.standing}`);
    }
    expect(told).toEqual([
      'the-viaduct near',
      'going-down passes',
      'support-38 undecided',
      'joint-6 fails',
      'engine-ahead passes',
    ]);
  });

  it('offers three ways out, each of which is enough', async () => {
    const scene = bundledScene('01-wren-gill.json');
    const before = await solve(scene, 'propelled-down');
    const joint = before.worst('override').subject;
    const ways: Cure[] = [
      { kind: 'match-heads', joint },
      { kind: 'set-support', support: 37, by: -0.0025 },
      { kind: 'change-working' },
    ];
    for (const way of ways) {
      const cured = applyCure(scene, 'propelled-down', way);
      if (cured === null) throw new Error(`${way.kind} cannot be applied`);
      expect((await solve(cured, 'propelled-down')).failing, way.kind).toEqual([]);
    }
  });
});
