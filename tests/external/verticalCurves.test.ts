import { describe, expect, it } from 'vitest';
import { brent } from '../../src/core/math/index.ts';
import { makeTrack, straight, type Track, trackPoint } from '../../src/core/track/index.ts';

/**
 * Highway-surveying examples, in their own units: geometry does not care whether a unit is a foot or a metre. Chainages are
 * counted from the station named. Elevations are printed to a thousandth or a hundredth, and checked to half of that.
 */
interface Example {
  /** Point of vertical intersection, counted from station 0, and its elevation. */
  readonly at: number;
  readonly height: number;
  readonly before: number;
  readonly after: number;
  readonly length: number;
}

function curve({ at, height, before, after, length }: Example): Track {
  return makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(2 * at)],
    profile: {
      points: [
        { chainage: 0, height: height - before * at },
        { chainage: at, height, curve: { length } },
        { chainage: 2 * at, height: height + after * at },
      ],
    },
  });
}

const heights = (track: Track, chainages: readonly number[]): number[] => chainages.map((s) => trackPoint(track, s).z);

/** Where the grade is 0. */
const turningPoint = (track: Track, from: number, to: number): number =>
  brent((s) => trackPoint(track, s).grade, from, to);

describe('vertical curves of surveying courses', () => {
  it('summit of +5 and -3.5 % over 500 ft, PVI 56+50 at 1325.00', () => {
    // Open-access survey course, part VIII "curves", solutions "ss vert curves 1", problem 2. From station 50+00.
    const track = curve({ at: 650, height: 1325, before: 0.05, after: -0.035, length: 500 });
    const stations = [400, 500, 600, 700, 800, 900];
    expect(heights(track, stations)).toEqual(
      [1312.5, 1316.65, 1319.1, 1319.85, 1318.9, 1316.25].map((z) => expect.closeTo(z, 9)),
    );
    expect(stations.map((s) => trackPoint(track, s).grade * 100)).toEqual(
      [5, 3.3, 1.6, -0.1, -1.8, -3.5].map((g) => expect.closeTo(g, 11)),
    );
    // High point 56+94.118, elevation 1319.853.
    const top = turningPoint(track, 400, 900);
    expect(top).toBeCloseTo(694.118, 3);
    expect(trackPoint(track, top).z).toBeCloseTo(1319.853, 3);
  });

  it('sag of -4.00 and +2.75 % over 425 ft from BVC 88+00 at 1220.000', () => {
    // The same course, problem 3. Its page prints 1216.147 at 91+00, a slip of the pen for 1215.147: the neighbours 1215.176
    // at 90+00 and 1216.706 at 92+00 and the low point between them allow nothing else. From station 80+00.
    const track = curve({ at: 1012.5, height: 1220 - 0.04 * 212.5, before: -0.04, after: 0.0275, length: 425 });
    expect(heights(track, [800, 900, 1000, 1100, 1200, 1225])).toEqual(
      [1220, 1216.794, 1215.176, 1215.147, 1216.706, 1217.344].map((z) => expect.closeTo(z, 3)),
    );
    expect(trackPoint(track, 1100).z).not.toBeCloseTo(1216.147, 1);
    // Low point 90+51.852, elevation 1214.963.
    const low = turningPoint(track, 800, 1225);
    expect(low).toBeCloseTo(1051.852, 3);
    expect(trackPoint(track, low).z).toBeCloseTo(1214.963, 3);
  });

  it('summit of 500 ft from PVC 1067.29 over PVI 1070.64 to PVT 1066.215', () => {
    // mathhelpforum.com, thread 118633. The elevations give +1.34 and -1.77 %. PVC at chainage 500 here.
    const before = (1070.64 - 1067.29) / 250;
    const after = (1066.215 - 1070.64) / 250;
    const track = curve({ at: 750, height: 1070.64, before, after, length: 500 });
    expect([before, after]).toEqual([expect.closeTo(0.0134, 12), expect.closeTo(-0.0177, 12)]);
    // 1068.32 is printed to a hundredth.
    expect(heights(track, [600])).toEqual([expect.closeTo(1068.32, 2)]);
    expect(heights(track, [700, 750, 800, 900])).toEqual(
      [1068.726, 1068.696, 1068.511, 1067.674].map((z) => expect.closeTo(z, 3)),
    );
    // High point 2+15.43, elevation 1068.733.
    const top = turningPoint(track, 500, 1000);
    expect(top - 500).toBeCloseTo(215.43, 2);
    expect(trackPoint(track, top).z).toBeCloseTo(1068.733, 3);
  });

  it('summit of +3 and -4 % over 2170 m, PVI 345+60 at 250', () => {
    // ru.scribd.com, document 410115058. Chainage 1085 here is the PVC.
    const track = curve({ at: 2170, height: 250, before: 0.03, after: -0.04, length: 2170 });
    const from = 1085;
    expect(
      heights(
        track,
        [0, 125, 525, 925, 1525, 2170].map((x) => from + x),
      ),
    ).toEqual([217.45, 220.95, 228.75, 231.4, 225.69, 206.6].map((z) => expect.closeTo(z, 2)));
    const top = turningPoint(track, from, from + 2170);
    expect(top - from).toBeCloseTo(930, 9);
    expect(trackPoint(track, top).z).toBeCloseTo(231.4, 9);
  });
});
