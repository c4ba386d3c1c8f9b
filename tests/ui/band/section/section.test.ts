import { describe, expect, test } from 'vitest';
import {
  arc,
  gradeLines,
  helix,
  makeTrack,
  plannedBreaks,
  steepest,
  straight,
  type Track,
  turnsBetween,
} from '../../../../src/core/track/index.ts';
import type { AxisScale } from '../../../../src/ui/band/frame/axis.ts';
import { crossings, groundOf } from '../../../../src/ui/band/section/ground.ts';
import { combOf, profileOf } from '../../../../src/ui/band/section/profileDrawing.ts';
import { letterSection } from '../../../../src/ui/band/section/sectionLettering.ts';

/** 2 m level, 8 m falling 1 in 40 down a helix, 2 m level; supports every metre, number 5 stands 2.5 mm high. */
const track: Track = makeTrack({
  start: { x: 0, y: 0, heading: 0 },
  elements: [straight(2), helix(0.6, 2), straight(12 - 2 - 2 * 2 * Math.PI * 0.6)],
  profile: {
    points: [
      { chainage: 0, height: 0.3 },
      { chainage: 2, height: 0.3, curve: { length: 0.4 } },
      { chainage: 10, height: 0.1, curve: { radius: 20 } },
      { chainage: 12, height: 0.1 },
    ],
    strip: {
      supports: Array.from({ length: 13 }, (_, k) => ({
        chainage: k,
        departure: k === 4 ? 0.0025 : k === 7 ? -0.001 : 0,
      })),
      hinges: [],
    },
  },
});
const axis: AxisScale = { kind: 'chainage', span: { from: 0, to: 12 }, width: 600 };
const ground = groundOf(axis, null, null)!;

describe('grades', () => {
  test('from end to end, with the heights and curves where they meet', () => {
    expect(gradeLines(track).map(({ from, to }) => [from, to])).toEqual([
      [0, 2],
      [2, 10],
      [10, 12],
    ]);
    expect(gradeLines(track)[1].grade).toBeCloseTo(-1 / 40, 12);
    const [summit, foot] = plannedBreaks(track);
    expect(summit).toEqual({ chainage: 2, height: 0.3, curve: 0.4 });
    // Length = radius times change of grade: 20 m times 1/40.
    expect(foot.curve).toBeCloseTo(0.5, 12);
  });

  test('neighbours of one grade are one, and a profile of one point is level', () => {
    const profile = (points: readonly { chainage: number; height: number }[]) =>
      gradeLines(makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(3)], profile: { points } }));
    expect(
      profile([
        { chainage: 0.5, height: 0 },
        { chainage: 1, height: 0.01 },
        { chainage: 2, height: 0.03 },
      ]),
    ).toEqual([{ from: 0, to: 3, grade: expect.closeTo(0.02, 12) }]);
    expect(profile([{ chainage: 1, height: 0.2 }])).toEqual([{ from: 0, to: 3, grade: 0 }]);
  });

  test('turns are counted to one side only', () => {
    expect(turnsBetween(track, 0, 12)).toBeCloseTo(2, 9);
    expect(turnsBetween(track, 2 + Math.PI * 0.6, 10)).toBeCloseTo(1.5, 9);
    const snake = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [arc(0.5, 4), arc(0.5, -4)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    expect(turnsBetween(snake, 0, 2)).toBeCloseTo(4 / (2 * Math.PI), 9);
    expect(turnsBetween(snake, 0, 4)).toBe(0);
  });

  test('the steepest place is found, the first of several alike', () => {
    expect(steepest((s) => (s < 3 ? 0.01 : s < 4 ? -0.03 : s < 5 ? 0.03 : 0), 6, 0.01)).toEqual({
      chainage: expect.closeTo(3, 6),
      grade: -0.03,
    });
  });
});

