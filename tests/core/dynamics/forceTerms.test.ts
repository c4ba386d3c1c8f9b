import { describe, expect, it } from 'vitest';
import { run, steadyRun } from '../../../src/core/dynamics/index.ts';
import { turnVehicle } from '../../../src/core/stock/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, makeTrack, straight, type Track, transition } from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

/* Terms of the balance of forces one by one, each against what is worked by hand. */
const g = 9.80665;
const calm = { damping: 20 };
const wagons = (count: number) => new Array<Vehicle>(count).fill(wagon(0.1, calm));
const lastOf = (column: Float64Array, width: number, i = 0) => column[column.length - width + i]!;

describe('friction from rest', () => {
  const sticky = wagon(0.1, {}, { rolling: { coulomb: 0.01, perSpeed: 0, breakaway: 1.4 } });
  const left = (grade: number) => run(trial(level(8, grade), [sticky], [], { script: { start: 6, timeLimit: 2 } }));

  it('holds a wagon up to its breakaway factor, and once it rolls only running friction brakes it', () => {
    expect(left(0.01 * 1.4 * 0.999).speed.every((v) => v === 0)).toBe(true);
    const rolling = left(0.01 * 1.4 * 1.001);
    const pitch = Math.atan(0.014014);
    const a = g * (Math.sin(pitch) - 0.01 * Math.cos(pitch));
    expect(lastOf(rolling.speed, 1) / (-a * 2)).toBeCloseTo(1, 3);
  });

  it('lets a wagon roll on at a slope on which it would not start: a nudge allowed', () => {
    // An engine draws it to 12 permille down and is cut; what lies between 1 and 1.4 % no longer holds what moves.
    const pair = [
      engine(0.3, { worm: false, stallForce: 0.4 }, calm, { rolling: { coulomb: 0.01, perSpeed: 0, breakaway: 1 } }),
      sticky,
    ];
    const orders = [at(0, -0.5, 0.2), at(1.5, 0, 0.1)];
    const on = run(trial(level(12, 0.012), pair, orders, { script: { start: 11, timeLimit: 8 } }));
    expect(on.speed.slice(-2).every((v) => v < -1e-3)).toBe(true);
    expect(left(0.012).speed.every((v) => v === 0)).toBe(true);
  });
});

describe('drawbar weight transfer', () => {
  // ΔN = F·h/wheelbase off the driven wheels where only the leading ones drive: 10 mm on 60 mm, a sixth of the pull.
  const leading = (c: object = {}) =>
    engine(0.4, { drivenMass: 0.3, adhesion: 0.3, transferShare: 1 }, { ...calm, ...c });
  const limits = (train: readonly Vehicle[], grade = 0) => {
    const input = trial(level(9, grade), train, [at(0, 0.5, 1)], { script: { timeLimit: 9 } });
    const full = run(input);
    const steady = steadyRun(input, { every: 0.05, setting: 0.5 });
    expect(lastOf(steady.gripLimit, 1) / lastOf(full.gripLimit, 1)).toBeCloseTo(1, 4);
    return lastOf(full.gripLimit, 1);
  };
  const pull = 0.6 * g * 0.015;

  it('takes a sixth of the pull off wheels that lead, and puts it on wheels that trail', () => {
    expect(limits([leading(), ...wagons(6)])).toBeCloseTo(0.3 * (0.3 * g - pull / 6), 5);
    expect(limits([turnVehicle(leading()), ...wagons(6)])).toBeCloseTo(0.3 * (0.3 * g + pull / 6), 5);
  });

  it('takes it off leading wheels that push too: what holds the engine back acts at the drawbar, whichever end that is at', () => {
    expect(limits([...wagons(6), leading()])).toBeCloseTo(0.3 * (0.3 * g - pull / 6), 5);
    expect(limits([...wagons(2), leading(), ...wagons(4)])).toBeCloseTo(0.3 * (0.3 * g - pull / 6), 5);
  });

  it('decides whether it starts: a train between the two grips slips one way round and goes the other', () => {
    const share = { transferShare: 1, slidingAdhesion: 0.2 };
    const front = engine(0.4, { drivenMass: 0.2, adhesion: 0.25, stallForce: 3, ...share }, calm);
    const train = (one: Vehicle) => [one, ...wagons(10)];
    // 10 wagons and the engine on 2 %: 0.4806 N at the rail; grip 0.4903 N less or more a sixth of the drawbar's 0.343 N, at 0.25.
    const pitch = Math.atan(0.02);
    const asked = (mass: number) => mass * g * (Math.sin(pitch) + 0.015 * Math.cos(pitch));
    const grip = 0.25 * (0.2 * g * Math.cos(pitch));
    expect(asked(1.4)).toBeLessThan(grip);
    expect(asked(1.4)).toBeGreaterThan(grip - (0.25 * asked(1)) / 6);
    const outcome = (one: Vehicle) =>
      run(trial(level(7, 0.02), train(one), [at(0, 0.25, 20)], { script: { timeLimit: 22 } }));
    expect(outcome(front).events.some(({ kind }) => kind === 'slip')).toBe(true);
    expect(outcome(turnVehicle(front)).events.some(({ kind }) => kind === 'slip')).toBe(false);
  });
});

