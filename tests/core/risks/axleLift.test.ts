import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import { turnVehicle, type Vehicle } from '../../../src/core/stock/index.ts';
import { arc, makeTrack, reverseTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle, variedElements, variedGrades } from '../stock/samples.ts';
import { madeUpTrial, passing } from './samples.ts';

const risk = riskById('axle-lift');
/** Six-coupled: 60 mm of rigid wheelbase. */
const engine = (change: Partial<Vehicle> = {}): Vehicle =>
  sampleVehicle({ pivotSpacing: 0.06, overhang: 0.025, bogies: false }, { kind: 'locomotive', ...change });
/** Level for a metre, then a grade, with no curve between. */
const broken = (grade: number): Track =>
  sampleTrack(
    [straight(2)],
    [
      { chainage: 0, height: 0 },
      { chainage: 1, height: 0 },
      { chainage: 2, height: grade },
    ],
  );
const at = (track: Track, lead: number, vehicle = engine()) =>
  assessRun(madeUpTrial(track, [vehicle], [{ lead }]), [risk])[0]?.worst;

describe('a six-coupled engine with its middle axle at a break of 2 %', () => {
  it('in a dip spans it: the middle hangs half of 2 % of 30 mm, 0.3 mm', () => {
    const worst = at(broken(0.02), 1);
    expect(worst?.value).toBeCloseTo(0.0003, 7);
    expect(worst?.governing).toBe('middle-axle');
    // NEM 310 flanges are 0.6 to 1.2 mm deep: 0.9 ± 0.3 mm.
    expect(worst?.limit).toBeCloseTo(0.0009, 12);
    expect(worst?.margin).toBeCloseTo(0.0006, 7);
    expect(worst?.range).toEqual([expect.closeTo(0.0003, 7), expect.closeTo(0.0009, 7)]);
  });

  it('on a hump rocks over the middle: one end lifts twice as far, 0.6 mm', () => {
    const worst = at(broken(-0.02), 1);
    expect(worst?.value).toBeCloseTo(0.0006, 7);
    expect(worst?.governing).toBe('end-axle');
    expect(worst?.margin).toBeCloseTo(0.0003, 7);
  });

  it('lifts the end away from its weight, as far, wherever the weight is', () => {
    for (const massAhead of [-0.02, -0.004, 0.004, 0.02, 0.04]) {
      expect(at(broken(-0.02), 1, engine({ massAhead }))?.value).toBeCloseTo(0.0006, 7);
    }
  });

  it('keeps its wheels down on the level before the break', () => {
    const worst = at(broken(-0.02), 0.9);
    expect(worst?.value).toBeCloseTo(0, 12);
    expect(worst?.margin).toBeCloseTo(0.0009, 12);
  });

  it('a third of the way past it: the rail under the middle is 10 mm beyond, 0.2 mm off the line through the ends', () => {
    // In a dip: ends at 0 and 40 mm x 2 % = 0.8 mm, the middle of them at 0.4, the rail there at 10 mm x 2 % = 0.2.
    expect(at(broken(0.02), 1.01)?.value).toBeCloseTo(0.0002, 7);
  });
});

describe('an eight-coupled engine over a hump of 2 %', () => {
  const eight = (massAhead = 0) => engine({ axles: 4, massAhead });

  it('stands on both inner axles and lifts both ends by 2 % of 10 mm', () => {
    // Inner axles 10 mm from the break: 1 % x (30 - 10) mm over the line through the ends.
    expect(at(broken(-0.02), 1, eight())?.value).toBeCloseTo(0.0002, 7);
  });

  it('rocks over an inner axle with its weight over it, and lifts the far end by 0.6 mm', () => {
    // From the axle at 40 mm, 0.2 mm up, to the one at 60 mm, 0: the line stands 0.6 mm up at the other end.
    expect(at(broken(-0.02), 1, eight(0.01))?.value).toBeCloseTo(0.0006, 7);
  });
});