describe('the ground under the axis', () => {
  test('on a chainage axis is the axis itself', () => {
    expect(ground.places[300]).toBeCloseTo(6, 12);
    expect(ground.xsOf(4)).toEqual([200]);
    expect(ground.xsOf(13)).toEqual([]);
  });

  test('on a time axis is where the train is, as often as it is there', () => {
    const time = Float64Array.from({ length: 7 }, (_, f) => f);
    const places = Float64Array.of(0, 2, 4, 4, 2, 3, 5);
    const motion = { time, joints: [places], middle: places, jump: 9 };
    const passing = groundOf({ kind: 'time', span: { from: 0, to: 6 }, width: 60 }, motion, places)!;
    expect(passing.places[25]).toBeCloseTo(4, 12);
    expect(passing.xsOf(3)).toEqual([15, 35, 50]);
    expect(passing.xsOf(4.5)).toEqual([expect.closeTo(57.5, 9)]);
    expect(groundOf({ kind: 'time', span: { from: 0, to: 6 }, width: 60 }, null, null)).toBeNull();
  });

  test('standing on a place counts once', () => {
    expect(crossings(Float64Array.of(0, 1, 1, 1, 2, 0), 1)).toEqual([1, 4.5]);
  });
});

describe('the profile', () => {
  const profile = profileOf(track, ground, 90, null);

  test('runs from its highest rail under the lettering to its lowest above the datum', () => {
    expect(profile.datum).toBe(66);
    expect(profile.yAtX(20)).toBeCloseTo(26, 0);
    expect(profile.yAtX(590)).toBeCloseTo(61, 0);
    // 5.2 m along the falling grade it is 80 mm lower of 200 mm: 14 px of 35.
    expect(profile.yAtX(260)).toBeCloseTo(40, 0);
  });

  test('a level track is drawn level, low in its row', () => {
    const level = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(12)],
      profile: { points: [{ chainage: 0, height: 0.5 }] },
    });
    const drawn = profileOf(level, ground, 90, null);
    expect(new Set(drawn.ys).size).toBe(1);
    expect(drawn.ys[0]).toBe(drawn.datum - 5);
  });

  test('the comb stands 6 px a millimetre, up for high and down for low', () => {
    const comb = combOf(track, ground, 90)!;
    const high = comb.teeth.find((tooth) => tooth.departure > 0)!;
    const low = comb.teeth.find((tooth) => tooth.departure < 0)!;
    expect(high.height).toBeCloseTo(15, 9);
    expect(high.top + high.height).toBe(comb.baseline);
    expect(high.x).toBe(200);
    expect(low.height).toBeCloseTo(6, 9);
    expect(low.top).toBe(comb.baseline);
    expect(low.top + low.height).toBeLessThanOrEqual(90);
  });

  test('larger departures shrink the comb instead of running over the profile', () => {
    const rough = makeTrack({
      ...track.spec,
      profile: {
        ...track.spec.profile,
        strip: {
          supports: [
            { chainage: 1, departure: 0.008 },
            { chainage: 4, departure: -0.006 },
            { chainage: 8, departure: 0 },
          ],
          hinges: [],
        },
      },
    });
    const comb = combOf(rough, ground, 90)!;
    expect(comb.perMillimetre).toBeLessThan(6);
    expect(comb.teeth[0].height / comb.teeth[1].height).toBeCloseTo(8 / 6, 9);
    for (const tooth of comb.teeth) {
      expect(tooth.top).toBeGreaterThanOrEqual(66);
      expect(tooth.top + tooth.height).toBeLessThanOrEqual(90);
    }
  });

  test('a track without supports has no comb', () => {
    const bare = makeTrack({ ...track.spec, profile: { points: track.spec.profile.points } });
    expect(combOf(bare, ground, 90)).toBeNull();
  });
});