describe('traction tyres on one axle', () => {
  // Three axles with a third of 450 g each; the rear two drive, of which the middle one grips twice as well.
  const axles = [0.03, 0, -0.03].map((ahead, k) => ({
    ahead,
    driven: k > 0,
    share: 1 / 3,
    stiffness: 1e7,
    ...(k === 1 ? { grip: 2 } : {}),
  }));
  const tyred = engine(0.45, { drivenMass: 0.3, adhesion: 0.2, slidingAdhesion: 0.15, stallForce: 3, axles }, calm);
  const kink = (change: number): Track =>
    makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(5)],
      profile: {
        points: [
          { chainage: 0, height: 0.1 },
          { chainage: 2.5, height: 0.1 },
          { chainage: 5, height: 0.1 + 2.5 * change },
        ],
      },
    });
  const grips = (change: number, setting = 0.3) => {
    const input = trial(kink(change), [tyred, ...wagons(2)], [at(0, setting, 1)], { script: { timeLimit: 30 } });
    return { full: run(input), steady: steadyRun(input, { every: 0.01, setting }) };
  };

  it('grip on the level as the sum of both: 0.15·0.2 + 0.15·0.4 of weight', () => {
    const { full, steady } = grips(0);
    expect(lastOf(full.gripLimit, 1)).toBeCloseTo((0.15 * 0.2 + 0.15 * 0.4) * g, 6);
    expect(lastOf(steady.gripLimit, 1)).toBeCloseTo((0.15 * 0.2 + 0.15 * 0.4) * g, 6);
  });

  it('lose it at a sag that hangs the tyred axle, and have all of it on a summit', () => {
    // A rigid frame hangs its middle axle at the foot: half its weight on the plain driver. On a summit all stands on the tyres.
    const least = (column: Float64Array) => Math.min(...column.slice(1));
    const most = (column: Float64Array) => Math.max(...column.slice(1));
    const [sag, summit] = [grips(0.03), grips(-0.03)];
    expect(least(sag.full.gripLimit) / (0.225 * 0.2 * g)).toBeCloseTo(1, 2);
    expect(least(sag.steady.gripLimit) / (0.225 * 0.2 * g)).toBeCloseTo(1, 2);
    expect(most(summit.full.gripLimit) / (0.45 * 0.4 * g)).toBeCloseTo(1, 2);
  });

  it('slide in the same proportion once they slip', () => {
    const stuck = wagon(3, calm, { rolling: { coulomb: 1, perSpeed: 0, breakaway: 1 } });
    const { railForce, rimSpeed } = run(
      trial(level(3), [tyred, stuck], [at(0, 1, 2)], { script: { timeLimit: 4 }, options: { stallPatience: 10 } }),
    );
    expect(lastOf(rimSpeed, 1)).toBeGreaterThan(0.3);
    // 0.15 of 0.2 is left at that slip, but for e^-6 of the rest.
    expect(lastOf(railForce, 1) / ((0.15 * 0.2 + 0.15 * 0.4) * g * 0.75)).toBeCloseTo(1, 2);
  });
});

describe('a release force', () => {
  it('holds what it is and lets go of what is above', () => {
    // Three wagons behind the joint at 1.5 %: 44.1 mN once they roll, a tenth more as each is drawn loose.
    const parts = (release: number) => {
      const train = [engine(0.4, {}, calm), wagon(0.1, calm), wagon(0.1, { ...calm, release }), ...wagons(2)];
      return run(trial(level(9), train, [at(0, 0.4, 12)], { script: { timeLimit: 12 } })).events.find(
        ({ kind }) => kind === 'parting',
      );
    };
    const pull = 0.3 * g * 0.015;
    expect(parts(1.3 * pull)).toBeUndefined();
    const parting = parts(0.9 * pull)!;
    expect(parting.subject).toBe(1);
    // Found at the step at which it is passed.
    expect(parting.value).toBeGreaterThan(0.9 * pull);
    expect(parting.value).toBeLessThan(0.95 * pull);
  });
});

