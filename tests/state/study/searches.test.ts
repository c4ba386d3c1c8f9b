import { describe, expect, it } from 'vitest';
import { readAt, variantScene } from '../../../src/scene/index.ts';
import { createInProcessHost } from '../../../src/sim/index.ts';
import { createInProcessBestHost } from '../../../src/sim/study/bestHost.ts';
import { createProbePool, passesBy } from '../../../src/sim/study/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { createStudies, roomKept } from '../../../src/state/study/index.ts';
import { sampleScene } from '../../scene/sample.ts';

const grade = 'tracks/line/profile/3/heightMm';
const mass = 'stock/coach/massG';
const radius = 'tracks/line/alignment/first/radiusMm';

/** Nothing held, heights as they are. */
const plain = { probes: 10, endKept: false, heights: null, within: [], leastRadiusMm: null, headroomMm: null } as const;

async function opened() {
  const session = createSession(createInProcessHost());
  await session.actions.openScene(sampleScene());
  return {
    session,
    ...createStudies(session, createProbePool([createInProcessHost()]), createInProcessBestHost()),
  };
}

describe('a map of two numbers', () => {
  const ask = {
    across: { at: grade, from: 80, to: 2000, points: 3 },
    up: { at: mass, from: 60, to: 160, points: 2 },
    refine: 2,
  };

  it('outlines what passes between places that pass and places that fail', async () => {
    const { study, actions } = await opened();
    actions.setGauge('stall');
    await actions.map(ask);
    const { map } = study.getState();
    const area = map?.area;
    expect(area?.whole).toBe(true);
    expect(map?.progress).toBe(1);
    // 2 % is climbed with either mass; 2 m over 4 m is more than any adhesion holds.
    const good = area?.outcomes.map((probe) => probe !== null && passesBy('stall')(probe));
    expect(good?.filter((_, k) => k % 3 === 0)).toEqual([true, true]);
    expect(good?.filter((_, k) => k % 3 === 2)).toEqual([false, false]);
    expect(area?.outline.length).toBeGreaterThan(0);
    expect(area?.probes).toBe(map?.points.length);
  });

  it('keeps what is done when it is stopped', async () => {
    const { study, actions } = await opened();
    const done = actions.map({ ...ask, across: { ...ask.across, points: 8 } });
    await new Promise<void>((resolve) => {
      const gone = study.subscribe(({ map }) => {
        if ((map?.points.length ?? 0) < 2) return;
        gone();
        resolve();
      });
    });
    actions.stop();
    await done;
    const { map, problem } = study.getState();
    expect(map?.area?.whole).toBe(false);
    expect(map?.area?.probes).toBe(map?.points.length);
    expect(map?.points.length).toBeGreaterThanOrEqual(2);
    expect(problem).toBeNull();
  });
});

describe('chances', () => {
  it('are told by trial with their interval, and the same when asked again', async () => {
    const { study, actions } = await opened();
    const ask = { heads: true, supportsMm: 0.5, massPercent: 5, draws: 12 };
    await actions.chance(ask);
    const first = study.getState().chance;
    expect(first?.drawn).toBe(12);
    expect(first?.progress).toBeNull();
    expect(first?.trials.map(({ trialId }) => trialId)).toEqual(['up']);
    const passing = first?.trials[0].passing;
    expect(Number.isInteger(Math.round((passing?.share ?? 0) * 12 * 1e9) / 1e9)).toBe(true);
    expect(passing?.low).toBeLessThanOrEqual(passing?.share ?? -1);
    expect(passing?.high).toBeGreaterThanOrEqual(passing?.share ?? 2);
    await actions.chance(ask);
    expect(study.getState().chance?.trials).toEqual(first?.trials);
  });

  it('need something that may be off', async () => {
    const { study, actions } = await opened();
    await actions.chance({ heads: false, supportsMm: 0, massPercent: 0, draws: 10 });
    expect(study.getState().problem).toMatch(/Nothing is said to be off/);
  });
});