describe('the lettering', () => {
  const fonts = { letter: 'x', ui: 'x' };
  const show = { lengthUnit: 'mm', gradeForm: 'one-in' } as const;
  const measure = (text: string) => text.length * 5.5;
  const letters = (over: Partial<Parameters<typeof letterSection>[0]> = {}, width = 600) => {
    const wide = groundOf({ ...axis, width }, null, null)!;
    const profile = profileOf(track, wide, 90, null);
    return letterSection({ track, ground: wide, profile, show, fonts, bad: [], reversed: false, ...over }, measure);
  };
  const written = (task = letters()) => task.texts.map((text) => text.text);

  test('writes grades, heights and vertical curves', () => {
    expect(written()).toEqual(
      ['300.0 · curve 400 mm', '100.0 · curve 500 mm', 'level', '1 in 40.0 · 2.50 % · falling, 2 turns', 'level'].map(
        (text) => text.replaceAll(/(\d) (mm|%)/g, '$1\u2009$2'),
      ),
    );
  });

  test('says climbing to a train that goes the other way, and leads with the chosen form', () => {
    expect(written(letters({ reversed: true })).some((text) => text.includes('climbing'))).toBe(true);
    const percent = written(letters({ show: { lengthUnit: 'mm', gradeForm: 'percent' } }));
    expect(percent.some((text) => text.startsWith('2.50\u2009% · 1 in 40.0'))).toBe(true);
  });

  test('with less room it says less, and nothing overlaps', () => {
    const narrow = written(letters({}, 200));
    expect(narrow).not.toContain('1 in 40.0 · 2.50\u2009% · falling, 2 turns');
    expect(narrow.some((text) => text.startsWith('1 in 40.0'))).toBe(true);
    expect(written(letters({}, 40)).some((text) => text.startsWith('1 in'))).toBe(false);
  });

  test('names the tracks of a route where each begins, and leaves out a name that would run into the next', () => {
    const legs = [
      { trackName: 'Up road', start: 0 },
      { trackName: 'Crossover', start: 4 },
      { trackName: 'Down road', start: 4.1 },
    ];
    const { texts, leaders } = letters({ legs });
    const named = texts.filter(({ className }) => className === 'gwb-leg');
    expect(named.map(({ text }) => text)).toEqual(['Up road', 'Down road']);
    // Both tracks that follow another have a line where they begin: at their share of the width.
    const lines = leaders.filter(({ key }) => key.startsWith('leg')).map(({ x }) => x);
    for (const [index, start] of [4, 4.1].entries()) {
      expect(Math.abs(lines[index] - (600 * start) / track.length)).toBeLessThan(1.5);
    }
    expect(named[1].x).toBeGreaterThan(lines[1]);
  });

  test('what is wrong is written first and marked', () => {
    const { texts, leaders } = letters({ bad: [{ support: 4, chainage: 4, departure: 0.0025 }] });
    expect(texts[0]).toMatchObject({
      text: 'support 5 is 2.5\u2009mm high',
      className: 'gwb-fault',
      anchor: 'start',
      x: 206,
    });
    expect(leaders[0]).toMatchObject({ x: 200, marked: true });
  });

  test('lettering along a line is turned as the line is', () => {
    const grade = letters().texts.find((text) => text.text.startsWith('1 in'))!;
    // 35 px of fall over 400 px of the falling grade.
    expect(grade.turn).toBeCloseTo((Math.atan2(35, 400) * 180) / Math.PI, 0);
  });

  test('a comb beside another is drawn to its scale, whatever it shows itself', () => {
    const grown = makeTrack({
      ...track.spec,
      profile: {
        ...track.spec.profile,
        strip: {
          supports: [
            { chainage: 4, departure: 0.011 },
            { chainage: 8, departure: 0 },
          ],
          hinges: [],
        },
      },
    });
    const comb = combOf(grown, ground, 90)!;
    const old = combOf(track, ground, 90, null, comb)!;
    expect(old.baseline).toBe(comb.baseline);
    const high = old.teeth.find((tooth) => tooth.departure > 0)!;
    expect(high.height / comb.teeth[0].height).toBeCloseTo(2.5 / 11, 9);
  });
});
