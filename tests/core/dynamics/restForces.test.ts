import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { restForces, run } from '../../../src/core/dynamics/index.ts';
import { placeCoupled } from '../../../src/core/stock/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, makeTrack, type Track } from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

const g = 9.80665;

/** Vehicles one behind the other at their joints' free length, the first with its origin at `lead`. */
function standing(track: Track, vehicles: readonly Vehicle[], lead: number): number[] {
  const places = [lead];
  for (let i = 1; i < vehicles.length; i++) {
    places.push(placeCoupled(track, vehicles[i - 1]!, vehicles[i]!, places[i - 1]!));
  }
  return places;
}

const forcesOn = (track: Track, vehicles: readonly Vehicle[], flangeFriction = 0.15) =>
  restForces(trial(track, vehicles, [], { forces: { flangeFriction } }), standing(track, vehicles, track.length / 2));

describe('forces in a parked train', () => {
  it('on the level: each joint carries what either part of the train can hold', () => {
    // Wagons of 100, 200 and 300 g hold 1.5 % of their weight: 14.7, 29.4 and 44.1 mN, and a joint what the weaker side holds.
    const found = forcesOn(level(4), [wagon(0.1), wagon(0.2), wagon(0.3)]);
    const unit = 0.015 * g * 0.1;
    expect(found?.greatest[0]).toBeCloseTo(unit, 12);
    expect(found?.least[0]).toBeCloseTo(-unit, 12);
    expect(found?.greatest[1]).toBeCloseTo(3 * unit, 12);
    expect(found?.least[1]).toBeCloseTo(-3 * unit, 12);
  });

  it('on a grade that friction cannot hold: there are none, until a worm locks the engine ahead', () => {
    const grade = 0.03;
    const wagons = [wagon(0.1), wagon(0.1)];
    expect(forcesOn(level(4, grade), wagons)).toBeNull();
    expect(forcesOn(level(4, grade), [engine(0.3, { worm: false }), ...wagons])).toBeNull();
    const found = forcesOn(level(4, grade), [engine(0.3), ...wagons]);
    const [sine, cosine] = [grade / Math.hypot(1, grade), 1 / Math.hypot(1, grade)];
    // The last wagon hangs with its weight on the grade, give or take its friction; the joint before it with both.
    expect(found?.least[1]).toBeCloseTo(0.1 * g * (sine - 0.015 * cosine), 9);
    expect(found?.greatest[1]).toBeCloseTo(0.1 * g * (sine + 0.015 * cosine), 9);
    expect(found?.least[0]).toBeCloseTo(0.2 * g * (sine - 0.015 * cosine), 9);
    expect(found?.greatest[0]).toBeCloseTo(0.2 * g * (sine + 0.015 * cosine), 9);
  });

  it('a light engine stands by its grip and no further', () => {
    // 22 % of grip and 1.5 % of friction, against the sine of the grade over its cosine.
    expect(forcesOn(level(4, 0.23), [engine(0.3)])).not.toBeNull();
    expect(forcesOn(level(4, 0.24), [engine(0.3)])).toBeNull();
  });

  it('agrees with every pair of forces tried one by one, in a curve and on a grade', () => {
    const gram = fc.integer({ min: 50, max: 400 });
    const share = fc.integer({ min: 5, max: 40 });
    fc.assert(
      fc.property(
        gram,
        gram,
        gram,
        share,
        fc.integer({ min: -40, max: 40 }),
        fc.integer({ min: 0, max: 15 }),
        (a, b, c, rolling, grade, flange) => {
          const flangeFriction = flange / 10;
          const radius = 0.6;
          const length = 3;
          const track = makeTrack({
            start: { x: 0, y: 0, heading: 0 },
            elements: [arc(radius, length / radius)],
            profile: {
              points: [
                { chainage: 0, height: 0 },
                { chainage: length, height: (grade / 1000) * length },
              ],
            },
          });
          const vehicles = [a, b, c].map((grams) =>
            wagon(grams / 1000, {}, { rolling: { coulomb: rolling / 1000, perSpeed: 0, breakaway: 1.3 } }),
          );
          const found = forcesOn(track, vehicles, flangeFriction);
          const sine = grade / 1000 / Math.hypot(1, grade / 1000);
          const cosine = 1 / Math.hypot(1, grade / 1000);
          // Wheels in a curve: 0.20 * (0.72 * gauge + 0.47 * wheelbase)/R; a wagon and its heads span 120 mm of it.
          const curve = (0.2 * (0.72 * 0.0165 + 0.47 * 0.06)) / radius;
          const holds = (i: number, ahead: number, behind: number): boolean => {
            const weight = vehicles[i]!.mass * g;
            const most =
              1.3 * weight * cosine * (rolling / 1000 + curve) +
              flangeFriction * Math.sin(0.12 / (2 * radius)) * Math.abs(ahead + behind);
            return Math.abs(ahead - behind - weight * sine) <= most;
          };
          const [step, reach] = [0.004, 0.5];
          const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
          const greatest = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
          for (let p = -reach; p <= reach; p += step) {
            if (!holds(0, 0, p)) continue;
            for (let q = -reach; q <= reach; q += step) {
              if (!holds(1, p, q) || !holds(2, q, 0)) continue;
              [p, q].forEach((force, j) => {
                least[j] = Math.min(least[j]!, force);
                greatest[j] = Math.max(greatest[j]!, force);
              });
            }
          }
          if (found === null) {
            expect(greatest[0]).toBe(Number.NEGATIVE_INFINITY);
            return;
          }
          for (let j = 0; j < 2; j++) {
            // A grid finds nothing outside, and misses an end by less than three steps where the corner of what holds lies between its points.
            if (least[j] === Number.POSITIVE_INFINITY)
              expect(found.greatest[j]! - found.least[j]!).toBeLessThan(3 * step);
            else {
              expect(least[j]! - found.least[j]!).toBeGreaterThan(-1e-5);
              expect(greatest[j]! - found.greatest[j]!).toBeLessThan(1e-5);
              expect(least[j]! - found.least[j]!).toBeLessThan(3 * step);
              expect(found.greatest[j]! - greatest[j]!).toBeLessThan(3 * step);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('holds the forces that a run leaves behind when its train has come to rest', () => {
    const track = level(6, 0.02);
    const vehicles = [engine(0.3), wagon(0.15), wagon(0.1), wagon(0.2)];
    const input = trial(track, vehicles, [at(0, 0.5), at(3, 0)], { script: { timeLimit: 8 } });
    const done = run(input);
    const last = done.frames - 1;
    const [places, speeds] = [done.chainage, done.speed].map((column) => column.slice(last * 4, last * 4 + 4));
    expect([...speeds!]).toEqual([0, 0, 0, 0]);
    const found = restForces(input, places!);
    for (let j = 0; j < 3; j++) {
      const force = done.force[last * 3 + j]!;
      // What is left of the swing in the springs is below a thousandth of a newton.
      expect(force).toBeGreaterThan(found!.least[j]! - 1e-3);
      expect(force).toBeLessThan(found!.greatest[j]! + 1e-3);
    }
  });
});