describe('an engine on a vertical curve of 5 m', () => {
  it.each([
    [1, 0.00009],
    [-1, 0.00018],
  ])('towards %f lifts a wheel by %f m: 60² / 8 x 5000 mm, twice that on a summit', (way, value) => {
    const curve = sampleTrack(
      [straight(3)],
      [
        { chainage: 0, height: 0 },
        { chainage: 1.5, height: 0, curve: { radius: 5 } },
        { chainage: 3, height: 0.15 * way },
      ],
    );
    // A parabola is gentler away from its level end, by 1.5 x 10 % squared at most.
    expect(Math.abs((at(curve, 1.35)?.value ?? 0) - value)).toBeLessThan(0.01 * value);
  });
});

describe('a coach on bogies of three axles, 42 mm from end to end', () => {
  const long = { pivotSpacing: 0.186, overhang: 0.03 };
  const sixWheeled = sampleVehicle(long, { rigidWheelbase: 0.042, bogieAxles: 3 });
  /** With the break so far ahead of the middle of the front bogie or of the rear one, m. */
  const beside = (grade: number, ahead: number, end: 'front' | 'rear') =>
    at(broken(grade), 1 - ahead + (end === 'front' ? -0.093 : 0.093), sixWheeled);

  // Heights of rail under the axles over the line through the end ones: with the break under the middle axle that is 3 % of 42/4 mm below it in a dip and above it on a hump, and
  // as much less as the break is off the middle, in proportion to the 21 mm to an end axle.
  it.each([0, 0.007, -0.007, 0.014, -0.014, 0.021, -0.03])(
    'bridges a dip of 3 % that is %f m off its middle',
    (ahead) => {
      const hangs = 0.03 * Math.max(0, 0.021 - Math.abs(ahead)) * 0.5;
      for (const end of ['front', 'rear'] as const) {
        // A body over a dip of 3 % covers 186 mm of rail within 0.05 mm, which moves a bogie by half of it.
        expect(Math.abs((beside(0.03, ahead, end)?.value ?? Number.NaN) - hangs)).toBeLessThan(0.03 * 0.00003);
      }
    },
  );

  it.each([0, 0.007, -0.014, 0.03])(
    'rocks on a hump of 3 % that is %f m off its middle: an end lifts twice as far',
    (ahead) => {
      const lifts = 0.03 * Math.max(0, 0.021 - Math.abs(ahead));
      for (const end of ['front', 'rear'] as const) {
        expect(Math.abs((beside(-0.03, ahead, end)?.value ?? Number.NaN) - lifts)).toBeLessThan(0.06 * 0.00003);
      }
    },
  );

  it('says which axle: the middle one in a dip, an end one on a hump; and holds it against the flange', () => {
    expect(beside(0.03, 0, 'rear')?.governing).toBe('middle-axle');
    const hump = beside(-0.03, 0, 'front');
    expect(hump?.governing).toBe('end-axle');
    expect(hump?.margin).toBeCloseTo(0.0009 - 0.00063, 6);
  });

  it.each([
    [1, 1],
    [-1, 2],
  ])('on a vertical curve of 2 m, %f, hangs or lifts by a² / 8R, %f times', (way, times) => {
    // The curve is 200 mm long, from 1.4 m; a lead of 1.407 m puts the middle of the front bogie on its middle, 1.5 m. A parabola is gentler there by 1.5 x 5 % squared.
    const curve = sampleTrack(
      [straight(3)],
      [
        { chainage: 0, height: 0 },
        { chainage: 1.5, height: 0, curve: { radius: 2 } },
        { chainage: 3, height: 0.15 * way },
      ],
    );
    const exact = (times * 0.042 ** 2) / (8 * 2);
    expect(Math.abs((at(curve, 1.407, sixWheeled)?.value ?? 0) - exact)).toBeLessThan(0.01 * exact);
  });

  it.each([
    [0.03, 0.000315],
    [-0.03, 0.00063],
  ])(
    'is found at a break of %f between frames 47 mm apart, on the straight and in a curve, either way',
    (grade, value) => {
      for (const element of [straight(2), arc(0.5, 4)]) {
        const track = sampleTrack(
          [element],
          [
            { chainage: 0, height: 0 },
            { chainage: 1, height: 0 },
            { chainage: 2, height: grade },
          ],
        );
        const moments = passing(0.6137, 1.5, 0.047);
        for (const run of [moments, moments.toReversed()]) {
          const { worst } = assessRun(madeUpTrial(track, [sixWheeled], run), [risk])[0];
          // Chainages between frames are taken as even: some micrometres of rail, times the grade.
          expect(Math.abs((worst?.value ?? 0) - value)).toBeLessThan(5e-7);
        }
      }
    },
  );

  it('lifts nothing on an even grade in a curve, and on two axles says nothing', () => {
    const even = sampleTrack(
      [straight(0.5), arc(0.5, 2), straight(1)],
      [
        { chainage: 0, height: 0 },
        { chainage: 0.4, height: 0 },
        { chainage: 2.4, height: 0.06 },
      ],
    );
    expect(at(even, 1, sixWheeled)?.value).toBeCloseTo(0, 12);
    expect(at(broken(0.03), 1, sampleVehicle(long, { rigidWheelbase: 0.042, bogieAxles: 2 }))).toBeUndefined();
  });
});

