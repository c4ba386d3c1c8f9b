import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arc,
  branchStart,
  crossover,
  makeTrack,
  nearestChainage,
  reverseTrack,
  routeTrack,
  straight,
  type Track,
  TrackError,
  trackPoint,
  transition,
  turnout,
} from '../../../../src/core/track/index.ts';

const spec = { hand: 'left', gauge: 0.0165, radius: 0.9, crossingAngle: 0.16, front: 0.03, heel: 0.05 } as const;

const main = (elements = [straight(3)]): Track =>
  makeTrack({
    start: { x: 0.2, y: 0.1, heading: 0.3 },
    elements,
    profile: {
      points: [
        { chainage: 0, height: 0.02 },
        { chainage: 0.8, height: 0.03, curve: { length: 0.5 } },
        { chainage: 3, height: 0.09 },
      ],
      strip: { supports: [0, 0.001, 0, 0.002].map((departure, i) => ({ chainage: i, departure })), hinges: [] },
    },
    cant: {
      points: [
        { chainage: 0.5, cant: 0 },
        { chainage: 1, cant: 0.03 },
      ],
      lever: 0,
    },
  });

describe('turnout', () => {
  it('ends the curve at the crossing angle and runs straight past the nose', () => {
    const laid = turnout(spec);
    // Worked: (0.9 + 0.00825)(1 - cos 0.16) = 11.600 mm of the gauge of 16.5; the other 4.899 at sin 0.16 are 30.751 mm.
    const run = (0.0165 - 0.90825 * (1 - Math.cos(0.16))) / Math.sin(0.16);
    expect(run).toBeCloseTo(0.030751, 6);
    expect(laid.lead).toBeCloseTo(0.90825 * Math.sin(0.16) + run * Math.cos(0.16), 14);
    expect(laid.elements.map((element) => element.length)).toEqual(
      [0.03, 0.9 * 0.16, run + 0.05].map((l) => expect.closeTo(l, 14)),
    );
  });

  it('has its nose where the diverging outer rail crosses the far rail, whatever radius, gauge and angle', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        between(0.3, 3),
        between(0.009, 0.032),
        between(0, 1),
        fc.boolean(),
        (radius, gauge, share, curved) => {
          const natural = turnout({ hand: 'left', gauge, radius, front: 0, heel: 0 }).crossingAngle;
          const angle = natural * (0.2 + 0.8 * share);
          const base = { hand: 'left', gauge, radius, front: 0.02, heel: 0.1 } as const;
          const laid = turnout(curved ? base : { ...base, crossingAngle: angle });
          const track = makeTrack({
            start: { x: 0, y: 0, heading: 0 },
            elements: laid.elements,
            profile: { points: [{ chainage: 0, height: 0 }] },
          });
          // The outer (right-hand) rail of the diverging track at the nose: half a gauge left of the straight middle line.
          const nose: [number, number, number] = [0.02 + laid.lead, gauge / 2, 0];
          const foot = trackPoint(track, nearestChainage(track, nose).chainage);
          const [dx, dy] = [nose[0] - foot.x, nose[1] - foot.y];
          expect(dy * Math.cos(foot.heading) - dx * Math.sin(foot.heading)).toBeCloseTo(-gauge / 2, 9);
          expect(foot.heading).toBeCloseTo(laid.crossingAngle, 6);
          const end = trackPoint(track, track.length);
          expect(end.x).toBeCloseTo(laid.through, 12);
          expect(end.y).toBeCloseTo(laid.offset, 12);
          expect(end.heading).toBeCloseTo(laid.angle, 12);
        },
      ),
    );
  });

  it('is refused with a crossing flatter than the curve allows by the nose, and says which radius would do', () => {
    expect(() => turnout({ ...spec, radius: 3 })).toThrow(
      /has turned by 6.00° at the nose: a straight crossing of 9.17° needs a radius of at most 1.28/,
    );
    expect(() => turnout({ ...spec, radius: 0 })).toThrow(RangeError);
    expect(() => crossover({ ...spec, radius: 1.2 }, 0.02)).toThrow(/more than the 0.02 m between/);
  });
});

