import { describe, expect, it } from 'vitest';
import type { Scene } from '../../../../src/scene/index.ts';
import { probeScene } from '../../../../src/sim/study/index.ts';
import { type RouteRoom, roomOf, searchRoute } from '../../../../src/sim/study/route/index.ts';
import { loadSolver } from '../../../../src/sim/survey/solver.ts';
import { sceneOf } from '../../../scene/sample.ts';
import { byHand, loopQuestion, loopScene, way } from './loop.ts';

/** Half of the deck where the scene says nothing: 70 mm at 16.5 mm gauge (NEM 122). */
const half = 35;

const radii = [300, 350, 400, 450, 500, 550, 600];
const numbers = ['first', 'second'].map((name) => ({ at: `${way}/${name}/radiusMm`, from: 300, to: 600, step: 50 }));

const box = (west: number, south: number, east: number, north: number) => [
  { xMm: west, yMm: south },
  { xMm: east, yMm: south },
  { xMm: east, yMm: north },
  { xMm: west, yMm: north },
];

const room = (more: Partial<RouteRoom>): RouteRoom => ({ corners: null, obstacles: [], boards: [], ...more });

const asked = (limit: RouteRoom, more = {}) =>
  loopQuestion({ numbers, limits: { ...loopQuestion().limits, room: limit }, ...more });

const tools = { probe: probeScene, solver: null };

/**
 * The centreline by hand, mm, every 2 mm: from (1000, 500) 800 mm east, a quarter turn of radius a, north to 1900 - b, a quarter turn of radius b, west to x = 600. No code of the program is asked.
 */
function line(a: number, b: number): [number, number][] {
  const places: [number, number][] = [];
  for (let x = 1000; x <= 1800; x += 2) places.push([x, 500]);
  for (let t = 0; t <= 1; t += 2 / (1.6 * a))
    places.push([1800 + a * Math.sin((t * Math.PI) / 2), 500 + a * (1 - Math.cos((t * Math.PI) / 2))]);
  for (let y = 500 + a; y <= 1900 - b; y += 2) places.push([1800 + a, y]);
  for (let t = 0; t <= 1; t += 2 / (1.6 * b)) {
    places.push([1800 + a - b * (1 - Math.cos((t * Math.PI) / 2)), 1900 - b + b * Math.sin((t * Math.PI) / 2)]);
  }
  for (let x = 1800 + a - b; x >= 600; x -= 2) places.push([x, 1900]);
  return places;
}

/** The best places by hand of those that `keeps` lets through. */
function best(keeps: (a: number, b: number) => boolean): { values: number[][]; kept: number } {
  const places = radii.flatMap((a) => radii.map((b) => [a, b])).filter(([a, b]) => a + b < 1400 && keeps(a, b));
  const ruling = ([a, b]: number[]) => byHand(a / 1e3, b / 1e3).ruling;
  const least = Math.min(...places.map(ruling));
  return { values: places.filter((place) => ruling(place) < least + 1e-9), kept: places.length };
}

/** A place's distance to an upright rectangle, 0 inside. */
const apart = ([x, y]: [number, number], [west, south, east, north]: number[]) =>
  Math.hypot(Math.max(west - x, x - east, 0), Math.max(south - y, y - north, 0));

describe('a pillar in the room', () => {
  // Inside the loop's far corner: wide turns run round it, tight first turns run into it or pass it on its other side.
  const pillar = [2180, 760, 2330, 910];

  it('is kept clear of, as every place of the grid looked at by hand says', async () => {
    const clear = (a: number, b: number) => line(a, b).every((place) => apart(place, pillar) > half);
    const { values, kept } = best(clear);
    expect(kept).toBeGreaterThan(5);
    expect(kept).toBeLessThan(40);
    const limit = room({
      obstacles: [{ name: 'Pillar', outline: box(...(pillar as [number, number, number, number])), top: null }],
    });
    const answer = await searchRoute(asked(limit), tools);
    expect(answer.certainty).toBe('every-setting');
    expect(answer.looked).toHaveLength(kept);
    expect(values).toContainEqual(answer.routes[0].values);
    expect(answer.inTheWay.find(({ miss }) => miss === 'obstacle')).toEqual({
      miss: 'obstacle',
      name: 'Pillar',
      times: answer.settings - kept,
    });
  });

  it('may be round: kept clear of by the way to its middle, as every place of the grid looked at by hand says', async () => {
    const round = { xMm: 2255, yMm: 835, diameterMm: 160 };
    const away = ([x, y]: [number, number]) => Math.hypot(x - round.xMm, y - round.yMm) - round.diameterMm / 2;
    const clear = (a: number, b: number) => line(a, b).every((place) => away(place) > half);
    const { values, kept } = best(clear);
    expect(kept).toBeGreaterThan(5);
    expect(kept).toBeLessThan(40);
    const answer = await searchRoute(asked(room({ obstacles: [{ name: 'Post', round, top: null }] })), tools);
    expect(answer.looked).toHaveLength(kept);
    expect(values).toContainEqual(answer.routes[0].values);
  });

  it('is passed over where its top is below the deck, and not where it is above', async () => {
    const over = async (top: number) => {
      const outline = box(1900, 450, 2000, 550);
      // The line rises evenly, 60 mm in all: over these 100 mm behind its first 900 it stands at some 17 mm, its deck of 17 mm below that.
      const answer = await searchRoute(asked(room({ obstacles: [{ name: 'Sill', outline, top }] })), tools);
      return answer.looked.length;
    };
    expect(await over(-0.01)).toBe(49);
    expect(await over(0.05)).toBe(0);
  });

  it('is named with the place where it is in the way of the route as it is', async () => {
    const outline = box(1300, 480, 1400, 600);
    const answer = await searchRoute(asked(room({ obstacles: [{ name: 'Boiler', outline, top: null }] })), tools);
    expect(answer.routes).toEqual([]);
    const [conflict] = answer.present?.conflicts ?? [];
    // The centreline runs 20 mm inside its south side, and furthest in is any place well within: half a deck and those 20 mm.
    expect(conflict).toMatchObject({ kind: 'obstacle', name: 'Boiler', trackId: 'line' });
    expect(conflict.by).toBeCloseTo(0.055, 6);
    expect(conflict.chainage).toBeGreaterThan(0.3);
    expect(conflict.chainage).toBeLessThan(0.4);
  });
});

