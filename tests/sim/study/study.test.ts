import { describe, expect, it } from 'vitest';
import { defaultForceModel } from '../../../src/core/dynamics/index.ts';
import type { Scene } from '../../../src/scene/index.ts';
import { compileScene, createInProcessHost } from '../../../src/sim/index.ts';
import {
  affectedTrials,
  chanceOf,
  closestCall,
  compareScenes,
  createProbePool,
  mapScene,
  type Probe,
  passesBy,
  probeScene,
  routeMeasure,
  sweepScene,
  vary,
} from '../../../src/sim/study/index.ts';
import { sample, sampleScene, sceneOf } from '../../scene/sample.ts';

const all = { trialIds: ['up'], gauge: 'all', exactness: 'steady' } as const;

/** A straight ramp between two level stretches, with an engine that all its weight drives and wagons that only roll. */
function ramp(gradePercent: number): Scene {
  const [engine, coach] = sample.stock;
  return sceneOf({
    ...sample,
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [{ kind: 'straight', id: 'all', lengthMm: 9000 }],
        profile: [
          { atMm: 0, heightMm: 0 },
          { atMm: 2500, heightMm: 0, verticalCurveLengthMm: 400 },
          { at: { endOf: 'track' }, gradePercent },
        ],
      },
    ],
    stock: [
      {
        ...engine,
        rollingPercent: 0,
        rollingPercentPerMPerS: 0,
        drive: { drivenMassG: 300, adhesion: 0.2, stallForceN: 5 },
      },
      { ...coach, rollingPercent: 1.5, rollingPercentPerMPerS: 0 },
    ],
    trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'engine' }, { stock: 'coach', count: 4 }] }],
    trials: [{ ...sample.trials[0], startMm: 2200, finishMm: 8900, orders: [{ atS: 0, setting: 1 }] }],
  });
}

describe('vary', () => {
  it('lengthens an easement out of both neighbours: the line beyond keeps heading and length', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [
        {
          ...sample.tracks[0],
          alignment: [
            { kind: 'straight', id: 'lead', lengthMm: 2000 },
            { kind: 'transition', id: 'ease', lengthMm: 200 },
            { kind: 'arc', id: 'bend', radiusMm: 800, turn: 'left', angleDeg: 90 },
            { kind: 'straight', id: 'tail', lengthMm: 3000 },
          ],
        },
      ],
    });
    const made = vary(scene, [{ at: 'tracks/line/alignment/ease/lengthMm', to: 450 }]);
    if (!made.ok) throw new Error(made.reason);
    const [before, after] = [scene, made.scene].map((one) => compileScene(one).tracks.get('line')!);
    expect(after.length).toBeCloseTo(before.length, 9);
    const turned = (track: typeof before) =>
      track.spec.elements.reduce((sum, e) => sum + (e.length * (e.startCurvature + e.endCurvature)) / 2, 0);
    expect(turned(after)).toBeCloseTo(turned(before), 9);
    expect(vary(scene, [{ at: 'tracks/line/alignment/ease/lengthMm', to: 6000 }])).toMatchObject({ ok: false });
  });

  it('answers with a reason where the file would be refused or leads nowhere', () => {
    expect(vary(sampleScene(), [{ at: 'stock/coach/massG', to: -1 }])).toMatchObject({ ok: false });
    expect(vary(sampleScene(), [{ at: 'stock/waggon/massG', to: 100 }])).toMatchObject({ ok: false });
  });
});

describe('probeScene', () => {
  it('measures trials as they run, and the same through a pool of hosts', async () => {
    const request = { scene: sampleScene(), settings: [], trialIds: ['up'], exactness: 'run' } as const;
    const probe = await probeScene(request);
    if (!probe.ok) throw new Error(probe.reason);
    const [trial] = probe.trials;
    expect(trial.outcome).toBe('arrived');
    expect(trial.greatestDraft).toBeGreaterThan(0);
    // The margins come in order, and the closest call is the first of them.
    const shares = trial.risks.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(closestCall(probe, 'all')?.share).toBe(shares[0]);
    const pool = createProbePool([createInProcessHost(), createInProcessHost()]);
    expect(pool.width).toBe(2);
    expect(await Promise.all([pool.probe(request), pool.probe(request), pool.probe(request)])).toEqual([
      probe,
      probe,
      probe,
    ]);
    pool.dispose();
    await expect(pool.probe(request)).rejects.toThrow();
  });

  it('takes a railway that cannot be laid for an answer, and a cancel for none', async () => {
    const request = { scene: sampleScene(), trialIds: ['up'], exactness: 'run' } as const;
    const missing = await probeScene({ ...request, settings: [{ at: 'stock/coach/lengthM', to: 1 }] });
    expect(missing.ok).toBe(false);
    expect(passesBy('all')(missing)).toBe(false);
    const signal = AbortSignal.abort();
    await expect(probeScene({ ...request, settings: [] }, { signal })).rejects.toThrow(/cancel/i);
  });
});

