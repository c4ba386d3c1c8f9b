import { beforeAll, describe, expect, it } from 'vitest';
import { unbeaten } from '../../../../src/core/study/index.ts';
import type { Scene } from '../../../../src/scene/index.ts';
import { compileScene } from '../../../../src/sim/index.ts';
import { bestProfile } from '../../../../src/sim/study/bestProfile.ts';
import { closestCall, probeScene, vary } from '../../../../src/sim/study/index.ts';
import { closeTrack, trackEnd } from '../../../../src/sim/study/route/closing.ts';
import { type RouteFound, searchRoute } from '../../../../src/sim/study/route/index.ts';
import { profileTaskOf } from '../../../../src/sim/study/sceneProfile.ts';
import { loadSolver, type Solver } from '../../../../src/sim/survey/solver.ts';
import { byHand, loopQuestion, loopScene, way } from './loop.ts';

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

const tools = () => ({ probe: probeScene, solver });

/** Width of the deck where the scene says none: 70 mm at 16.5 mm gauge (NEM 122). */
const deck = 0.07;

const withRadii = (first: number, second: number): Scene => {
  const varied = vary(loopScene(), [
    { at: `${way}/first/radiusMm`, to: first },
    { at: `${way}/second/radiusMm`, to: second },
  ]);
  if (!varied.ok) throw new Error(varied.reason);
  return varied.scene;
};

describe('closing a track on its end', () => {
  const target = trackEnd(loopScene(), 'line');

  it('takes up in two straights what two radii leave open, as worked out by hand', () => {
    const closed = closeTrack(withRadii(500, 350), 'line', target, [`${way}/up/lengthMm`, `${way}/out/lengthMm`]);
    expect(closed.left).toBeLessThan(1e-9);
    const { between, last } = byHand(0.5, 0.35);
    expect(closed.values[0]).toBeCloseTo(between * 1e3, 5);
    expect(closed.values[1]).toBeCloseTo(last * 1e3, 5);
  });

  it('finds an angle that was turned away', () => {
    const varied = vary(loopScene(), [{ at: `${way}/second/angleDeg`, to: 84 }]);
    if (!varied.ok) throw new Error(varied.reason);
    const solved = ['first/angleDeg', 'up/lengthMm', 'out/lengthMm'].map((one) => `${way}/${one}`);
    const closed = closeTrack(varied.scene, 'line', target, solved);
    expect(closed.left).toBeLessThan(1e-9);
    expect(closed.values[0]).toBeCloseTo(96, 6);
  });

  it('says what is left where its numbers cannot close it', () => {
    // One straight along x cannot take up 200 mm along y: with radii of 500 mm the end lies that much further north.
    const closed = closeTrack(withRadii(500, 500), 'line', target, [`${way}/out/lengthMm`]);
    expect(closed.left).toBeCloseTo(0.2, 9);
  });

  it('will not lay a straight of less than nothing', () => {
    const closed = closeTrack(withRadii(800, 800), 'line', target, [`${way}/up/lengthMm`, `${way}/out/lengthMm`]);
    expect(closed.left).toBeGreaterThan(0.1);
    expect(closed.values[0]).toBeGreaterThan(0);
  });
});

