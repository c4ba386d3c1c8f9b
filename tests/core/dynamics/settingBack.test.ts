import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import type { Run, RunInput, Script } from '../../../src/core/dynamics/types.ts';
import { frontReach, turnVehicle } from '../../../src/core/stock/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import {
  arc,
  chainageAtRail,
  makeTrack,
  railAt,
  reverseTrack,
  straight,
  type Track,
  transition,
} from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

/** Of a joint: the slack of its two ends together, and their springs one behind the other. */
const slack = 0.003;
const stiffness = 4000 / 2;

/** An engine and six wagons; a joint's slack is that of both its ends. */
const goods = (c: Parameters<typeof wagon>[1] = {}): Vehicle[] => [
  engine(0.4, { rotatingMass: 0.3 }, { slack: slack / 2, ...c }),
  ...[0.05, 0.09, 0.06, 0.12, 0.05, 0.08].map((mass) => wagon(mass, { slack: slack / 2, ...c })),
];

const lastOf = (values: Float64Array, width: number): number[] => [...values.subarray(values.length - width)];

/** A train on its way that shuts off with its head at 2.4 m and comes to a stand. */
const stopping = (track: Track, script: Partial<Script> = {}, vehicles = goods()): RunInput =>
  trial(track, vehicles, [at(0.2, 0.7, 1)], { script: { finish: 2.4, stop: 0.5, timeLimit: 30, ...script } });

/** The same vehicles on the same rails, the other end leading, where and as `ended` left them. */
function settingBack(track: Track, vehicles: readonly Vehicle[], ended: Run, script: Partial<Script>): RunInput {
  const places = lastOf(ended.chainage, ended.vehicles);
  const turned = [...vehicles].reverse().map(turnVehicle);
  const back = reverseTrack(track);
  const origin = railAt(back, track.length - places[places.length - 1]!);
  const start = chainageAtRail(back, origin + frontReach(turned[0]!));
  const driven = { start, finish: track.length - 0.01, timeLimit: 20, ...script };
  const stretch = lastOf(ended.extension, ended.vehicles - 1).reverse();
  return { ...trial(back, turned, [at(0.5, 0.7, 1)], { script: driven }), stretch };
}

describe('a train that comes to a stand', () => {
  it('ends at rest, shut off, whole, some way beyond where it arrives', () => {
    const result = run(stopping(level(6)));
    expect(result.outcome).toBe('arrived');
    expect(lastOf(result.speed, 7)).toEqual(Array(7).fill(0));
    expect([...lastOf(result.setting, 1), ...lastOf(result.rimSpeed, 1)]).toEqual([0, 0]);
    const arrived = result.events.find(({ kind }) => kind === 'arrived')!;
    expect(arrived.value).toBeGreaterThan(0.1);
    expect(arrived.time).toBeLessThan(result.time[result.frames - 1]! - 0.4);
    expect(lastOf(result.chainage, 7)[0]!).toBeGreaterThan(arrived.chainage + 0.01);
    expect(Math.abs(result.energy.residual)).toBeLessThan(1e-6 * result.energy.motor);
  });

  it('is the same run as without the stop until it arrives', () => {
    const plain = run(stopping(level(6), {}, goods()));
    const { stop: _, ...script } = stopping(level(6)).script;
    const over = run({ ...stopping(level(6)), script });
    const frames = over.frames - 1;
    expect(over.outcome).toBe('arrived');
    expect(plain.speed.slice(0, frames * 7)).toEqual(over.speed.slice(0, frames * 7));
    expect(plain.extension.slice(0, frames * 6)).toEqual(over.extension.slice(0, frames * 6));
  });

  it('has run off the track where that ends before it stands', () => {
    const result = run(stopping(level(2.42)));
    expect(result.outcome).toBe('end-of-track');
    expect(result.events.map(({ kind }) => kind)).toContain('arrived');
    expect(result.events.at(-1)?.kind).toBe('end-of-track');
  });

  it('has parted where a joint lets go on the way', () => {
    // A coupling too weak for what the train asks lets go as it starts.
    const result = run(stopping(level(6), {}, goods({ release: 0.02 })));
    expect(result.outcome).toBe('parted');
  });

  it('stops in bounds of time and place: refuses a stop of less than no time', () => {
    expect(() => run(stopping(level(6), { stop: -1 }))).toThrow(RangeError);
  });
});

