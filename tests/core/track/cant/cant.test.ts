import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arc,
  type CantSpec,
  gradeBreaks,
  makeTrack,
  plannedHeight,
  reverseTrack,
  straight,
  type Track,
  TrackError,
  trackPoint,
  transition,
} from '../../../../src/core/track/index.ts';
import { anyFraction, anySpec } from '../arbitraryTracks.ts';

/** A left-hand curve of 0.6 m eased over 0.3 m, level, with 0.06 rad of cant run in over the easements. */
const canted = (lever: number, full = 0.06): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(0.5), transition(0.3, 0, 1 / 0.6), arc(0.6, 1), transition(0.3, 1 / 0.6, 0), straight(0.5)],
    profile: { points: [{ chainage: 0, height: 0.1 }] },
    cant: {
      points: [
        { chainage: 0.5, cant: 0 },
        { chainage: 0.8, cant: full },
        { chainage: 1.4, cant: full },
        { chainage: 1.7, cant: 0 },
      ],
      lever,
    },
  });

const refusal = (cant: CantSpec): TrackError => {
  try {
    makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(1)], profile: canted(0).spec.profile, cant });
  } catch (error) {
    if (error instanceof TrackError) return error;
  }
  throw new Error('nothing was refused');
};

describe('cant', () => {
  it('runs in over the easement, stays through the curve and runs out', () => {
    const track = canted(0);
    expect(trackPoint(track, 0.2)).toMatchObject({ cant: 0, twist: 0 });
    // Two thirds of the way along the ramp: 0.04 rad, 0.06 rad in 0.3 m.
    expect(trackPoint(track, 0.7)).toMatchObject({ cant: expect.closeTo(0.04, 15), twist: expect.closeTo(0.2, 14) });
    expect(trackPoint(track, 1.1)).toMatchObject({ cant: expect.closeTo(0.06, 15), twist: 0 });
    expect(trackPoint(track, 1.65)).toMatchObject({ cant: expect.closeTo(0.01, 14), twist: expect.closeTo(-0.2, 14) });
  });

  it('agrees in sign with curvature where it leans inwards', () => {
    const { cant, curvature } = trackPoint(canted(0), 1.1);
    expect(Math.sign(cant)).toBe(Math.sign(curvature));
  });

  it('stays at the ends and beyond them, without twist', () => {
    const track = makeTrack({
      ...canted(0).spec,
      cant: {
        points: [
          { chainage: -1, cant: -0.02 },
          { chainage: 9, cant: 0.03 },
        ],
        lever: 0,
      },
    });
    expect(trackPoint(track, 0).cant).toBeCloseTo(-0.015, 15);
    expect(trackPoint(track, -0.3)).toMatchObject({ cant: expect.closeTo(-0.015, 15), twist: 0 });
    expect(trackPoint(track, track.length + 1)).toMatchObject({
      cant: trackPoint(track, track.length).cant,
      twist: 0,
    });
  });

  it('lifts the centreline by half of what the high rail is packed up, and not at all when turned about it', () => {
    const packed = canted(0.00825);
    // 0.06 rad over half of 16.5 mm is 0.495 mm; on the ramp of 0.3 m that is a grade of 0.165 %.
    expect(trackPoint(packed, 1.1).z - 0.1).toBeCloseTo(0.000495, 15);
    expect(trackPoint(packed, 0.65).grade).toBeCloseTo(0.00165, 14);
    expect(plannedHeight(packed, 1.1)).toBeCloseTo(0.100495, 15);
    expect(gradeBreaks(packed).map((place) => place.chainage)).toEqual(
      [0.5, 0.8, 1.4, 1.7].map((s) => expect.closeTo(s, 12)),
    );
    expect(trackPoint(canted(0), 1.1).z).toBe(0.1);
  });

  it('lifts by lever times the amount of the lean whichever rail is high, also where it changes hands', () => {
    fc.assert(
      fc.property(anySpec, anyFraction, (spec, fraction) => {
        fc.pre(spec.cant !== undefined);
        const track = makeTrack(spec);
        const { cant: _cant, ...level } = spec;
        const s = fraction * track.length;
        const lift = trackPoint(track, s).z - trackPoint(makeTrack(level), s).z;
        expect(lift).toBeCloseTo((spec.cant?.lever ?? 0) * Math.abs(trackPoint(track, s).cant), 13);
      }),
    );
  });

  it('of 0 everywhere changes no bit', () => {
    fc.assert(
      fc.property(anySpec, anyFraction, (spec, fraction) => {
        const { cant: _cant, ...level } = spec;
        const none = makeTrack(level);
        const zero = makeTrack({ ...level, cant: { points: [{ chainage: 0, cant: 0 }], lever: 0 } });
        const s = fraction * none.length;
        expect(trackPoint(zero, s)).toEqual(trackPoint(none, s));
      }),
    );
  });

  it('keeps its high rail when the track is run the other way', () => {
    const back = reverseTrack(canted(0.00825));
    expect(trackPoint(back, 1.1).cant).toBeCloseTo(-0.06, 15);
    expect(trackPoint(back, 1.1).curvature).toBeCloseTo(-1 / 0.6, 12);
  });

  it('is refused when its places do not rise, are none, or lean too far', () => {
    const twice = [
      { chainage: 1, cant: 0 },
      { chainage: 0.5, cant: 0 },
    ];
    expect(refusal({ points: twice, lever: 0 })).toMatchObject({
      problem: 'cant-not-rising',
      chainage: 0.5,
      amount: 0.5,
    });
    expect(refusal({ points: [], lever: 0 }).problem).toBe('bad-cant');
    expect(refusal({ points: [{ chainage: 0, cant: 0.9 }], lever: 0 }).message).toMatch(
      /at most 0.5 rad either way, not 0.9/,
    );
    expect(refusal({ points: [{ chainage: 0, cant: Number.NaN }], lever: 0 }).problem).toBe('bad-cant');
    expect(refusal({ points: [{ chainage: 0, cant: 0 }], lever: -1 }).problem).toBe('bad-cant');
  });
});