describe('the route of least ruling grade', () => {
  const radii = Array.from({ length: 40 }, (_, k) => 300 + 10 * k);

  it('is the best of all places of the grid by hand, found in an eighth of the looks', async () => {
    const answer = await searchRoute(loopQuestion(), tools());
    const least = Math.min(...radii.flatMap((a) => radii.map((b) => byHand(a / 1e3, b / 1e3).ruling)));
    const [found] = answer.routes;
    expect(found.ruling).toBeCloseTo(least, 8);
    expect(answer.settings).toBe(1600);
    expect(answer.probes).toBeLessThanOrEqual(200);
    expect(answer.certainty).toBe('no-better-neighbour');
    expect(answer.whole).toBe(true);
    expect(answer.present?.ruling).toBeCloseTo(byHand(0.4, 0.4).ruling, 9);
    // What it says it is: laid again, it ends where it has to.
    const end = trackEnd(found.scene, 'line');
    expect(end.x).toBeCloseTo(1 - 0.4, 8);
    expect(end.y).toBeCloseTo(0.5 + 1.4, 8);
  });

  it('stays in the room: the wall at 2355 mm lets the first turn have 520 mm, and the second then wants the same', async () => {
    // 1000 + 800 + 520 + half a deck of 35 = 2355. A wider second turn shortens the line and gains nothing at the tighter one.
    const room = [
      { xMm: 0, yMm: 0 },
      { xMm: 2355, yMm: 0 },
      { xMm: 2355, yMm: 3000 },
      { xMm: 0, yMm: 3000 },
    ];
    const limits = { ...loopQuestion().limits, room: { corners: room, obstacles: [], boards: [] } };
    const answer = await searchRoute(loopQuestion({ limits }), tools());
    expect(answer.routes[0].values).toEqual([520, 520]);
    expect(answer.inTheWay.find(({ miss }) => miss === 'room')?.times).toBeGreaterThan(0);
  });

  it('says what is in the way where nothing keeps the limits', async () => {
    const limits = { ...loopQuestion().limits, radius: 0.7 };
    const answer = await searchRoute(loopQuestion({ limits, probes: 60 }), tools());
    expect(answer.routes).toEqual([]);
    expect(answer.inTheWay[0]).toEqual({ miss: 'radius', name: null, times: answer.probes });
  });

  it('looks at every setting where there are few, and keeps what it has when it is stopped', async () => {
    const numbers = [{ at: `${way}/first/radiusMm`, from: 300, to: 500, step: 50 }];
    const seen: number[] = [];
    const answer = await searchRoute(loopQuestion({ numbers }), tools(), {
      onProgress: (done, most) => seen.push(done / most),
    });
    expect(answer.certainty).toBe('every-setting');
    expect(answer.probes).toBe(5);
    expect(seen).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
    // By hand: beyond the 400 mm of the second turn only the length still gains.
    expect(answer.routes[0].values).toEqual([500]);
    let done = 0;
    const found: RouteFound[][] = [];
    const part = await searchRoute(loopQuestion({ numbers }), tools(), {
      onProgress: () => done++,
      stopped: () => done >= 3,
      onFound: (best) => found.push([...best]),
    });
    expect(part.whole).toBe(false);
    expect(part.certainty).toBe('best-found');
    expect(part.routes[0].values).toEqual([400]);
    expect(found.at(-1)?.[0].values).toEqual([400]);
  });

  it('with heights found: no plan of the grid has better heights, asked one by one', async () => {
    const limits = { ...loopQuestion().limits, verticalRadius: 8, steepest: 0.06 };
    const numbers = [{ at: `${way}/first/radiusMm`, from: 350, to: 450, step: 50 }];
    const question = loopQuestion({ numbers, limits, heights: { held: [] }, probes: 2 });
    const answer = await searchRoute({ ...question, probes: 5 }, tools());
    const { curveLength, window } = question.grade;
    const counted = { towards: 'both', curveLength, window, every: 0.05 } as const;
    const wish = { held: [], verticalRadius: 8, steepest: 0.06, headroom: null, deckHalfWidth: 0, ...counted };
    const least = [350, 400, 450].map((first) => {
      const target = trackEnd(loopScene(), 'line');
      const { scene } = closeTrack(withRadii(first, 400), 'line', target, question.solved);
      const task = profileTaskOf(compileScene(scene), 'line', wish);
      // The ends keep the grade that they have now, whatever the plan: 60 mm over the length by hand.
      const grade = 0.06 / (0.8 + 0.4 * Math.PI + 0.6 + 1.2);
      const grades = [0, task.track.length].map((chainage) => ({ chainage, grade }));
      const best = bestProfile(solver, { ...task, grades }, { place: 1e-3, height: 1e-4 });
      return best.kind === 'best' ? best.rounded.ruling : Number.NaN;
    });
    expect(answer.routes[0].ruling).toBeCloseTo(Math.min(...least), 6);
    expect(answer.routes[0].misses).toEqual([]);
    expect(answer.routes[0].points?.length).toBeGreaterThan(2);
  });
});

