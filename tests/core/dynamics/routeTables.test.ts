import { describe, expect, it } from 'vitest';
import { defaultForceModel, run } from '../../../src/core/dynamics/index.ts';
import { shiftOnCircle, sketchRoute } from '../../../src/core/dynamics/routeSketch.ts';
import {
  gripShareAt,
  pivotShift,
  type RouteTables,
  tabulatedHeight,
  tabulateRoute,
  VEHICLE_STRIDE,
} from '../../../src/core/dynamics/routeTables.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, helix, makeTrack, straight, type Track, transition } from '../../../src/core/track/index.ts';
import { sampleTrack, variedElements, variedGrades } from '../stock/samples.ts';
import { at, engine, trial, wagon } from './trains.ts';

const long = (c = {}) =>
  wagon(0.12, c, { pivotSpacing: 0.186, frontOverhang: 0.03, rearOverhang: 0.03, bodyLength: 0.246, bogies: true });
const short = (c = {}) => wagon(0.06, c, { frontOverhang: 0.025, rearOverhang: 0.015 });
const circle = (radius: number) => sampleTrack([arc(radius, 5)]);
const tablesOn = (track: Track, vehicles: readonly Vehicle[]) =>
  tabulateRoute(track, { name: 'test', vehicles }, defaultForceModel, 0, track.length);

describe('the length of a joint in a curve', () => {
  it.each([0.4, 0.6, 1.5])(
    'on a radius of %f m is what two chords on a circle leave between their pivots',
    (radius) => {
      // Chord of 2·half: middle √(R² - half²) from the centre; a pivot at p along it is at the corner of a right triangle.
      const track = circle(radius);
      const [a, b] = [long(), short()];
      const tables = tablesOn(track, [a, b]);
      const corner = (half: number, p: number) => {
        const middle = Math.sqrt(radius ** 2 - half ** 2);
        return { out: Math.hypot(middle, p), round: Math.atan2(p, middle) };
      };
      // Pivots: 93 + 30 - 10 behind the long one's middle, 30 + 25 - 10 ahead of the short one's; both shanks 20 mm.
      const [rear, front] = [corner(0.093, -0.113), corner(0.03, 0.045)];
      const between = (0.113 + 0.045 + 0.04) / radius + rear.round - front.round;
      const distance = Math.sqrt(rear.out ** 2 + front.out ** 2 - 2 * rear.out * front.out * Math.cos(between));
      expect(pivotShift(tables, 0, 0.5 * track.length)).toBeCloseTo(distance - 0.04, 10);
    },
  );

  it('is shorter by the lead of guides, which a run over easements books without losing energy', () => {
    const guide = { lengthening: 0.003, fullSwing: 0.3 };
    const plain = tablesOn(circle(0.5), [long(), long()]);
    const guided = tablesOn(circle(0.5), [long({ guide }), long({ guide })]);
    expect(pivotShift(guided, 0, 1.2) - pivotShift(plain, 0, 1.2)).toBeLessThan(-0.002);
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(2), transition(0.4, 0, 2), arc(0.5, 4), transition(0.4, 2, 0), straight(2)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const train = (c: object) => [engine(0.4, {}, c), long(c), long(c), long(c)];
    const length = (c: object) => {
      const result = run(trial(track, train(c), [at(0, 0.5, 1)], { script: { start: 1.9, timeLimit: 11 } }));
      expect(Math.abs(result.energy.residual)).toBeLessThan(1e-6 * result.energy.motor);
      const last = (result.frames - 1) * 4;
      expect(result.chainage[last]!).toBeGreaterThan(3.6);
      return result.chainage[last]! - result.chainage[last + 3]!;
    };
    // Three joints, each led out at both sides; swings between an engine and a coach are the smaller.
    expect(length({ guide }) - length({})).toBeGreaterThan(0.006);
    expect(length({ guide }) - length({})).toBeLessThan(0.018);
  });
});

