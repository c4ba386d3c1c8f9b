import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { greatestWhole } from '../../../src/core/study/index.ts';
import { parseScene, type Scene } from '../../../src/scene/index.ts';
import { loadedScene, loadTable } from '../../../src/sim/study/loads.ts';
import { probeScene } from '../../../src/sim/study/probeScene.ts';
import { steepestGrade } from '../../../src/sim/study/steepestGrade.ts';
import { sample, sceneOf } from '../../scene/sample.ts';

/** A long straight at one grade; all weight of both engines drives, and coaches roll at 1.5 %. */
function bank(gradePercent: number, slidingAdhesion = 0.2, rollingPercent = 1.5): Scene {
  const [engine, coach] = sample.stock;
  const free = { rollingPercent: 0, rollingPercentPerMPerS: 0 };
  return sceneOf({
    ...sample,
    tracks: [
      {
        id: 'line',
        name: 'Line',
        start: { xMm: 0, yMm: 0, headingDeg: 0 },
        alignment: [{ kind: 'straight', lengthMm: 9000 }],
        profile: [
          { atMm: 0, heightMm: 0 },
          { at: { endOf: 'track' }, gradePercent },
        ],
      },
    ],
    stock: [
      { ...engine, ...free, drive: { drivenMassG: 300, adhesion: 0.2, slidingAdhesion, stallForceN: 5 } },
      {
        ...engine,
        ...free,
        id: 'pannier',
        massG: 200,
        drive: { drivenMassG: 200, adhesion: 0.2, slidingAdhesion, stallForceN: 5 },
      },
      { ...coach, rollingPercent, rollingPercentPerMPerS: 0 },
    ],
    trials: [
      {
        ...sample.trials[0],
        startMm: 900,
        finishMm: 8900,
        orders: [{ atS: 0, setting: 1 }],
        forces: { flangeFriction: 0 },
      },
    ],
  });
}

const spec = { trialIds: ['up'], engines: ['engine', 'pannier'], kinds: ['coach'], most: 20, gauge: 'stall' } as const;

describe('greatestWhole', () => {
  const passing = (limit: number) => (count: number) => Promise.resolve(count <= limit);

  it('finds the last that passes in full, wherever the quick look puts it', async () => {
    for (const limit of [-1, 0, 1, 6, 7, 19, 20]) {
      for (const off of [-3, -1, 0, 1, 3]) {
        const found = await greatestWhole(20, passing(limit + off), passing(limit));
        expect(found.passes, `${limit} ${off}`).toBe(limit);
        expect(found.fails).toBe(limit === 20 ? null : limit + 1);
        expect(found.whole).toBe(true);
      }
    }
  });

  it('halves: six looks and two trials of 33 numbers', async () => {
    const { looks } = await greatestWhole(32, passing(11), passing(11));
    expect(looks.quick).toBeLessThanOrEqual(6);
    expect(looks.full).toBe(2);
  });

  it('says when it was stopped', async () => {
    const found = await greatestWhole(20, passing(5), passing(5), { stopped: () => true });
    expect(found).toMatchObject({ passes: -1, fails: null, whole: false });
  });
});

describe('loadTable', () => {
  it('says of each engine what its grip hauls up 4 %, as worked out by hand', async () => {
    // mu·W·cos - W·sin = n·0.12·(sin + 0.015·cos): (0.2 - 0.04)·0.3/(0.12·0.055) = 7.27, and 4.85 for 200 g.
    const { loads, whole } = await loadTable(bank(4), spec, probeScene);
    expect(whole).toBe(true);
    expect(loads.map(({ engine, passes, fails }) => [engine, passes, fails])).toEqual([
      ['engine', 7, 8],
      ['pannier', 4, 5],
    ]);
    // Wheels that spin at the start and then slide at 0.145: (0.145 - 0.04)·0.3/(0.12·0.055) = 4.77, and 3.18. The quick look alone would not have said so.
    const slipping = await loadTable(bank(4, 0.145), spec, probeScene);
    expect(slipping.loads.map(({ passes, fails }) => [passes, fails])).toEqual([
      [4, 5],
      [3, 4],
    ]);
    expect(loads[0].mass).toBeCloseTo(7 * 0.12, 9);
    expect(loads[0].failing).toMatchObject({ ok: true });
  }, 120_000);

  it('says when a train does not fit before it is too heavy', async () => {
    const { loads } = await loadTable(bank(0, 0.2, 0.1), { ...spec, engines: ['engine'], most: 60 }, probeScene);
    // 9 m of track and coaches of 258 mm over buffers: 34 of them are longer than the track.
    expect(loads[0].passes).toBeLessThan(34);
    expect(loads[0].failing).toMatchObject({ ok: false });
  }, 120_000);

  it('refuses what is not there', async () => {
    await expect(loadTable(bank(4), { ...spec, engines: ['coach'] }, probeScene)).rejects.toThrow(/no drive/);
    await expect(loadTable(bank(4), { ...spec, kinds: ['van'] }, probeScene)).rejects.toThrow(/van/);
  });
});

