import { describe, expect, it } from 'vitest';
import { bounds, cornersOf, parseScene } from '../../../src/scene/index.ts';
import { sample, sampleWith } from '../sample.ts';

function refusal(source: unknown): { path: string; found: string; allowed: string } {
  const parsed = parseScene(source);
  if (parsed.ok) throw new Error('accepted');
  expect(parsed.problems).toHaveLength(1);
  return parsed.problems[0];
}

const trial = (change: object) => sampleWith('trials', [{ ...sample.trials[0], ...change }]);
const coach = sample.stock[1];

describe('what the parts of a scene say of each other', () => {
  it.each([
    ['trials.0.track', 'sidings', 'trials[0].track', 'one of "line"'],
    ['trials.0.train', 'mail', 'trials[0].train', 'one of "train"'],
    ['trains.0.vehicles.1.stock', 'van', 'trains[0].vehicles[1].stock', 'one of "engine", "coach"'],
    ['stock.1.coupling', 'hook', 'stock[1].coupling', 'one of "bar"'],
    ['stock.1.rearCoupling', 'hook', 'stock[1].rearCoupling', 'one of "bar"'],
    ['tracks.0.profile.2.at', { endOf: 'helix' }, 'tracks[0].profile[2].at.endOf', '"track", "lead", "first"'],
    ['tracks.0.profile.2.at', { startOf: 'helix' }, 'tracks[0].profile[2].at.startOf', '"track", "lead", "first"'],
    ['trials.0.passers', ['coach', 'van'], 'trials[0].passers[1]', 'one of "engine", "coach"'],
    ['opensWith', 'down', 'opensWith', 'one of "up"'],
  ])('an unknown name in %s', (path, value, where, allowed) => {
    const problem = refusal(sampleWith(path, value));
    expect(problem.path).toBe(where);
    expect(problem.found).toContain('which is');
    expect(problem.allowed).toContain(allowed);
  });

  it.each([
    ['stock', [sample.stock[0], coach, coach], 'stock[2].id'],
    ['trains', [sample.trains[0], sample.trains[0]], 'trains[1].id'],
    ['trials', [sample.trials[0], sample.trials[0]], 'trials[1].id'],
    ['couplings', [sample.couplings[0], sample.couplings[0]], 'couplings[1].id'],
    ['tracks', [sample.tracks[0], sample.tracks[0]], 'tracks[1].id'],
    ['tracks.0.alignment.1.id', 'lead', 'tracks[0].alignment[1].id'],
  ])('a name that stands twice in %s', (path, value, where) => {
    const problem = refusal(sampleWith(path, value));
    expect(problem.path).toBe(where);
    expect(problem.found).toContain('a second time');
  });

  it.each([
    ['tracks.0.alignment.0.id', 'track', 'tracks[0].alignment[0].id', 'any name but "track"'],
    ['tracks.0.profile.1.atMm', 7000, 'tracks[0].profile[1].atMm', '0 to 6000 mm'],
    ['tracks.0.profile.2.at', { endOf: 'track', plusMm: 1 }, 'tracks[0].profile[2].at', '0 to 6000 mm'],
    ['tracks.0.stripJoints.0.atMm', 6001, 'tracks[0].stripJoints[0].atMm', '0 to 6000 mm'],
    ['tracks.0.profile.1.atMm', 0, 'tracks[0].profile[1]', 'in the order of their chainage'],
    ['tracks.0.profile.1.verticalCurveLengthMm', 4100, 'tracks[0].profile[1]', 'at most the 2000 mm'],
    ['tracks.0.supports.off', [{ support: 22, byMm: 1 }], 'tracks[0].supports.off[0].support', 'from 1 to 21'],
    ['tracks.0.supports', [{ atMm: 900 }, { atMm: 300 }], 'tracks[0].supports[1]', 'in the order of their chainage'],
    ['tracks.0.supports', [{ atMm: 900 }, { atMm: 6500 }], 'tracks[0].supports[1].atMm', '0 to 6000 mm'],
    ['tracks.0.supports.everyMm', 5000, 'accepted', ''],
    ['tracks.0.supports', undefined, 'tracks[0].stripJoints', 'joints together with supports'],
    ['tracks.0.stripJoints', [{ atMm: 10 }, { atMm: 10 }], 'tracks[0].stripJoints', 'one joint at a place'],
    ['tracks.0.alignment.0.lengthMm', 199_000, 'tracks[0].alignment', 'at most 200000 mm in all'],
  ])('a place that is not on the track or out of order: %s', (path, value, where, allowed) => {
    if (where === 'accepted') {
      // Two supports, at 0 and at 5000 mm, still carry a strip once the third one's error is out of the file.
      const changed = sampleWith(path, value) as { tracks: { supports: { off?: unknown } }[] };
      delete changed.tracks[0].supports.off;
      expect(parseScene(changed).ok).toBe(true);
      return;
    }
    const problem = refusal(sampleWith(path, value));
    expect(problem.path).toBe(where);
    expect(problem.allowed).toContain(allowed);
  });

  it('a vertical curve by radius counts with the length it will have', () => {
    // 80 mm over 4 m is 2 %: a radius of 250 m makes 5 m of curve, half of it 2.5 m before the point.
    const changed = sampleWith('tracks.0.profile.1', { atMm: 2000, heightMm: 0, verticalCurveRadiusMm: 250_000 });
    expect(refusal(changed).found).toContain('2500 mm');
  });

  it.each([
    ['stock.1.overBuffersMm', 14, 'stock[1].overBuffersMm', 'at least 5 mm'],
    ['stock.1.bogies.centresMm', 600, 'stock[1].bogies.centresMm', 'under the body'],
    ['stock.1.axles', 3, 'stock[1].axles', 'together with wheelbaseMm'],
    ['stock.0.drive.drivenMassG', 301, 'stock[0].drive.drivenMassG', 'at most the mass of the vehicle, 300 g'],
    ['stock.0.drive.slidingAdhesion', 0.3, 'stock[0].drive.slidingAdhesion', 'at most the adhesion, 0.2'],
  ])('a vehicle that cannot be: %s', (path, value, where, allowed) => {
    const problem = refusal(sampleWith(path, value));
    expect(problem.path).toBe(where);
    expect(problem.allowed).toContain(allowed);
  });

  const square = [
    [0, 0],
    [60, 0],
    [60, 30],
    [0, 30],
  ];
  const corners = (places: readonly (readonly number[])[]) => places.map(([xMm, yMm]) => ({ xMm, yMm }));
  const pier = { name: 'Pier', outline: corners(square), bottomMm: -20, topMm: 60 };

  it.each([
    [{ outline: corners([...square, [30, 10]]) }, 'structures[0].outline', 'a convex outline'],
    [
      {
        outline: corners([
          [0, 0],
          [10, 0],
          [20, 0],
        ]),
      },
      'structures[0].outline',
      'a convex outline',
    ],
    // A star turns left at every corner and goes round twice.
    [
      {
        outline: corners([
          [0, 10],
          [-6, -8],
          [10, 3],
          [-10, 3],
          [6, -8],
        ]),
      },
      'structures[0].outline',
      'a convex outline',
    ],
    [{ topMm: -20 }, 'structures[0].topMm', 'a top above the bottom'],
  ])('a structure that cannot be: %j', (change, where, allowed) => {
    const problem = refusal(sampleWith('structures', [{ ...pier, ...change }]));
    expect(problem.path).toBe(where);
    expect(problem.allowed).toContain(allowed);
  });

  it('takes a structure whichever way round its corners are given', () => {
    for (const outline of [pier.outline, [...pier.outline].reverse()]) {
      expect(parseScene(sampleWith('structures', [{ ...pier, outline }])).ok).toBe(true);
      expect(cornersOf({ ...pier, outline })).toHaveLength(4);
    }
    expect(cornersOf({ ...pier, outline: [...pier.outline].reverse() })).toEqual(pier.outline);
  });

  it('a train with more vehicles than the bound, counts written out', () => {
    const vehicles = [{ stock: 'engine' }, { stock: 'coach', count: bounds.vehicles }];
    const problem = refusal(sampleWith('trains.0.vehicles', vehicles));
    expect(problem).toMatchObject({ path: 'trains[0].vehicles', found: `${bounds.vehicles + 1} vehicles` });
  });

  it('a train longer than its track', () => {
    const problem = refusal(sampleWith('trains.0.vehicles.1.count', 30));
    expect(problem.path).toBe('trials[0].train');
    expect(problem.found).toMatch(/^a train of 8\d\d\d\.?\d* mm on a track of 6000 mm$/);
  });

  it('couplings of two families on one joint', () => {
    const changed = sampleWith('couplings', [sample.couplings[0], { id: 'knuckle', kind: 'knuckle' }]) as {
      stock: { rearCoupling?: string }[];
    };
    changed.stock[0].rearCoupling = 'knuckle';
    const problem = refusal(changed);
    expect(problem.path).toBe('trials[0].train');
    expect(problem.found).toContain('a knuckle coupling on vehicle 1 (Engine)');
  });

  it('running points further apart than the radius', () => {
    const changed = sampleWith('tracks.0.alignment.1', {
      kind: 'arc',
      id: 'first',
      radiusMm: 150,
      turn: 'left',
      lengthMm: 1000,
    });
    expect(refusal(changed).found).toContain('Coach, running points 186 mm apart, on a curve of 150 mm radius');
  });

  it.each([
    [{ startMm: 600 }, 'trials[0].startMm', 'so that the whole train'],
    [{ startMm: 5901 }, 'trials[0].finishMm', 'beyond the start'],
    [{ finishMm: 6500 }, 'trials[0].finishMm', 'up to 6000 mm'],
    [{ towards: 'start', startMm: 5800, finishMm: 100 }, 'trials[0].startMm', 'so that the whole train'],
    [{ towards: 'start', startMm: 900, finishMm: 1000 }, 'trials[0].finishMm', 'less than the start'],
    [{ orders: [{ atMm: 6100, setting: 0 }] }, 'trials[0].orders[0].atMm', '0 to 6000 mm'],
    [{ orders: [{ atS: 0, setting: 0, vehicle: 2 }] }, 'trials[0].orders[0].vehicle', 'one of 1'],
    [{ orders: [{ atS: 0, setting: 0, vehicle: 9 }] }, 'trials[0].orders[0].vehicle', 'one of 1'],
    [{ stepMs: 3, frameMs: 10 }, 'trials[0].frameMs', 'a whole multiple of the step'],
    [{ stepMs: 10, frameMs: 1 }, 'trials[0].frameMs', 'a whole multiple of the step'],
  ])('a trial that cannot be run: %j', (change, where, allowed) => {
    const problem = refusal(trial(change));
    expect(problem.path).toBe(where);
    expect(problem.allowed).toContain(allowed);
  });

  it('an hour recorded every millisecond is taken: the run bounds what it keeps', () => {
    expect(parseScene(trial({ frameMs: 1, timeLimitS: 3600 })).ok).toBe(true);
  });

  it('decimal steps that make whole frames are taken', () => {
    expect(parseScene(trial({ stepMs: 0.1, frameMs: 0.3 * 10 })).ok).toBe(true);
  });
});
