import { describe, expect, it } from 'vitest';
import {
  type GradePoint,
  makeTrack,
  plannedHeight,
  straight,
  type Track,
  TrackError,
  trackPoint,
} from '../../../../src/core/track/index.ts';

const climb = (length: number, points: readonly GradePoint[]): Track =>
  makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(length)], profile: { points } });

function problemOf(make: () => unknown): TrackError {
  try {
    make();
  } catch (error) {
    if (error instanceof TrackError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

/** 0 to 2 % to -1 % with the points at 1 m and 2 m. */
const hill = (first: GradePoint['curve'], second: GradePoint['curve']): GradePoint[] => [
  { chainage: 0, height: 0 },
  { chainage: 1, height: 0, ...(first && { curve: first }) },
  { chainage: 2, height: 0.02, ...(second && { curve: second }) },
  { chainage: 3, height: 0.01 },
];

describe('the grade line', () => {
  it('is level through one point alone', () => {
    const track = climb(3, [{ chainage: 1, height: 0.07 }]);
    expect([-1, 0, 2, 5].map((s) => trackPoint(track, s).z)).toEqual([0.07, 0.07, 0.07, 0.07]);
  });

  it('continues the first and the last grade', () => {
    const track = climb(4, [
      { chainage: 1, height: 0 },
      { chainage: 2, height: 0.02 },
      { chainage: 3, height: 0.01 },
    ]);
    expect(trackPoint(track, 0).z).toBeCloseTo(-0.02, 15);
    expect(trackPoint(track, 4).z).toBeCloseTo(0, 15);
    expect(trackPoint(track, -1).z).toBeCloseTo(-0.04, 15);
    expect(trackPoint(track, 5).z).toBeCloseTo(-0.01, 15);
  });

  it('passes below the point of a sag by a quarter of half the curve times the change of grade', () => {
    // Offset of a parabola from the point of intersection: L·A/8 = 0.6·0.02/8.
    const track = climb(3, hill({ length: 0.6 }, { length: 0.4 }));
    expect(trackPoint(track, 1).z).toBeCloseTo(0.0015, 15);
    expect(trackPoint(track, 2).z).toBeCloseTo(0.02 - (0.4 * 0.03) / 8, 15);
    expect(trackPoint(track, 0.7).z).toBeCloseTo(0, 15);
    expect(trackPoint(track, 1.3)).toMatchObject({ z: expect.closeTo(0.006, 15), grade: expect.closeTo(0.02, 14) });
    expect(trackPoint(track, 1.1).verticalCurvature).toBeCloseTo(0.02 / 0.6, 14);
  });

  it('takes a curve by radius as radius times change of grade long', () => {
    const [byRadius, byLength] = [
      climb(3, hill({ radius: 25 }, { radius: 20 })),
      climb(3, hill({ length: 0.5 }, { length: 0.6 })),
    ];
    for (let s = 0; s <= 3; s += 0.05) expect(trackPoint(byRadius, s).z).toBeCloseTo(trackPoint(byLength, s).z, 15);
    expect(trackPoint(byRadius, 2).verticalCurvature).toBeCloseTo(-1 / 20, 14);
  });

  it('takes a curve of no length or no radius for none: the grade breaks', () => {
    for (const none of [{ length: 0 }, { radius: 0 }]) {
      expect(plannedHeight(climb(3, hill(none, none)), 2)).toBeCloseTo(0.02, 12);
    }
  });

  it('lets curves touch each other and the ends', () => {
    const track = climb(2.5, hill({ length: 1 }, { length: 1 }));
    expect(trackPoint(track, 1.5).grade).toBeCloseTo(0.02, 14);
    const fromStart = climb(1.4, [
      { chainage: 0.2, height: 0 },
      { chainage: 0.7, height: 0, curve: { length: 1 } },
      { chainage: 1.2, height: 0.01 },
    ]);
    expect(trackPoint(fromStart, 0.1)).toMatchObject({ z: 0, grade: 0 });
    expect(trackPoint(fromStart, 0.7).z).toBeCloseTo((1 * 0.02) / 8, 15);
    expect(trackPoint(fromStart, 1.4).z).toBeCloseTo(0.014, 15);
  });

  it('ignores a curve where no grade changes: at the first and last point, and between equal grades', () => {
    const track = climb(1, [
      { chainage: 0, height: 0, curve: { length: 5 } },
      { chainage: 0.5, height: 0.01, curve: { length: 5 } },
      { chainage: 1, height: 0.02, curve: { radius: 50 } },
    ]);
    expect(trackPoint(track, 0.25).z).toBeCloseTo(0.005, 15);
    expect(trackPoint(track, 0.25).verticalCurvature).toBe(0);
  });

  it('refuses curves that overlap, with where and by how much', () => {
    const problem = problemOf(() => climb(3, hill({ length: 1.2 }, { length: 0.9 })));
    expect(problem.message).toBe('The vertical curves at chainage 1 m and 2 m overlap by 0.05 m.');
    expect(problem.problem).toBe('curves-overlap');
    expect(problem.chainage).toBe(2);
    expect(problem.amount).toBeCloseTo(0.05, 14);
    expect(problem).toBeInstanceOf(RangeError);
  });

  it('refuses a curve that runs past the next point although that has none', () => {
    const points = hill({ length: 2.5 }, undefined).map((point) => ({ ...point, chainage: point.chainage + 1 }));
    expect(problemOf(() => climb(5, points)).message).toBe(
      'The vertical curves at chainage 1 m and 2 m overlap by 0.25 m.',
    );
    expect(problemOf(() => climb(5, hill(undefined, { length: 2.2 }))).amount).toBeCloseTo(0.1, 14);
  });

  it('refuses a curve beyond either end of the track', () => {
    const atStart = problemOf(() => climb(3, hill({ length: 2.02 }, undefined)));
    expect(atStart.message).toBe('The vertical curve at chainage 1 m reaches 0.01 m beyond the start of the track.');
    const atEnd = problemOf(() => climb(2.25, hill(undefined, { length: 0.8 })));
    expect(atEnd.message).toBe('The vertical curve at chainage 2 m reaches 0.15 m beyond the end of the track.');
    expect([atStart.problem, atEnd.problem]).toEqual(['curve-beyond-end', 'curve-beyond-end']);
  });

  it('refuses points that do not rise, none at all, and numbers that are none', () => {
    expect(problemOf(() => climb(1, [])).problem).toBe('no-grade-points');
    const back = problemOf(() =>
      climb(1, [
        { chainage: 0.5, height: 0 },
        { chainage: 0.2, height: 0 },
      ]),
    );
    expect(back.message).toBe(
      'Grade points must rise in chainage: the one at 0.2 m follows one that is 0.3 m further on.',
    );
    expect(problemOf(() => climb(1, [{ chainage: 0, height: Number.NaN }])).problem).toBe('bad-grade-point');
    const twice = [
      { chainage: 0.5, height: 0 },
      { chainage: 0.5, height: 1 },
    ];
    expect(problemOf(() => climb(1, twice)).problem).toBe('points-not-rising');
    expect(problemOf(() => climb(3, hill({ radius: -5 }, undefined))).problem).toBe('bad-vertical-curve');
    expect(problemOf(() => climb(3, hill({ length: Number.POSITIVE_INFINITY }, undefined))).problem).toBe(
      'bad-vertical-curve',
    );
  });
});

describe('plannedHeight', () => {
  it('leaves the strip out and goes on straight outside', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(2)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 1, height: 0.02 },
        ],
        strip: {
          supports: [
            { chainage: 0, departure: 0.001 },
            { chainage: 2, departure: 0.003 },
          ],
          hinges: [],
        },
      },
    });
    expect([-1, 1, 3].map((s) => plannedHeight(track, s))).toEqual([-0.02, 0.02, 0.06]);
    expect(trackPoint(track, 1).z).toBeCloseTo(0.022, 15);
  });
});