describe('the boards', () => {
  it('carry the whole deck, as every place of the grid looked at by hand says', async () => {
    // An L of two boards that meet: a tight first turn stays on them, a wide one hangs over the east edge, and tight second turns cut the corner's inside nowhere.
    const boards = [
      [500, 400, 2300, 2000],
      [2300, 800, 2290 + 60, 2000],
    ];
    const carried = (a: number, b: number) => {
      const places = line(a, b);
      return places.every(([x, y], k) => {
        const [px, py] = places[Math.max(k - 1, 0)];
        const [nx, ny] = places[Math.min(k + 1, places.length - 1)];
        const long = Math.hypot(nx - px, ny - py);
        return [half, -half].every((aside) => {
          const edge: [number, number] = [x - (aside * (ny - py)) / long, y + (aside * (nx - px)) / long];
          return boards.some((board) => apart(edge, board) < 1e-3);
        });
      });
    };
    const { values, kept } = best(carried);
    expect(kept).toBeGreaterThan(5);
    expect(kept).toBeLessThan(40);
    const limit = room({
      boards: boards.map(([west, south, east, north]) => ({
        xMm: west,
        yMm: south,
        lengthMm: east - west,
        widthMm: north - south,
      })),
    });
    const answer = await searchRoute(asked(limit), tools);
    expect(answer.looked).toHaveLength(kept);
    expect(values).toContainEqual(answer.routes[0].values);
    expect(answer.inTheWay[0]).toEqual({ miss: 'boards', name: null, times: answer.settings - kept });
  });
});

describe('the room of a scene', () => {
  const scene = (): Scene =>
    sceneOf({
      ...loopScene(),
      room: {
        datumAboveFloorMm: 900,
        corners: box(0, 0, 4000, 3000),
        obstacles: [
          { name: 'Shelf', outline: box(0, 0, 300, 300), heightMm: 850 },
          { name: 'Pillar', outline: box(3000, 2000, 3200, 2200) },
        ],
        baseboards: [{ xMm: 500, yMm: 300, lengthMm: 2400, widthMm: 1800 }],
      },
    });

  it('limits with all it has, tops counted from height 0, or with the kinds that are asked for', () => {
    const all = roomOf(scene());
    expect(all?.corners).toHaveLength(4);
    expect(all?.obstacles.map(({ name, top }) => [name, top])).toEqual([
      ['Shelf', -0.05],
      ['Pillar', null],
    ]);
    expect(all?.boards).toHaveLength(1);
    expect(roomOf(scene(), ['boards'])).toMatchObject({ corners: null, obstacles: [] });
    expect(roomOf(scene(), [])).toBeNull();
    expect(roomOf(loopScene())).toBeNull();
  });

  it('is kept by heights that were found as well: a deck that comes down onto a shelf is in its way', async () => {
    const solver = await loadSolver();
    const outline = box(1300, 480, 1400, 600);
    const limits = (top: number) => ({
      ...loopQuestion().limits,
      verticalRadius: 8,
      steepest: 0.06,
      room: room({ obstacles: [{ name: 'Shelf', outline, top }] }),
    });
    const few = [{ at: `${way}/first/radiusMm`, from: 400, to: 450, step: 50 }];
    const ask = (top: number) =>
      searchRoute(asked(room({}), { numbers: few, heights: { held: [] }, limits: limits(top) }), { ...tools, solver });
    expect((await ask(-0.02)).routes).toHaveLength(1);
    const high = await ask(0.03);
    expect(high.routes).toEqual([]);
    expect(high.inTheWay).toContainEqual({ miss: 'obstacle', name: 'Shelf', times: 2 });
  });
});