describe('a coupling of two stages', () => {
  it.each([1, -1])('gives on its soft spring to the stop and on its stiff one beyond, way %i', (way) => {
    // Halves of 400 N/m to 0.1 mm and 8000 N/m beyond: 200 N/m to 0.2 mm, 40 mN, and 4000 N/m from there.
    const stage = { from: 1e-4, stiffness: 8000 };
    const soft = { ...calm, draftStiffness: 400, buffStiffness: 400, draftSecond: stage, buffSecond: stage };
    const train = [engine(0.4, {}, soft), ...new Array<Vehicle>(3).fill(wagon(0.15, soft))];
    const input = trial(level(12), train, [at(0, way * 0.4, 2)], { script: { start: 6, timeLimit: 10 } });
    const { extension, force } = run(input);
    for (let j = 0; j < 3; j++) {
      const pull = 0.15 * (3 - j) * g * 0.015;
      const travel = pull > 0.04 ? 2e-4 + (pull - 0.04) / 4000 : pull / 200;
      expect(lastOf(force, 3, j) / (way * pull)).toBeCloseTo(1, 3);
      expect(lastOf(extension, 3, j)).toBeCloseTo(way * travel, 7);
    }
    expect(0.15 * g * 0.015).toBeLessThan(0.04);
    expect(0.3 * g * 0.015).toBeGreaterThan(0.04);
  });
});

describe('an order given by place', () => {
  it('is obeyed as the leading end gets there, and those after it wait', () => {
    const orders = [at(0, 0.5, 0.5), { when: { chainage: 3.2 }, setting: 0.3, ramp: 0 }, at(1, 0.4, 0)];
    const train = [engine(0.4, {}, calm), ...wagons(2)];
    const { setting, chainage } = run(trial(level(6), train, orders, { script: { timeLimit: 14 } }));
    // Leading end: 50 mm ahead of the engine's middle.
    const reached = setting.findIndex((_, f) => chainage[3 * f]! + 0.05 >= 3.2);
    expect(setting[reached - 1]).toBe(0.5);
    // Both orders fall due there, the second having been due in time for long.
    expect(setting[reached + 1]).toBe(0.4);
  });
});

describe('guided close couplings in a curve', () => {
  it('stand as far apart as chords of the circle with shanks led out by their swing, to a hundredth of the lead', () => {
    const guide = { lengthening: 0.003, fullSwing: 0.3 };
    const coach = wagon(
      0.12,
      { ...calm, guide },
      { pivotSpacing: 0.186, frontOverhang: 0.03, rearOverhang: 0.03, bodyLength: 0.246, bogies: true },
    );
    const radius = 0.5;
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1.8), transition(0.4, 0, 1 / radius), arc(radius, 5)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const result = run(
      trial(track, [engine(0.4, {}, { ...calm, guide }), coach, coach], [at(0, 0.4, 1)], {
        script: { start: 1.4, timeLimit: 12 },
      }),
    );
    const last = (result.frames - 1) * 3;
    expect(result.chainage[last + 2]!).toBeGreaterThan(2.4);
    // Body: chord between running points, its middle out by √(R² - a²/4); pivots 113 mm from there lie on a circle of their own.
    const middle = Math.sqrt(radius ** 2 - 0.093 ** 2);
    const pins = Math.hypot(middle, 0.113);
    const corner = Math.atan2(0.113, middle);
    // The joint is a chord of that circle: half the angle it spans is what it swings against the tangent there, and the body as much again by its corner.
    const angleOf = (length: number) => 2 * Math.asin(length / 2 / pins);
    let length = 0.04;
    for (let round = 0; round < 50; round++) {
      const t = Math.min((corner + angleOf(length) / 2) / guide.fullSwing, 1);
      length = 0.04 + result.extension[(result.frames - 1) * 2 + 1]! + 2 * guide.lengthening * t * t * (3 - 2 * t);
    }
    const apart = radius * (2 * corner + angleOf(length));
    expect(length - 0.04).toBeGreaterThan(0.003);
    expect(Math.abs(result.chainage[last + 1]! - result.chainage[last + 2]! - apart)).toBeLessThan(
      0.01 * (length - 0.04),
    );
  });
});
