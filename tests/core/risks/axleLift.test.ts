import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import { turnVehicle, type Vehicle } from '../../../src/core/stock/index.ts';
import { makeTrack, reverseTrack, straight, type Track } from '../../../src/core/track/index.ts';
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

describe('who can lift a wheel', () => {
  it('not vehicles on bogies, nor on two axles, nor anything where the grade never changes', () => {
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