describe('who can lift a wheel', () => {
  it('not vehicles on bogies of two axles, nor on two axles, nor anything where the grade never changes', () => {
    const bogies = sampleVehicle({ pivotSpacing: 0.06, overhang: 0.025 }, { kind: 'locomotive' });
    expect(at(broken(-0.02), 1, bogies)).toBeUndefined();
    expect(at(broken(-0.02), 1, engine({ kind: 'wagon' }))).toBeUndefined();
    expect(at(broken(-0.02), 1, engine({ axles: 2 }))).toBeUndefined();
    expect(at(sampleTrack([straight(2)], [{ chainage: 0, height: 0 }]), 1)).toBeUndefined();
  });

  it('a wagon of three axles can, and the van behind it says nothing', () => {
    const wagon = engine({ kind: 'wagon', axles: 3 });
    const van = sampleVehicle({ pivotSpacing: 0.06, overhang: 0.025 });
    const row = assessRun(madeUpTrial(broken(-0.02), [wagon, van], [{ lead: 1 }]), [risk])[0];
    expect([...row.margins]).toEqual([expect.closeTo(0.0003, 7), Number.NaN]);
  });
});

describe('lift over a varied route', () => {
  const route = (radius: number) => sampleTrack(variedElements(radius), variedGrades);
  const train = [engine({ massAhead: 0.006 }), engine({ axles: 4, massAhead: -0.012 })];
  const margins = (track: Track, vehicles: readonly Vehicle[], from: number, to: number) =>
    assessRun(madeUpTrial(track, vehicles, passing(from, to, 0.05)), [risk])[0].margins;

  it('is the mirror image’s, never more than the flange, and at its anchor 0.9 mm on the first straight', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.55, max: 1.2, noNaN: true }), (radius) => {
        const track = route(radius);
        const mirrored = makeTrack({
          ...track.spec,
          elements: track.spec.elements.map((element) => ({
            ...element,
            startCurvature: -element.startCurvature,
            endCurvature: -element.endCurvature,
          })),
        });
        const one = margins(track, train, 0.4, track.length - 0.2);
        const other = margins(mirrored, train, 0.4, track.length - 0.2);
        expect(one[0]).toBeCloseTo(0.0009, 12);
        one.forEach((margin, i) => {
          expect(other[i]).toBeCloseTo(margin, 9);
          expect(margin).toBeLessThanOrEqual(0.0009 + 1e-12);
        });
      }),
      { numRuns: 10 },
    );
  });

  it('is the same for the engine turned on the track turned', () => {
    const track = route(0.8);
    const [one] = train;
    for (let lead = 0.5; lead < 3.5; lead += 0.13) {
      const there = at(track, lead, one)?.value ?? Number.NaN;
      const back = at(reverseTrack(track), track.length - lead, turnVehicle(one))?.value ?? Number.NaN;
      expect(back).toBeCloseTo(there, 9);
    }
  });
});
