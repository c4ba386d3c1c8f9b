import { describe, expect, it } from 'vitest';
import { type Board, type Layers, supportSchedule, turnsOfHelices } from '../../../src/core/build/index.ts';
import {
  type GradePoint,
  helix,
  makeTrack,
  straight,
  type Track,
  type TrackSpec,
} from '../../../src/core/track/index.ts';

const layers: Layers = { track: 0.005, underlay: 0.003, deck: 0.009, width: 0.07 };

const lay = (elements: TrackSpec['elements'], points: readonly GradePoint[], more: Partial<TrackSpec> = {}): Track =>
  makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements, profile: { points }, ...more });

const every = (from: number, step: number, count: number) =>
  Array.from({ length: count }, (_, i) => ({ number: i + 1, chainage: from + i * step }));

const schedule = (
  track: Track,
  supports: ReturnType<typeof every>,
  boards: Board[] = [],
  floor: number | null = null,
) => supportSchedule({ track, supports, layers, tracks: [track], boards, floor });

describe('the heights of supports', () => {
  it('are those of a surveyor’s vertical curve', () => {
    // A summit of a highway textbook's shape in miniature: +2.5 % to level over a parabola 1 m long about chainage 3, rail at 60 mm there.
    // Offsets from the first grade, by hand: (g2 - g1)/(2L)·x², x from where the curve begins at 2.5 m.
    const track = lay(
      [straight(6)],
      [
        { chainage: 0, height: -0.015 },
        { chainage: 3, height: 0.06, curve: { length: 1 } },
        { chainage: 6, height: 0.06 },
      ],
    );
    const rows = schedule(track, every(2.25, 0.25, 6));
    const byHand = [41.25, 47.5, 52.96875, 56.875, 59.21875, 60];
    for (const [i, row] of rows.entries()) expect(row.rail * 1e3).toBeCloseTo(byHand[i], 9);
    expect(rows.map((row) => row.rounding)).toEqual([false, true, true, true, true, false]);
    // 17 mm square to 2.5 %: 17·√1.000625 = 17.00531 mm upright.
    expect((rows[0].rail - rows[0].underside) * 1e3).toBeCloseTo(17.00531, 5);
    expect(rows[0].from).toBeNull();
    expect(rows[2].from?.plan).toBeCloseTo(0.25, 12);
    expect(rows[2].from?.rise).toBeCloseTo(rows[2].underside - rows[1].underside, 15);
  });

  it('stand on the highest board below them, else on the floor, else on nothing that is known', () => {
    const track = lay([straight(3)], [{ chainage: 0, height: 0.1 }]);
    const boards: Board[] = [
      { x: [0.5, 2], y: [-0.3, 0.3], top: -0.02 },
      { x: [1.5, 2.5], y: [-0.3, 0.3], top: 0.04 },
      // Above the strip: nothing to stand on.
      { x: [0, 3], y: [-0.3, 0.3], top: 0.09 },
    ];
    const stood = schedule(track, every(0.25, 0.75, 4), boards, -1);
    expect(stood.map(({ standing }) => standing?.on)).toEqual(['floor', 'board', 'board', 'board'].slice(0, 4));
    expect(stood.map(({ riser }) => Math.round((riser ?? Number.NaN) * 1e3))).toEqual([1083, 103, 43, 43]);
    expect(schedule(track, every(0.25, 1, 1))[0].standing).toBeNull();
    expect(schedule(track, every(0.25, 1, 1))[0].riser).toBeNull();
  });

  it('lean with the cant that is planned', () => {
    // 1 mm between rail middles 17 mm apart: over a strip of 70 mm 70/17 of that.
    const track = lay([straight(1)], [{ chainage: 0, height: 0 }], {
      cant: { points: [{ chainage: 0, cant: Math.asin(1 / 17) }], lever: 0 },
    });
    // Tangent of the angle where the rails have its sine: 1 part in 600 more.
    expect(schedule(track, every(0.5, 1, 1))[0].acrossLeft * 1e3).toBeCloseTo(-70 / Math.sqrt(17 * 17 - 1), 9);
  });
});

describe('a helix, turn by turn', () => {
  const radius = 0.6;
  const turn = 2 * Math.PI * radius;
  const rise = 0.09;
  const climb = (turns: number, way: 1 | -1) =>
    lay(
      [helix(radius, turns)],
      [
        { chainage: 0, height: 0 },
        { chainage: turns * turn, height: way * turns * rise },
      ],
    );

  it.each([1, -1] as const)('has blocks of the rise less the deck, climbing or falling (%s)', (way) => {
    const track = climb(3, way);
    const rows = schedule(track, every(0, turn / 8, 25), [], -2);
    const [told] = turnsOfHelices(track, rows, layers);
    expect(told.perTurn).toBeCloseTo(8, 9);
    expect(told.aside).toBeLessThan(1e-9);
    expect(told.blocks).toHaveLength(1);
    // 90 mm a turn less 9 mm of deck, which stands 1 + g²/2 upright: 2.6 µm more at 2.4 %.
    expect(told.blocks[0].height * 1e3).toBeCloseTo(90 - 9 * Math.hypot(1, rise / turn), 9);
    expect(told.blocks[0].count).toBe(17);
    // The same, found from the strips that pass below: 17 stand on a strip, and the lowest turn's eight on the floor.
    const onStrip = rows.filter(({ standing }) => standing?.on === 'strip');
    expect(onStrip).toHaveLength(17);
    for (const { riser } of onStrip) expect(riser).toBeCloseTo(told.blocks[0].height, 6);
  });

  it('says by how much supports miss each other, and which spacing would not', () => {
    const track = climb(2.5, 1);
    const rows = schedule(track, every(0, 0.3, 32));
    const [told] = turnsOfHelices(track, rows, layers);
    // 3769.9 mm are 12.566 spacings: a turn on, one stands 0.434 of a spacing, 130 mm, aside.
    expect((told.aside ?? 0) * 1e3).toBeCloseTo(13 * 300 - turn * 1e3, 6);
    expect(told.inLine).toBeCloseTo(turn / 13, 12);
    expect(told.blocks).toEqual([]);
    expect(turnsOfHelices(track, rows.slice(0, 1), layers)).toEqual([]);
    expect(turnsOfHelices(climb(0.5, 1), schedule(climb(0.5, 1), every(0, 0.3, 6)), layers)[0].aside).toBeNull();
  });
});
