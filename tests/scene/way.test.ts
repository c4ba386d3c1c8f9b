import { describe, expect, it } from 'vitest';
import { parseScene, reversedRoute, sameWay, towardsOf, wayLengthMm, wayOf } from '../../src/scene/index.ts';
import { sample } from './sample.ts';

const { track: _track, towards: _towards, startMm: _start, finishMm: _finish, ...trial } = sample.trials[0];

const road = (id: string, yMm: number) => ({
  id,
  name: id,
  start: { xMm: 0, yMm, headingDeg: 0 },
  alignment: [{ kind: 'straight', lengthMm: 5000 }],
  profile: [{ atMm: 0, heightMm: 0 }],
});

/** A main line, a branch that leads off it towards its end at 2000 mm, and one that leads off it towards its start at 4000 mm. */
const withRoute = (route: readonly object[], change: object = {}) => ({
  ...sample,
  tracks: [
    road('main', 0),
    ...(['end', 'start'] as const).map((towards) => ({
      id: `to-${towards}`,
      name: `To ${towards}`,
      start: {
        branchOf: 'main',
        atMm: towards === 'end' ? 2000 : 4000,
        towards,
        turnout: { hand: 'left', radiusMm: 1000, gaugeMm: 16.5, frontMm: 0, heelMm: 0 },
      },
      alignment: [{ kind: 'straight', id: 'siding', lengthMm: 2000 }],
      profile: [{ at: { endOf: 'track' }, heightMm: 0 }],
    })),
  ],
  trials: [{ ...trial, ...change, route }],
});

const leg = (track: string, towards: 'end' | 'start', more: object = {}) => ({ track, towards, ...more });

function wayIn(route: readonly object[]) {
  const parsed = parseScene(withRoute(route));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const way = wayOf(parsed.scene, parsed.scene.trials[0]) ?? [];
  return { way: way.map(({ track, fromMm, toMm }) => [track.id, fromMm, toMm]), lengthMm: wayLengthMm(way) };
}

/** 1 m round until the outer rail is a gauge off: (1000 + 8.25)(1 - cos α) = 16.5; then the siding. */
const siding = 1000 * Math.acos(1 - 16.5 / 1008.25) + 2000;

describe('a route whose legs give no ends', () => {
  it('leaves a track at the turnout of the next', () => {
    const { way, lengthMm } = wayIn([leg('main', 'end'), leg('to-end', 'end')]);
    expect(way).toEqual([
      ['main', 0, 2000],
      ['to-end', 0, expect.closeTo(siding, 9)],
    ]);
    expect(lengthMm).toBeCloseTo(2000 + siding, 9);
  });

  it('comes onto a track at the turnout of the one before', () => {
    expect(wayIn([leg('to-end', 'start'), leg('main', 'start')]).way).toEqual([
      ['to-end', expect.closeTo(siding, 9), 0],
      ['main', 2000, 0],
    ]);
  });

  it('runs between two turnouts of one track', () => {
    expect(wayIn([leg('to-start', 'start'), leg('main', 'end')]).way[1]).toEqual(['main', 4000, 5000]);
  });

  it('runs where the file says before all', () => {
    expect(wayIn([leg('main', 'end', { fromMm: 300 }), leg('to-end', 'end', { toMm: 1900 })]).way).toEqual([
      ['main', 300, 2000],
      ['to-end', 0, 1900],
    ]);
  });
});

describe('the other way over a route', () => {
  const route = [leg('main', 'end', { fromMm: 300 }), leg('to-end', 'end')] as const;

  it('is its legs in turn, each the other way between the same places', () => {
    expect(reversedRoute([...route])).toEqual([leg('to-end', 'start'), { track: 'main', towards: 'start', toMm: 300 }]);
    expect(reversedRoute(reversedRoute([...route]))).toEqual(route);
  });

  it('is the same way, told apart by which of its tracks stands further up in the file', () => {
    const there = { route: [...route] };
    const back = { route: reversedRoute([...route]) };
    const tracks = withRoute([]).tracks as unknown as Parameters<typeof towardsOf>[0]['tracks'];
    expect(sameWay(there, back)).toBe(true);
    expect(towardsOf({ tracks }, there)).toBe('end');
    expect(towardsOf({ tracks }, back)).toBe('start');
    expect(sameWay(there, { route: [leg('main', 'end')] })).toBe(false);
    expect(sameWay(there, { track: 'main', towards: 'end' })).toBe(false);
  });
});

describe('a route that is refused', () => {
  const problemsOf = (route: readonly object[], change: object = {}) => {
    const parsed = parseScene(withRoute(route, change));
    return parsed.ok ? [] : parsed.problems;
  };
  const sole = (route: readonly object[], change: object = {}) => {
    const problems = problemsOf(route, change);
    expect(problems).toHaveLength(1);
    return problems[0];
  };

  it('goes onto a branch against its turnout: it names both, which way the turnout leads, and two trials', () => {
    const { path, found, allowed } = sole([leg('main', 'start'), leg('to-end', 'end')]);
    expect(path).toBe('trials[0].route[1]');
    expect(found).toBe('a way from "main" onto "to-end" against its turnout, which leads off "main" towards its end');
    expect(allowed).toMatch(/clear a turnout and set back needs a trial for each way/);
  });

  it('comes off a branch against its turnout', () => {
    const { found } = sole([leg('to-start', 'start'), leg('main', 'start')]);
    expect(found).toBe(
      'a way from "to-start" onto "main" against its turnout, which leads off "main" towards its start',
    );
  });

  it.each([
    ['a track that is not there', [leg('man', 'end')], 'trials[0].route[0].track', '"man", which is not in this file'],
    ['a place off its track', [leg('main', 'end', { toMm: 5100 })], 'trials[0].route[0].toMm', 'chainage 5100 mm'],
    [
      'a leg the wrong way round',
      [leg('main', 'end', { fromMm: 3000, toMm: 1000 })],
      'trials[0].route[0]',
      'a leg from 3000 to 1000 mm of "main", towards its end',
    ],
  ])('has %s', (_, route, path, found) => {
    expect(sole(route)).toMatchObject({ path, found });
  });

  it('is too short for its train, or its trial starts or is ordered beyond it', () => {
    expect(sole([leg('main', 'end', { toMm: 500 })])).toMatchObject({
      path: 'trials[0].train',
      allowed: 'a train shorter than its route',
    });
    expect(sole([leg('main', 'end')], { startMm: 4999, finishMm: 4000 })).toMatchObject({ path: 'trials[0].finishMm' });
    expect(sole([leg('main', 'end')], { orders: [{ atMm: 5500, setting: 0.5 }] })).toMatchObject({
      path: 'trials[0].orders[0].atMm',
      allowed: 'a place on the route: 0 to 5000 mm',
    });
  });

  it('stands beside a track, or is missing with it', () => {
    expect(problemsOf([leg('main', 'end')], { track: 'main' })[0].allowed).toBe('either track or route');
    const { trials, ...rest } = withRoute([]);
    const { route: _route, ...neither } = trials[0];
    const parsed = parseScene({ ...rest, trials: [neither] });
    expect(parsed.ok ? [] : parsed.problems.map(({ found }) => found)).toEqual([
      'no track and no route',
      'no towards and no route',
    ]);
  });
});