describe('the steepest grade', () => {
  it('is told for the weakest engine, and less in the tightest curve than on the straight', async () => {
    const { study, actions } = await opened();
    await actions.askSteepest(2);
    const { grade: found, problem } = study.getState();
    expect(problem).toBeNull();
    expect(found).toMatchObject({ engine: 'Engine', kind: 'Coach', count: 2, progress: null });
    expect(found?.curve?.radiusMm).toBe(1000);
    const [straight, curve] = [found?.straight?.passesPercent ?? 0, found?.curve?.grade.passesPercent ?? 99];
    expect(straight).toBeGreaterThan(0);
    expect(curve).toBeLessThan(straight);
    // The curve behind the number falls from level track on, and crosses nothing to spare beside it: even running against the full runs.
    const points = found?.points ?? [];
    const spare = points.map(({ probe }) =>
      probe.ok ? (probe.trials[0].risks.find(({ risk }) => risk === 'stall')?.margin ?? Number.NaN) : Number.NaN,
    );
    const step = (found?.toPercent ?? 0) / (points.length - 1);
    expect(points.map(({ at }) => at / step)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(spare.every((margin, k) => k === 0 || margin < spare[k - 1])).toBe(true);
    const crossing = spare.findIndex((margin) => margin < 0);
    expect(Math.abs((crossing - 0.5) * step - straight)).toBeLessThan(step);
  });
});

describe('the best', () => {
  it('heights are proven, less steep than a hump, and can be kept as a variant', async () => {
    const { session, study, actions } = await opened();
    // A hump in the middle: most of the climb in a sixth of the way.
    await session.actions.change('a hump', (scene) => ({
      ...scene,
      tracks: scene.tracks.map((track) => ({
        ...track,
        profile: track.profile.toSpliced(2, 0, { atMm: 3000, heightMm: 50, verticalCurveLengthMm: 300 }),
      })),
    }));
    await actions.bestProfile({ verticalRadiusMm: 5000, steepestPercent: 6 });
    const { best } = study.getState();
    if (best?.found?.kind !== 'best') throw new Error('No heights were found.');
    expect(best.found.proven).toBe(true);
    expect(best.found.rounded.ruling).toBeLessThan(0.8 * best.present);
    // The floor is a bound to the solver's own tolerance.
    expect(best.found.floor).toBeLessThanOrEqual(best.found.rounded.ruling + 1e-6);
    expect(await actions.keepBest('Best heights')).toBe(true);
    const { scene } = session.session.getState();
    const kept = scene && variantScene(scene, 'best-heights');
    expect(kept?.ok && kept.scene.tracks[0].profile).not.toEqual(scene?.tracks[0].profile);
    expect(kept?.ok && readAt(kept.scene, mass)).toBe(readAt(scene, mass));
  });

  it('routes are each unbeaten, and can be kept as a variant', async () => {
    const { session, study, actions } = await opened();
    await actions.bestRoute({ ...plain, numbers: [{ at: radius, from: 800, to: 1200, step: 200 }] });
    const { route, problem } = study.getState();
    expect(problem).toBeNull();
    expect(route?.answer?.certainty).toBe('every-setting');
    expect(route?.routes.length).toBeGreaterThan(0);
    const rows = (route?.routes ?? []).map(({ ruling, area, margin }) => [-ruling, -area, margin ?? 0]);
    for (const one of rows) {
      expect(rows.some((other) => other.every((value, k) => value > one[k] + 1e-3))).toBe(false);
    }
    expect(await actions.keepRoute(route?.routes[0].values ?? [], 'Best')).toBe(true);
    const { scene } = session.session.getState();
    const kept = scene && variantScene(scene, 'best');
    expect(kept?.ok && readAt(kept.scene, radius)).toBe(route?.routes[0].values[0]);
  });

  it('routes that were beaten can be kept too, laid again; a stopped search keeps what it has', async () => {
    const { session, study, actions } = await opened();
    await actions.bestRoute({ ...plain, numbers: [{ at: radius, from: 800, to: 1200, step: 100 }] });
    const { route } = study.getState();
    const taken = route?.routes.map(({ values }) => values[0]) ?? [];
    const beaten = route?.answer?.looked.map(({ values }) => values[0]).filter((value) => !taken.includes(value)) ?? [];
    expect(taken.length + beaten.length).toBe(5);
    for (const value of beaten) {
      expect(await actions.keepRoute([value], `Radius ${value}`)).toBe(true);
      const variant = session.session.getState().scene?.variants?.at(-1);
      expect(variant?.changes).toContainEqual({ at: radius, to: value });
    }
    const running = actions.bestRoute({
      ...plain,
      numbers: [{ at: radius, from: 800, to: 1200, step: 5 }],
      probes: 81,
    });
    await new Promise<void>((resolve) => {
      const gone = study.subscribe(({ route: now }) => {
        if ((now?.routes.length ?? 0) < 1) return;
        gone();
        resolve();
      });
    });
    actions.stop();
    expect(study.getState().route?.stopping).toBe(true);
    await running;
    const after = study.getState().route;
    expect(after?.answer?.whole).toBe(false);
    expect(after?.routes.length).toBeGreaterThan(0);
    expect(after?.stopping).toBe(false);
  });

  it('routes keep to the boards and clear of what stands in the room, where that is asked', async () => {
    const { session, study, actions } = await opened();
    const boards = [{ xMm: -100, yMm: -100, lengthMm: 7000, widthMm: 2000 }];
    const outline = [
      { xMm: 500, yMm: -20 },
      { xMm: 600, yMm: -20 },
      { xMm: 600, yMm: 80 },
    ];
    await session.actions.change('a room', (scene) => ({
      ...scene,
      room: { datumAboveFloorMm: 900, baseboards: boards, obstacles: [{ name: 'Boiler', outline }] },
    }));
    const now = session.session.getState().scene;
    expect(now && roomKept(now, 'up')).toEqual([
      { kind: 'obstacle', kept: false },
      { kind: 'boards', kept: true },
    ]);
    const numbers = [{ at: radius, from: 800, to: 1200, step: 200 }];
    await actions.bestRoute({ ...plain, numbers, within: ['obstacle'] });
    const { answer } = study.getState().route ?? {};
    expect(answer?.routes).toEqual([]);
    expect(answer?.inTheWay).toEqual([{ miss: 'obstacle', name: 'Boiler', times: 3 }]);
    expect(answer?.present?.conflicts[0]?.name).toBe('Boiler');
    await actions.bestRoute({ ...plain, numbers, within: ['boards'] });
    expect(study.getState().route?.answer?.routes.length).toBeGreaterThan(0);
  });

  it('routes that are to end where the line ends now say what they lack where they cannot', async () => {
    const { study, actions } = await opened();
    // Two bends, left and right, of as much: both straights lie alike.
    await actions.bestRoute({ ...plain, numbers: [{ at: radius, from: 800, to: 1200, step: 200 }], endKept: true });
    expect(study.getState().problem).toMatch(/two straights that lie across each other/);
    expect(study.getState().route).toBeNull();
  });
});
