import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { standingOf } from '../../../src/core/findings/index.ts';
import { parseScene, type Scene } from '../../../src/scene/index.ts';
import { compileScene, compileTrial, createInProcessHost, runTrial } from '../../../src/sim/index.ts';
import { type ClubPage, gatherPage } from '../../../src/sim/page/index.ts';

const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

function sceneAt(name: string): Scene {
  const parsed = parseScene(readFileSync(new URL(`../../../scenes/${name}`, import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.scene;
}

/** The double helix with two of its trains. */
const fold = async (): Promise<ClubPage> => {
  const scene = sceneAt('02-marlow-fold.json');
  const trials = scene.trials.filter(({ id }) => ['six-up', 'three-up', 'three-down'].includes(id));
  const kept = { ...scene, trials, opensWith: 'six-up', trains: scene.trains.filter(({ id }) => id !== 'seven') };
  return gatherPage(kept, { show, loads: false }, createInProcessHost());
};

describe('what a page to pass on says of a railway', () => {
  const foldPage = fold();

  it('has every train both ways, pulled and propelled, its own trials as they come out alone', async () => {
    const scene = sceneAt('01-wren-gill.json');
    const page = await gatherPage(scene, { show, loads: false }, createInProcessHost());
    const ways = page.trials.map(
      ({ propelled, climbs }) => `${propelled ? 'propelled' : 'pulled'} ${climbs ? 'up' : 'down'}`,
    );
    expect([...ways].sort()).toEqual(['propelled down', 'propelled up', 'pulled down', 'pulled up']);
    expect(page.trials.filter(({ own }) => own)).toHaveLength(scene.trials.length);
    const compiled = compileScene(scene);
    for (const { id, name } of scene.trials) {
      const { findings } = await runTrial(compileTrial(compiled, id));
      const told = page.trials.find((trial) => trial.name === name);
      expect(told?.standing).toBe(standingOf(findings[0]));
      // What fails, may fail or comes near has a number on the drawings.
      const grave = findings.filter((one) => standingOf(one) !== 'passes');
      expect(told?.marks.length).toBeGreaterThan(0);
      expect(told?.marks.length).toBeLessThanOrEqual(grave.length);
    }
    expect(page.visitors.map(({ vehicle }) => vehicle)).toEqual(
      expect.arrayContaining(['Covered van', 'Long bogie van']),
    );
  });

  // Worked by hand from what the scene says: radius 505 mm, four turns in 317.5 mm of rise.
  it('works out the card of a helix as a person does with a pocket calculator', async () => {
    const page = await foldPage;
    const [outer] = page.helices;
    const around = 2 * Math.PI * 0.505;
    expect(outer.radius).toBeCloseTo(0.505, 9);
    expect(outer.turns).toBeCloseTo(4, 6);
    expect(outer.perTurn).toBeCloseTo(0.3175 / 4, 4);
    expect(outer.grade).toBeCloseTo(0.3175 / (4 * around), 4);
    // A turn over itself: what a turn rises, less deck, underlay and track of the scene.
    const { thicknessMm, underlayMm, trackMm } = page.scene.deck;
    const deck = (thicknessMm + underlayMm + trackMm) / 1000;
    // Over the lowest turn the vertical curve at the foot makes it a little less.
    expect(outer.clear?.height).toBeGreaterThan(outer.perTurn - deck - 0.012);
    expect(outer.clear?.height).toBeLessThanOrEqual(outer.perTurn - deck + 1e-4);
  });

  it('numbers what is wrong with the pull once a track, however many trains it stops', async () => {
    const page = await foldPage;
    const stalls = page.marks.filter(({ risk }) => risk === 'stall');
    expect(stalls.map(({ trackId }) => trackId).sort()).toEqual(['inner', 'outer']);
    expect(Math.max(...stalls.map(({ trials }) => trials.length))).toBeGreaterThan(2);
    expect(page.marks.map(({ number }) => number)).toEqual(page.marks.map((_, i) => i + 1));
  });

  it('rates an engine lower the dirtier the rails are', async () => {
    const scene = sceneAt('01-wren-gill.json');
    const short = {
      id: 'pick-up-goods',
      name: 'Short',
      vehicles: [{ stock: 'bogie-van' }, { stock: 'tank-engine', turned: true }],
    };
    const page = await gatherPage({ ...scene, trains: [short] }, { show, loads: true }, createInProcessHost());
    expect(page.whole).toBe(true);
    const rows = page.tonnage?.rows ?? [];
    expect(rows.length).toBeGreaterThan(0);
    for (const { loads } of rows) {
      expect(loads.clean.vehicles).toBeGreaterThan(loads.average.vehicles);
      expect(loads.average.vehicles).toBeGreaterThan(loads.dirty.vehicles);
    }
  });

  it('ends when it is called off', async () => {
    const calling = new AbortController();
    const work = gatherPage(sceneAt('01-wren-gill.json'), { show, loads: true }, createInProcessHost(), {
      signal: calling.signal,
      onProgress: (done) => done > 0.1 && calling.abort(),
    });
    await expect(work).rejects.toMatchObject({ name: 'AbortError' });
  });
});