describe('the load on driven axles along a route', () => {
  const axles = [0.03, 0, -0.03].map((ahead, k) => ({ ahead, driven: k > 0, share: 1 / 3, stiffness: 1e7 }));
  const rigid = engine(0.3, { drivenMass: 0.2, axles });
  const kink = (change: number): Track =>
    makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(4)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 2, height: 0 },
          { chainage: 4, height: 2 * change },
        ],
      },
    });

  it('is the level one on any constant grade, and everywhere where no axles are named', () => {
    const tables = tablesOn(kink(0.03), [rigid]);
    expect(gripShareAt(tables, 0, 1.5)).toBeCloseTo(1, 9);
    expect(gripShareAt(tables, 0, 3)).toBeCloseTo(1, 9);
    expect(gripShareAt(tablesOn(kink(0.03), [engine(0.3)]), 0, 2)).toBe(1);
  });

  it('of a rigid frame over a sag kink stands on its end axles: half on the one driven end, 3/4 of the level load', () => {
    const tables = tablesOn(kink(0.03), [rigid]);
    expect(gripShareAt(tables, 0, 2)).toBeCloseTo(0.5 / (2 / 3), 3);
  });

  it('of a rigid frame over a summit kink stands on its middle and is whole', () => {
    // Balanced on the driven middle axle: all of the weight is on a driven wheel.
    expect(gripShareAt(tablesOn(kink(-0.03), [rigid]), 0, 2)).toBeCloseTo(1 / (2 / 3), 3);
  });

  it('of sprung axles hardly changes', () => {
    const sprung = engine(0.3, { drivenMass: 0.2, axles: axles.map((one) => ({ ...one, stiffness: 200 })) });
    expect(Math.abs(gripShareAt(tablesOn(kink(0.03), [sprung]), 0, 2) - 1)).toBeLessThan(0.03);
  });

  it('of each of two engines is its own', () => {
    // The one stands on its end axles over a sag kink, of which one drives; the other drives all, and keeps its weight on them wherever it is.
    const whole = engine(0.4, { axles: axles.map((one) => ({ ...one, driven: true })) });
    const result = run(trial(kink(0.03), [whole, rigid], [at(0, 0.3, 0)], { script: { start: 1.9, timeLimit: 3 } }));
    const least = [0, 1].map((e) => {
      // From the first step on.
      const limits = Array.from({ length: result.frames - 1 }, (_, f) => result.gripLimit[2 * (f + 1) + e]!);
      return Math.min(...limits) / Math.max(...limits);
    });
    // Both pass the kink. Of the pitch alone 1 - cos(atan 0.03).
    expect(result.chainage[2 * (result.frames - 1) + 1]!).toBeGreaterThan(2.05);
    expect(least[0]).toBeGreaterThan(1 - 5e-4);
    expect(least[1]).toBeLessThan(0.76);
    expect(least[1]).toBeGreaterThan(0.74);
  });

  it('leaves an engine three quarters of its grip at a kink that it takes whole on axles without names', () => {
    const kinked = kink(0.03);
    const train = (front: Vehicle) => [front, ...Array.from({ length: 6 }, () => wagon(0.1))];
    const outcome = (front: Vehicle) =>
      run(
        trial(kinked, train(front), [at(0, 0.3, 3)], {
          script: { start: 1.2, finish: 3.9, timeLimit: 40 },
        }),
      );
    const drive = { drivenMass: 0.2, adhesion: 0.23, slidingAdhesion: 0.2, stallForce: 3 };
    const plain = outcome(engine(0.3, drive));
    const unsprung = outcome(engine(0.3, { ...drive, axles }));
    const least = (column: Float64Array) => Math.min(...column.slice(1));
    expect(least(unsprung.gripLimit) / least(plain.gripLimit)).toBeCloseTo(0.75, 2);
    expect(plain.outcome).toBe('arrived');
  });
});

describe('a sketch of the route', () => {
  const vehicles = [engine(0.4), long(), short(), long({ mount: 'bogie' }), short()];
  const greatest = (a: RouteTables, b: RouteTables, column: number) => {
    let worst = 0;
    for (let k = column; k < a.vehicle.length; k += VEHICLE_STRIDE) {
      worst = Math.max(worst, Math.abs(a.vehicle[k]! - b.vehicle[k]!));
    }
    return worst;
  };

  it('is the exact table in a helix', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [helix(0.6, 2)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 7, height: 0.14 },
        ],
      },
    });
    const train = { name: 'test', vehicles };
    const exact = tabulateRoute(track, train, defaultForceModel, 1, 6, 0.02);
    const sketch = sketchRoute(track, train, defaultForceModel, 1, 6, 0.02);
    for (const column of [0, 1, 2, 3]) expect(greatest(exact, sketch, column)).toBeLessThan(2e-5);
    // Bodies across a 2 % helix are a little longer in space than on the level circle: hundredths of a millimetre a joint.
    for (let k = 0; k < exact.joint.length; k++) {
      expect(Math.abs(exact.joint[k]! - sketch.joint[k]!)).toBeLessThan(3e-5);
    }
    expect(Math.abs(tabulatedHeight(exact, 1, 5) - tabulatedHeight(sketch, 1, 5))).toBeLessThan(1e-4);
  });

  it('stays near it on a route with everything on it', () => {
    const track = sampleTrack(variedElements(0.8), variedGrades);
    const train = { name: 'test', vehicles };
    const exact = tabulateRoute(track, train, defaultForceModel, 0.3, track.length - 0.3, 0.01);
    const sketch = sketchRoute(track, train, defaultForceModel, 0.3, track.length - 0.3, 0.01);
    // A break of grade of 1.8 % is spread over a node of 10 mm: 1.8e-4 of height.
    expect(greatest(exact, sketch, 0)).toBeLessThan(0.018);
    expect(greatest(exact, sketch, 1)).toBeLessThan(1e-3);
    expect(Math.abs(tabulatedHeight(exact, 2, 3) - tabulatedHeight(sketch, 2, 3))).toBeLessThan(2e-4);
  });

  it('knows that nothing shifts on straight track', () => {
    expect(shiftOnCircle({ leading: long(), trailing: short() }, 0)).toBe(0);
    expect(Math.abs(shiftOnCircle({ leading: long(), trailing: short() }, 1e-4))).toBeLessThan(1e-9);
  });
});