describe('the greatest margin with heights found for every plan', () => {
  it('can be laid and run at every place that keeps its limits', async () => {
    const limits = { ...loopQuestion().limits, verticalRadius: 8, steepest: 0.06 };
    const numbers = [{ at: `${way}/first/radiusMm`, from: 400, to: 450, step: 25 }];
    const question = loopQuestion({ numbers, limits, heights: { held: [] }, aim: 'margin', trialIds: ['up'] });
    const answer = await searchRoute(question, tools());
    expect(answer.inTheWay).toEqual([]);
    expect(answer.looked).toHaveLength(3);
    expect(answer.routes[0].probe?.ok).toBe(true);
  });
});

describe('the trade-off', () => {
  const few = [
    { at: `${way}/first/radiusMm`, from: 300, to: 600, step: 150 },
    { at: `${way}/second/radiusMm`, from: 300, to: 600, step: 150 },
  ];

  it('is what every place of a small grid leaves unbeaten, by hand and by its trials', async () => {
    const answer = await searchRoute(loopQuestion({ numbers: few, aim: 'front', trialIds: ['up'] }), tools());
    const radii = [300, 450, 600];
    const places = radii.flatMap((a) => radii.map((b) => [a, b] as const));
    const rows: number[][] = [];
    for (const [a, b] of places) {
      const { between, last, ruling, across } = byHand(a / 1e3, b / 1e3);
      const settings = [
        { at: few[0].at, to: a },
        { at: few[1].at, to: b },
        { at: `${way}/up/lengthMm`, to: between * 1e3 },
        { at: `${way}/out/lengthMm`, to: last * 1e3 },
      ];
      const probe = await probeScene({ scene: loopScene(), settings, trialIds: ['up'], exactness: 'run' });
      const margin = closestCall(probe, 'all')?.share ?? Number.NaN;
      rows.push([ruling * 100, (across + deck) * (1.4 + deck), margin].map((one) => Math.round(one * 1e3) / 1e3));
    }
    const front = unbeaten(rows, ['least', 'least', 'most']).map((k) => places[k]);
    expect(front.length).toBeGreaterThan(2);
    expect(front.length).toBeLessThan(places.length);
    // Nine places are few: all were run in full, so that the front is that of full runs, place by place.
    const found = answer.routes.map(({ values }) => values);
    expect(answer.inFull).toBe(true);
    expect(found.length).toBe(front.length);
    for (const values of found) expect(front).toContainEqual(values);
    expect(answer.looked.map(({ values }) => values)).toHaveLength(places.length);
    for (const { agrees, quickPasses, probe } of answer.routes) {
      expect(agrees).toBe(probe?.ok && quickPasses === probe.trials.every(({ passes }) => passes));
    }
    // The ends of the front: least grade and least room.
    const at = (k: number) => Math.min(...front.map((place) => rows[places.indexOf(place)][k]));
    expect(Math.min(...answer.routes.map(({ ruling }) => ruling * 100))).toBeCloseTo(at(0), 3);
    expect(Math.min(...answer.routes.map(({ area }) => area))).toBeCloseTo(at(1), 3);
    expect(answer.routes.every(({ probe }) => probe?.ok)).toBe(true);
  });

  it('comes out the same whatever the number of trials under way at once', async () => {
    const question = loopQuestion({ numbers: few, aim: 'margin', trialIds: ['up'], probes: 5 });
    const one = await searchRoute(question, tools());
    let turn = 0;
    const slow: typeof probeScene = async (request) => {
      await new Promise((resolve) => setTimeout(resolve, (turn++ * 7) % 5));
      return probeScene(request);
    };
    expect(await searchRoute(question, { probe: slow, solver }, { width: 3 })).toEqual(one);
    expect(one.routes[0].margin).toBeGreaterThanOrEqual(one.present?.margin ?? Number.NaN);
  });
});

describe('a question that says nothing', () => {
  it.each([
    [{ numbers: [] }, 'One to 8'],
    [{ trackId: 'nowhere' }, 'no track "nowhere"'],
    [{ solved: [`${way}/first/radiusMm`] }, 'stands there twice'],
    [{ heights: { held: [] } }, 'least vertical radius'],
    [{ aim: 'front' }, 'needs trials'],
    [{ probes: 0 }, 'whole number from 1'],
  ] as const)('%o is refused', async (more, words) => {
    await expect(searchRoute(loopQuestion(more), tools())).rejects.toThrow(words);
  });
});