describe('a train that begins as another left it', () => {
  /** Level, then rising by so much in 2.6 m, round a curve with easements. */
  const rising = (rise: number) =>
    makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1.6), transition(0.3, 0, 1.2), arc(1 / 1.2, 0.8), transition(0.3, 1.2, 0), straight(3)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 1.4, height: 0, curve: { length: 0.4 } },
          { chainage: 4, height: rise },
        ],
      },
    });
  const tracks: Readonly<Record<string, Track>> = {
    level: level(6),
    'hanging on a grade through a curve': rising(0.078),
  };
  const ways: Readonly<Record<string, Track>> = {
    level: level(6),
    'on a grade of 1 % through a curve': rising(0.026),
    'on a grade of 2 % through a curve': rising(0.052),
    'on a grade of 3 % through a curve': rising(0.078),
  };

  /** How far two places of two runs are apart at most, m. */
  const apart = (a: Run, b: Run): number => {
    let most = 0;
    for (const [k, place] of a.chainage.entries()) most = Math.max(most, Math.abs(place - b.chainage[k]!));
    return most;
  };

  /**
   * Way by which the two runs' beginnings differ, m: nodes of the tables, 2 mm apart, fall elsewhere on a track run the other way. Wagons that hit one another
   * across their slack make more and more of it, on 3 % some million times as much within two seconds.
   */
  const hair = 2e-10;

  it.each(Object.keys(tracks))('stands for ever, %s: places and forces stay as they were', (name) => {
    const track = tracks[name]!;
    const first = run(stopping(track));
    const still = run(settingBack(track, goods(), first, { orders: [at(60, 0.5)], timeLimit: 5 }));
    expect(still.events.filter(({ kind }) => kind !== 'time-limit')).toEqual([]);
    expect(lastOf(still.speed, 7)).toEqual(Array(7).fill(0));
    expect(lastOf(still.chainage, 7)).toEqual([...still.chainage.subarray(0, 7)]);
    const forces = lastOf(first.force, 6).reverse();
    // On the grade of 3 % its wagons hang on the engine: they would roll from 1.5 %.
    if (name !== 'level') expect(Math.min(...forces)).toBeGreaterThan(0.005);
    forces.forEach((force, j) => {
      expect(still.force[j]).toBeCloseTo(force, 6);
      expect(lastOf(still.force, 6)[j]).toBeCloseTo(force, 6);
      expect(lastOf(still.extension, 6)[j]).toBeCloseTo(lastOf(first.extension, 6).reverse()[j]!, 12);
    });
    // On the same rails: chainage counted from the other end.
    for (const [i, place] of lastOf(first.chainage, 7).reverse().entries()) {
      expect(still.chainage[i]).toBeCloseTo(track.length - place, 6);
    }
  });

  it.each(Object.keys(ways))('runs as the one train that goes there and back in one run does, %s', (name) => {
    const track = ways[name]!;
    const orders = [at(0.2, 0.7, 1), { when: { chainage: 2.4 }, setting: 0, ramp: 0.5 }, at(20.5, -0.7, 1)];
    const there = trial(track, goods(), orders, { script: { timeLimit: 24 } });
    const both = run(there);
    const first = run(stopping(track));
    const input = settingBack(track, goods(), first, { orders: [at(0.5, 0.7, 1)], timeLimit: 2.5 });
    const back = run(input);
    expect(both.outcome).toBe('time-limit');
    expect(back.outcome).toBe('time-limit');
    // What the same run makes of one joint that is a hair longer at the start.
    const spread = Math.max(
      ...[0, 1, 2, 3, 4, 5].map((j) =>
        apart(back, run({ ...input, stretch: input.stretch!.map((one, at) => (at === j ? one + hair : one)) })),
      ),
    );
    const turn = Math.round(20 / both.interval);
    let furthest = 0;
    let most = 0;
    for (let f = 0; f < back.frames; f++) {
      for (let i = 0; i < 7; i++) {
        const there = track.length - both.chainage[(turn + f) * 7 + 6 - i]!;
        const off = Math.abs(back.chainage[f * 7 + i]! - there);
        // Until it is driven on it stands where the other one does.
        if (back.time[f]! < 0.5) expect(off).toBeLessThan(2 * hair);
        most = Math.max(most, off);
        furthest = Math.max(furthest, Math.abs(back.speed[f * 7 + i]!));
      }
    }
    // Tables differ all along the way and not at its start alone: several hairs.
    expect(most).toBeLessThan(10 * spread);
    expect(most).toBeLessThan(slack);
    // It was under way, and with slack to take up: a start at free length would differ by half of it at every joint.
    expect(furthest).toBeGreaterThan(0.2);
  });

  it('takes up all slack before its last vehicle moves: the engine has gone the sum of it by then', () => {
    // Wagons that run heavily, pushed gently: none is knocked away from the one that pushes it.
    const braked = goods({ damping: 20 }).map((vehicle) =>
      vehicle.drive ? vehicle : { ...vehicle, rolling: { coulomb: 0.12, perSpeed: 0, breakaway: 1 } },
    );
    const track = level(6);
    const turned = [...braked].reverse().map(turnVehicle);
    const input = trial(track, turned, [at(0.2, 0.6, 4)], {
      script: { start: 2, timeLimit: 5 },
      options: { frameInterval: 0.001 },
    });
    const result = run({ ...input, stretch: Array(6).fill(slack / 2) });
    const [first, engineAt] = [0, 6];
    let f = 0;
    while (result.chainage[f * 7 + first]! - result.chainage[first]! < 1e-9) f++;
    const way = result.chainage[f * 7 + engineAt]! - result.chainage[engineAt]!;
    // Closed form: every joint closes by its whole slack, and no spring is pressed further than its force goes.
    const pressed = Math.max(...[...result.buffPeak].map((force) => -force)) / stiffness;
    expect(way).toBeGreaterThan(6 * slack);
    expect(way).toBeLessThan(6 * (slack + pressed));
    // A train that begins at its free length has only half of that to take up.
    const fresh = run(input);
    let g = 0;
    while (fresh.chainage[g * 7 + first]! - fresh.chainage[first]! < 1e-9) g++;
    const half = fresh.chainage[g * 7 + engineAt]! - fresh.chainage[engineAt]!;
    expect(half).toBeGreaterThan(3 * slack);
    expect(half).toBeLessThan(3 * slack + 6 * pressed);
  });

  it('carries the energy in its springs over, and closes its account', () => {
    const track = tracks['hanging on a grade through a curve']!;
    const first = run(stopping(track));
    const stored = (extensions: readonly number[]) =>
      extensions.reduce((sum, e) => sum + 0.5 * stiffness * Math.max(Math.abs(e) - slack / 2, 0) ** 2, 0);
    const left = stored(lastOf(first.extension, 6));
    expect(left).toBeGreaterThan(0);
    const back = run(settingBack(track, goods(), first, { orders: [at(0.5, 0.7, 1)], timeLimit: 6 }));
    // What is stored at the end is what was there at the start and what the account says came to it.
    expect(stored(lastOf(back.extension, 6))).toBeCloseTo(left + back.energy.stored, 9);
    expect(Math.abs(back.energy.residual)).toBeLessThan(1e-6 * back.energy.motor);
  });

  it('notes no blow where it merely stands stretched', () => {
    const stretch = Array(6).fill(slack / 2 + 1e-4);
    const heavy = goods().map((v) => (v.drive ? v : { ...v, rolling: { coulomb: 1, perSpeed: 0, breakaway: 1 } }));
    const still = run({ ...trial(level(4), heavy, [at(60, 0.5)], { script: { timeLimit: 1 } }), stretch });
    expect(still.draftPeak[0]).toBeCloseTo(stiffness * 1e-4, 9);
    expect(still.events.map(({ kind }) => kind)).toEqual(['time-limit']);
  });

  it('refuses a stretch for another number of joints', () => {
    expect(() => run({ ...trial(level(4), goods(), [at(0, 0.5)]), stretch: [0, 0] })).toThrow(/6 joints/);
  });
});