describe('sweepScene', () => {
  it('finds the steepest grade that adhesion allows, as worked out by hand', async () => {
    // All of the engine's weight drives, so the grip is used up where  mu·W·cos = (W + w)·sin + 0.015·w·cos,  W = 0.3 kg, w = 4 x 0.12 kg:
    // tan = (0.2·0.3 - 0.015·0.48)/(0.78) = 0.067692. The engine's drawbar pull takes no weight off, as every wheel drives.
    expect(defaultForceModel.gravity).toBe(9.80665);
    const line = await sweepScene(
      ramp(2),
      { at: 'tracks/line/profile/3/gradePercent', from: 2, to: 10, points: 5, edgeWithin: 0.02 },
      { ...all, gauge: 'stall' },
      probeScene,
    );
    expect(line.edges).toHaveLength(1);
    const [{ passes, fails }] = line.edges;
    expect(passes).toBeLessThan(6.7692);
    expect(fails).toBeGreaterThan(6.7692);
    expect(fails - passes).toBeLessThanOrEqual(0.02);
  });

  it('sweeps a number of vehicles by whole vehicles', async () => {
    // By the same balance at 5 %: 0.2·0.3 - 0.05·0.3 = n·0.12·(0.05 + 0.015) -> n = 5.77.
    const line = await sweepScene(
      ramp(5),
      { at: 'trains/train/vehicles/2/count', from: 2, to: 9, points: 3, edgeWithin: 0.1, whole: true },
      { ...all, gauge: 'stall' },
      probeScene,
    );
    expect(line.points.map(({ at }) => at)).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
    expect(line.edges).toEqual([{ passes: 5, fails: 6 }]);
  });
});

describe('mapScene', () => {
  it('outlines the same balance in two numbers', async () => {
    const area = await mapScene(
      ramp(3),
      { at: 'stock/coach/massG', from: 80, to: 200, points: 3 },
      { at: 'tracks/line/profile/3/gradePercent', from: 2, to: 10, points: 3 },
      4,
      { ...all, gauge: 'stall' },
      probeScene,
    );
    expect(area.outline.length).toBeGreaterThan(1);
    for (const [massG, gradePercent] of area.outline.flat()) {
      const w = (4 * massG) / 1000;
      const edge = (100 * (0.2 * 0.3 - 0.015 * w)) / (0.3 + w);
      // A cell of 4 % by 60 g, halved four times and cut in the middle: 1/32 of it either way; 60 g are worth 2 % at most.
      expect(Math.abs(gradePercent - edge)).toBeLessThan(4 / 32 + 2 / 32);
    }
  });
});

describe('chanceOf', () => {
  it('gives the share of what passes and says which number decides', async () => {
    // With the grade even between 4 and 8 % and the limit at 6.77 %: 69 % pass. The engine's own rolling decides nothing.
    const chance = await chanceOf(
      ramp(3),
      [
        { at: 'tracks/line/profile/3/gradePercent', low: 4, high: 8 },
        { at: 'scale/gaugeMm', low: 16.5, high: 16.6 },
      ],
      24,
      1,
      { ...all, gauge: 'stall' },
      probeScene,
    );
    // A Latin hypercube of 24 hits every sixth of a per cent once: the share is right to a draw.
    expect(Math.abs((chance.passing?.share ?? 0) - 0.6923)).toBeLessThan(1.5 / 24);
    expect(chance.influence[0]).toBeLessThan(-0.95);
    expect(Math.abs(chance.influence[1])).toBeLessThan(0.6);
    expect(chance.whole).toBe(true);
  });
});

describe('routeMeasure', () => {
  it('measures a helix as its closed forms do', () => {
    const scene = sceneOf({
      ...sample,
      tracks: [
        {
          id: 'line',
          name: 'Line',
          start: { xMm: 0, yMm: 0, headingDeg: 0 },
          alignment: [{ kind: 'helix', id: 'h', radiusMm: 500, turn: 'left', turns: 3 }],
          profile: [
            { atMm: 0, heightMm: 0 },
            { at: { endOf: 'track' }, heightMm: 240 },
          ],
        },
      ],
      trials: [{ ...sample.trials[0], startMm: 900, finishMm: 9000 }],
    });
    const measure = routeMeasure(compileScene(scene).tracks.get('line')!);
    expect(measure.length).toBeCloseTo(3 * 2 * Math.PI * 0.5, 9);
    expect(measure.rise).toBeCloseTo(0.24, 9);
    expect(measure.steepest).toBeCloseTo(0.08 / (2 * Math.PI * 0.5), 9);
    expect(measure.tightest).toBeCloseTo(0.5, 9);
    // Places a centimetre apart miss the very edge of the circle by at most 0.005²/(2·0.5).
    expect(Math.abs(measure.across - 1)).toBeLessThan(2 * 0.005 ** 2);
    expect(Math.abs(measure.along - 1)).toBeLessThan(2 * 0.005 ** 2);
    expect(measure.sharpest).toBeGreaterThan(1e6);
  });
});

describe('compareScenes', () => {
  it('sets railways side by side, one that cannot be run among them', async () => {
    const flat = { name: 'gentle', scene: ramp(2) };
    const steep = { name: 'steep', scene: ramp(9) };
    const other = { name: 'other', scene: { ...ramp(2), trials: [{ ...ramp(2).trials[0], id: 'down' }] } };
    const rows = await compareScenes([flat, steep, other], ['up'], 'steady', probeScene);
    expect(rows.map(({ probe }) => passesBy('stall')(probe))).toEqual([true, false, false]);
    expect(rows[1].tracks.get('line')?.steepest).toBeCloseTo(0.09, 6);
    expect((rows[2].probe as Extract<Probe, { ok: false }>).reason).toContain('no trial "up"');
  });
});

describe('affectedTrials', () => {
  it('are those that run on or with what an address belongs to', () => {
    const scene = sceneOf({
      ...sample,
      trials: [sample.trials[0], { ...sample.trials[0], id: 'again' }],
    });
    expect(affectedTrials(scene, 'tracks/line/start/xMm')).toEqual(['up', 'again']);
    expect(affectedTrials(scene, 'trials/again/timeLimitS')).toEqual(['again']);
    expect(affectedTrials(scene, 'stock/coach/massG')).toEqual(['up', 'again']);
    expect(affectedTrials(scene, 'stock/none/massG')).toEqual([]);
    expect(affectedTrials(scene, 'deck/thicknessMm')).toEqual(['up', 'again']);
  });
});
