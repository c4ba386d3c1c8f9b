import { describe, expect, it } from 'vitest';
import type { Scene } from '../../../src/scene/index.ts';
import { readAt, variantScene } from '../../../src/scene/index.ts';
import { createInProcessHost } from '../../../src/sim/index.ts';
import { createInProcessBestHost } from '../../../src/sim/study/bestHost.ts';
import { createProbePool } from '../../../src/sim/study/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { createStudies } from '../../../src/state/study/index.ts';
import { sampleScene } from '../../scene/sample.ts';

const grade = 'tracks/line/profile/3/heightMm';
const mass = 'stock/coach/massG';

async function opened() {
  const session = createSession(createInProcessHost());
  await session.actions.openScene(sampleScene());
  const studies = createStudies(
    session,
    createProbePool([createInProcessHost(), createInProcessHost()]),
    createInProcessBestHost(),
  );
  const scene = (): Scene => {
    const now = session.session.getState().scene;
    if (now === null) throw new Error('No scene is open');
    return now;
  };
  return { session, ...studies, scene };
}

describe('variants', () => {
  it('are added as differences, compared in the trial on show, and undone like any edit', async () => {
    const { session, study, actions, scene } = await opened();
    expect(await actions.addVariant('Steeper', [{ at: grade, to: 300 }])).toBe(true);
    expect(scene().variants).toEqual([{ id: 'steeper', name: 'Steeper', changes: [{ at: grade, to: 300 }] }]);
    expect(await actions.addVariant('Steeper', [{ at: grade, to: 200 }])).toBe(true);
    expect(scene().variants?.[1].id).toBe('steeper-2');
    await actions.compare();
    const rows = study.getState().rows;
    expect(rows.map(({ name }) => name)).toEqual(['As it is', 'Steeper', 'Steeper']);
    const rises = rows.map(({ compared }) => compared?.tracks.get('line')?.rise ?? 0);
    expect(rises[1]).toBeGreaterThan(rises[2]);
    expect(rises[2]).toBeGreaterThan(rises[0]);
    expect(study.getState().comparing).toBeNull();
    await session.actions.undo();
    expect(scene().variants).toHaveLength(1);
    // The railway is the same: what it came to is still known.
    expect(study.getState().rows.map(({ compared }) => compared?.name)).toEqual(['As it is', 'Steeper']);
  });

  it('can become the railway, which then is a variant itself', async () => {
    const { session, actions, scene } = await opened();
    await actions.addVariant('Heavy', [{ at: mass, to: 200 }]);
    await actions.addVariant('Steep', [{ at: grade, to: 240 }]);
    const heavy = variantScene(scene(), 'heavy');
    expect(await actions.adoptVariant('steep')).toBe(true);
    expect(readAt(scene(), grade)).toBe(240);
    expect(scene().variants?.map(({ id }) => id)).toEqual(['heavy', 'as-it-was-before']);
    // The other variant still means what it meant, and the old railway can be had back.
    const heavyNow = variantScene(scene(), 'heavy');
    expect(heavyNow.ok && { ...heavyNow.scene, variants: [] }).toEqual(heavy.ok && { ...heavy.scene, variants: [] });
    expect(await actions.adoptVariant('as-it-was-before')).toBe(true);
    expect(readAt(scene(), grade)).toBe(80);
    await session.actions.undo();
    expect(readAt(scene(), grade)).toBe(240);
  });

  it('that go leave their children what they were', async () => {
    const { session, actions, scene } = await opened();
    await actions.addVariant('Heavy', [{ at: mass, to: 200 }]);
    await session.actions.change('a child', (now) => ({
      ...now,
      variants: [
        ...(now.variants ?? []),
        { id: 'both', name: 'Both', from: 'heavy', changes: [{ at: grade, to: 200 }] },
      ],
    }));
    await actions.dropVariant('heavy');
    expect(scene().variants?.map(({ id }) => id)).toEqual(['both']);
    const both = variantScene(scene(), 'both');
    expect(both.ok && readAt(both.scene, mass)).toBe(200);
    expect(both.ok && readAt(both.scene, grade)).toBe(200);
    expect(await actions.renameVariant('both', 'Heavy and steep')).toBe(true);
    expect(scene().variants?.[0].name).toBe('Heavy and steep');
  });

  it('that lead nowhere are told and change nothing', async () => {
    const { session, actions, scene } = await opened();
    const before = scene();
    expect(await actions.addVariant('Lost', [{ at: 'tracks/other/start/xMm', to: 1 }])).toBe(false);
    expect(scene()).toBe(before);
    expect(session.session.getState().problem?.title).toContain('cannot be made');
  });
});

describe('sweeps', () => {
  it('show every point as it comes, then the edge, and a value can be kept', async () => {
    const { study, actions, scene } = await opened();
    actions.setGauge('stall');
    const seen: number[] = [];
    study.subscribe(({ sweep }) => seen.push(sweep?.points.length ?? 0));
    // 80 mm over 4 m is 2 %; 2 m over 4 m is more than any adhesion holds.
    await actions.sweep({ at: grade, from: 80, to: 2000, points: 4, edgeWithin: 60 });
    const { sweep } = study.getState();
    expect(new Set(seen).size).toBeGreaterThan(4);
    expect(sweep?.progress).toBe(1);
    expect(sweep?.line?.whole).toBe(true);
    expect(sweep?.line?.edges).toHaveLength(1);
    const [edge] = sweep?.line?.edges ?? [];
    expect(edge.fails - edge.passes).toBeLessThanOrEqual(60);
    expect(await actions.keepValue([{ at: grade, to: edge.passes }])).toBe(true);
    expect(readAt(scene(), grade)).toBe(edge.passes);
    expect(study.getState().sweep).toBeNull();
  });

  it('keep what is done when stopped', async () => {
    const { study, actions } = await opened();
    const done = actions.sweep({ at: grade, from: 80, to: 2000, points: 9, edgeWithin: 1 });
    await new Promise<void>((resolve) => {
      const gone = study.subscribe(({ sweep }) => {
        if ((sweep?.points.length ?? 0) < 3) return;
        gone();
        resolve();
      });
    });
    actions.stop();
    await done;
    const { sweep } = study.getState();
    expect(sweep?.line?.whole).toBe(false);
    expect(sweep?.line?.points.length).toBeGreaterThanOrEqual(3);
    expect(study.getState().problem).toBeNull();
  });
});