describe('a branch', () => {
  const laid = turnout(spec);

  it('starts on the main track, as high, as steep and with its cant, to the heel of the turnout', () => {
    const line = main();
    const { start, elements, held, cant } = branchStart(line, 0.7, laid);
    const branch = makeTrack({
      start,
      elements: [...elements, straight(0.5)],
      profile: { points: [{ chainage: 0, height: trackPoint(line, 0.7 + laid.through).z }], held: [held] },
      cant: { points: cant, lever: 0 },
    });
    const ratio = laid.through / laid.diverging;
    for (const t of [0, 0.05, 0.15, laid.diverging - 1e-9]) {
      const [here, there] = [trackPoint(branch, t), trackPoint(line, 0.7 + ratio * t)];
      expect(here.z).toBeCloseTo(there.z, 14);
      expect(here.cant).toBeCloseTo(there.cant, 14);
      expect(here.grade).toBeCloseTo(there.grade * ratio, 12);
    }
    const heel = trackPoint(branch, laid.diverging);
    const opposite = trackPoint(line, 0.7 + laid.through);
    expect(Math.hypot(heel.x - opposite.x, heel.y - opposite.y)).toBeCloseTo(laid.offset, 12);
    expect(heel.heading - opposite.heading).toBeCloseTo(laid.angle, 12);
    expect(branch.jumps.every((jump) => jump.position === 0 && jump.heading === 0)).toBe(true);
  });

  it('bends with a curved main track: its curvature is the sum', () => {
    const line = main([transition(1, 0, 0.5), arc(2, 1)]);
    const { elements } = branchStart(line, 0.8, laid);
    const branch = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements,
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    expect(branch.length).toBeCloseTo(laid.diverging, 12);
    const ratio = laid.through / laid.diverging;
    for (const t of [0.01, 0.1, 0.16, 0.23]) {
      const own = t < 0.03 ? 0 : t < 0.03 + 0.9 * 0.16 ? 1 / 0.9 : 0;
      expect(trackPoint(branch, t).curvature).toBeCloseTo(own + trackPoint(line, 0.8 + ratio * t).curvature, 12);
    }
  });

  it('is refused where its turnout leaves the main track', () => {
    expect(() => branchStart(main(), 2.9, laid)).toThrow(TrackError);
    expect(() => branchStart(main(), -0.1, laid)).toThrow(/reaches 0.1 m beyond/);
  });
});

describe('a route', () => {
  it('over the main track and off along a branch fits, and is each of them on its stretch', () => {
    const line = main();
    const laid = turnout(spec);
    const { start, elements, held, cant } = branchStart(line, 0.7, laid);
    const heel = trackPoint(line, 0.7 + laid.through).z;
    const branch = makeTrack({
      start,
      elements: [...elements, straight(0.5)],
      profile: { points: [{ chainage: 0, height: heel }], held: [held] },
      cant: { points: cant, lever: 0 },
    });
    const route = routeTrack([
      { track: line, from: 0.1, to: 0.7 },
      { track: branch, from: 0, to: branch.length },
    ]);
    expect(route.misfits).toEqual([]);
    expect(route.starts).toEqual([0, expect.closeTo(0.6, 14)]);
    for (const [s, track, at] of [
      [0.3, line, 0.4],
      [0.7, branch, 0.1],
      [1.1, branch, 0.5],
    ] as const) {
      const [here, there] = [trackPoint(route.track, s), trackPoint(track, at)];
      for (const key of ['x', 'y', 'z', 'heading', 'grade', 'curvature', 'cant'] as const) {
        expect(here[key]).toBeCloseTo(there[key], 10);
      }
    }
    expect(route.track.jumps.every((jump) => jump.position === 0 && jump.heading === 0)).toBe(true);
  });

  it('backwards over a track is its reverse', () => {
    const line = main([transition(1, 0, 0.5), arc(2, 1)]);
    const { track } = routeTrack([{ track: line, from: line.length, to: 0 }]);
    const back = reverseTrack(line);
    for (const s of [0.2, 1.3, 2.5]) {
      const [here, there] = [trackPoint(track, s), trackPoint(back, s)];
      for (const key of ['x', 'y', 'z', 'heading', 'grade', 'cant'] as const)
        expect(here[key]).toBeCloseTo(there[key], 11);
    }
  });

  it('tells what it closes up: a gap, a turn and a step', () => {
    const other = makeTrack({
      start: { x: 1.01, y: 0, heading: 0.02 },
      elements: [straight(1)],
      profile: { points: [{ chainage: 0, height: 0.001 }] },
    });
    const first = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const { track, misfits } = routeTrack([
      { track: first, from: 0, to: 1 },
      { track: other, from: 0, to: 1 },
    ]);
    expect(misfits).toEqual([
      {
        chainage: 1,
        position: expect.closeTo(Math.hypot(0.01, 0.001), 12),
        heading: expect.closeTo(0.02, 12),
        curvature: 0,
      },
    ]);
    expect(track.jumps).toEqual([
      expect.objectContaining({ chainage: 1, heading: expect.closeTo(0.02, 12) }),
      expect.objectContaining({ chainage: 1, position: expect.closeTo(0.001, 12) }),
    ]);
    expect(trackPoint(track, 2).y).toBeCloseTo(Math.sin(0.02), 12);
  });

  it('is refused without stretches, or off a track', () => {
    expect(() => routeTrack([])).toThrow(TrackError);
    expect(() => routeTrack([{ track: main(), from: 0, to: 7 }])).toThrow(/not one of a track 3 m long/);
  });
});