describe('steepestGrade', () => {
  it('is where grip is used up, straight and in a curve', async () => {
    // tan = (mu·W - 0.015·w)/(W + w), w = 2 coaches: (0.06 - 0.0036)/0.54 = 10.44 %.
    const straight = await steepestGrade(bank(4), 'up', null, probeScene);
    expect(straight.passesPercent).toBeLessThan(10.45);
    expect(straight.passesPercent).toBeGreaterThan(10.3);
    expect((straight.failsPercent ?? 0) - (straight.passesPercent ?? 0)).toBeCloseTo(0.01, 9);
    const curved = await steepestGrade(bank(4), 'up', 600, probeScene);
    // Nominal curve drag of coaches on bogies of 34 mm, 0.2·(0.72·16.5 + 0.47·34)/600 = 0.93 %, and of the engine's 60 mm 1.34 %. The sum is taken as if
    // level; on 10 % sine and tangent differ by half a hundredth, and grip is found to a hundredth of a per cent: 5 %.
    const less = (0.93 * 0.24 + 1.34 * 0.3) / 0.54;
    expect((straight.passesPercent ?? 0) - (curved.passesPercent ?? 0)).toBeGreaterThan(0.95 * less);
    expect((straight.passesPercent ?? 0) - (curved.passesPercent ?? 0)).toBeLessThan(1.05 * less);
  }, 120_000);
});

describe('an engine with a tender', () => {
  const marlow = parseScene(readFileSync(new URL('../../../scenes/02-marlow-fold.json', import.meta.url), 'utf8'));
  if (!marlow.ok) throw new Error('Marlow Fold is a scene.');
  const { scene } = marlow;

  // By a rope round a drum, worked by hand in tests/external/dynamics: 2.02 coaches with rolling, curve and flanges counted.
  it('takes it along, and two coaches up the double helix but not three', async () => {
    const spec = {
      trialIds: ['three-up'],
      engines: ['ten-wheeler'],
      kinds: ['coach'],
      most: 10,
      gauge: 'stall' as const,
    };
    const { loads } = await loadTable(scene, spec, probeScene);
    expect(loads[0]).toMatchObject({ passes: 2, fails: 3 });
    // Two coaches of 150 g: the tender is the engine's own.
    expect(loads[0].mass).toBeCloseTo(0.3, 12);
  });

  it('stands between it and the coaches at either end of the train', () => {
    const last = {
      ...scene,
      opensWith: 'three-up',
      trains: [
        {
          id: 'three',
          name: 'Turned',
          vehicles: [
            { stock: 'coach', count: 3 },
            { stock: 'tender', turned: true },
            { stock: 'ten-wheeler', turned: true },
          ],
        },
      ],
      trials: scene.trials.filter(({ train }) => train === 'three'),
    };
    const vehiclesOf = (from: Scene) => {
      const loaded = loadedScene(from, 'three-up', 'ten-wheeler', 'coach', 2);
      if (!loaded.ok) throw new Error(loaded.reason);
      return loaded.scene.trains.at(-1)?.vehicles;
    };
    expect(vehiclesOf(scene)).toEqual([{ stock: 'ten-wheeler' }, { stock: 'tender' }, { stock: 'coach', count: 2 }]);
    expect(vehiclesOf(last)).toEqual([
      { stock: 'coach', count: 2 },
      { stock: 'tender', turned: true },
      { stock: 'ten-wheeler', turned: true },
    ]);
    // Taken from a train that has it at the head, it turns about to stand at the end.
    const both = { ...last, trains: [...scene.trains.filter(({ id }) => id === 'six'), ...last.trains] };
    expect(vehiclesOf(both)).toEqual(vehiclesOf(last));
  });
});
