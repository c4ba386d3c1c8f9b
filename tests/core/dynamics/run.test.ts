import { describe, expect, it } from 'vitest';
import { run, startRun } from '../../../src/core/dynamics/index.ts';
import type { RunInput } from '../../../src/core/dynamics/types.ts';
import { helix, makeTrack, straight, type Track, transition } from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

function helixTrack(turn: 1 | -1, grade = 0.02): Track {
  const radius = 0.6;
  const curve = turn / radius;
  const climb = 0.6 + 3 * 2 * Math.PI * radius;
  return makeTrack({
    start: { x: 0, y: 0, heading: 0.3 },
    elements: [straight(2), transition(0.3, 0, curve), helix(radius, turn * 3), transition(0.3, curve, 0), straight(1)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 1.8, height: 0, curve: { length: 0.3 } },
        { chainage: 1.8 + climb, height: grade * climb, curve: { length: 0.3 } },
        { chainage: 3 + climb, height: grade * climb },
      ],
    },
  });
}

const goods = (slack = 0) => [
  engine(0.4, { rotatingMass: 0.3 }),
  ...[0.05, 0.09, 0.06, 0.12, 0.05].map((mass) => wagon(mass, { slack: slack / 2 })),
];

const climb = (track: Track, slack = 0, more: Parameters<typeof trial>[3] = {}): RunInput =>
  trial(track, goods(slack), [at(0.5, 0.8, 1)], { script: { timeLimit: 40 }, ...more });

describe('a run', () => {
  it('closes its energy account to 1e-6 of the work put in where motion is smooth', () => {
    for (const slack of [0, 0.002]) {
      const { energy, outcome } = run(climb(helixTrack(1), slack));
      expect(outcome).not.toBe('stalled');
      expect(energy.motor).toBeGreaterThan(1);
      expect(Math.abs(energy.residual)).toBeLessThan(1e-6 * energy.motor);
    }
  });

  it('books the height gained as potential energy, to the node', () => {
    const result = run(climb(helixTrack(1)));
    const mass = 0.4 + 0.05 + 0.09 + 0.06 + 0.12 + 0.05;
    expect(result.outcome).toBe('time-limit');
    const n = result.vehicles;
    // Every vehicle is on the constant grade by now: height gained is the grade times the way since the foot.
    const masses = [0.4, 0.05, 0.09, 0.06, 0.12, 0.05];
    let work = 0;
    for (let i = 0; i < n; i++) {
      const place = result.chainage[(result.frames - 1) * n + i]!;
      expect(place).toBeGreaterThan(2.1);
      work += masses[i]! * 9.80665 * 0.02 * (place - 1.8);
    }
    expect(mass).toBeCloseTo(0.77, 12);
    expect(result.energy.potential / work).toBeCloseTo(1, 5);
  });

  it('gives the same bits every time', () => {
    const a = run(climb(helixTrack(1), 0.002));
    const b = run(climb(helixTrack(1), 0.002));
    expect(b).toEqual(a);
  });

  it('does not care which way the helix turns', () => {
    const left = run(climb(helixTrack(1), 0.001));
    const right = run(climb(helixTrack(-1), 0.001));
    expect(right.frames).toBe(left.frames);
    const last = (left.frames - 1) * left.vehicles;
    for (let i = 0; i < left.vehicles; i++) {
      expect(right.chainage[last + i]).toBeCloseTo(left.chainage[last + i]!, 8);
    }
  });

  it('changes peak coupler forces by less than 1 % when the step is halved, slack and blows included', () => {
    const peak = (step: number) => {
      const result = run(climb(helixTrack(1), 0.002, { options: { step }, script: { timeLimit: 6 } }));
      return [Math.max(...result.draftPeak), Math.min(...result.buffPeak)] as const;
    };
    const coarse = peak(0.001);
    const fine = peak(0.0005);
    expect(coarse[0]).toBeGreaterThan(0.3);
    expect(Math.abs(coarse[0] / fine[0] - 1)).toBeLessThan(0.01);
  });

  it('stays at exactly zero speed on a grade with the worm locked', () => {
    const result = run(trial(level(6, 0.03), goods(0.001), [], { script: { timeLimit: 5 } }));
    // Couplings settle under the train's weight within the first moments; the end must be rest, not creep.
    const last = result.frames - 1;
    for (let i = 0; i < result.vehicles; i++) {
      expect(result.speed[last * result.vehicles + i]).toBe(0);
      expect(result.speed[(last - 100) * result.vehicles + i]).toBe(0);
    }
    expect(result.events.some((e) => e.kind === 'stall')).toBe(false);
  });

  it('never moves a train whose friction is above the grade', () => {
    const vehicles = [wagon(0.1), wagon(0.2), wagon(0.05)];
    const result = run(trial(level(6, 0.0149), vehicles, [], { script: { timeLimit: 2 } }));
    expect(result.speed.every((v) => v === 0)).toBe(true);
    expect(new Set(result.chainage.filter((_, k) => k % 3 === 1)).size).toBe(1);
  });

  it('lets a train run away once the grade is above its friction', () => {
    const result = run(trial(level(9, 0.016), [wagon(0.1), wagon(0.1)], [], { script: { start: 8, timeLimit: 3 } }));
    // a = g·(sin - 0.015·cos) with tan = 0.016, down the line.
    const pitch = Math.atan(0.016);
    const a = 9.80665 * (Math.sin(pitch) - 0.015 * Math.cos(pitch));
    const last = result.frames - 1;
    expect(result.speed[last * 2]).toBeCloseTo(-a * result.time[last]!, 5);
  });

  it('stalls where the motor cannot pull, holds there by its worm, and says so', () => {
    const heavy = [engine(0.5, { stallForce: 0.4 }), ...Array.from({ length: 5 }, () => wagon(0.3))];
    const result = run(trial(level(10, 0.03), heavy, [at(0.2, 1, 0.5)]));
    expect(result.outcome).toBe('stalled');
    expect(result.events.at(-1)?.kind).toBe('stall');
    expect(result.speed.at(-1)).toBe(0);
    expect(result.demand.at(-1)).toBeGreaterThan(result.motorLimit.at(-1)!);
  });

  it('spins its wheels where they cannot grip, with a wheel speed of their own', () => {
    const heavy = [engine(0.3, { stallForce: 3 }), ...Array.from({ length: 6 }, () => wagon(0.3))];
    const result = run(trial(level(12, 0.03), heavy, [at(0.2, 0.8, 0.5)]));
    expect(result.events.some((e) => e.kind === 'slip')).toBe(true);
    expect(result.outcome).toBe('stalled');
    const f = result.events.find((e) => e.kind === 'slip')!;
    const frame = Math.ceil(f.time / result.interval) + 5;
    expect(result.rimSpeed[frame]! - result.speed[frame * result.vehicles]!).toBeGreaterThan(0.02);
    // Slipping, the rail gives what sliding friction leaves: less than grip would.
    expect(result.railForce[frame]!).toBeLessThan(0.22 * 0.3 * 9.80665);
    expect(result.energy.slip).toBeGreaterThan(0);
    expect(Math.abs(result.energy.residual)).toBeLessThan(1e-6 * result.energy.motor);
  });

  it('breaks loose and finds its grip again at different settings', () => {
    // A load that cannot move. The motor gives 3 N × setting at rest: it passes the grip of 0.25 × 0.3 kg × g = 0.7355 N
    // at 0.245. Spinning wheels turn where motor
    // and sliding friction balance, 3u - 5w = 0.4413 + 0.2942·exp(-w/0.001); below u = 0.1556 no such speed is left
    // (at w = 1 mm/s × ln 58.8 = 4.1 mm/s), and they grip.
    const blocked = wagon(1, {}, { rolling: { coulomb: 0.5, perSpeed: 0, breakaway: 1 } });
    const train = [engine(0.3, { stallForce: 3, adhesion: 0.25, slidingAdhesion: 0.15, slipScale: 0.001 }), blocked];
    const up = { when: { time: 0 }, setting: 0.5, ramp: 20 };
    const down = { when: { time: 20 }, setting: 0, ramp: 20 };
    const result = run(
      trial(level(4), train, [up, down], { script: { timeLimit: 40 }, options: { stallPatience: 100 } }),
    );
    const settingAt = (time: number) => (time < 20 ? time / 40 : (40 - time) / 40);
    const kinds = result.events.filter((e) => e.kind === 'slip' || e.kind === 'grip');
    expect(kinds.map((e) => e.kind)).toEqual(['slip', 'grip']);
    expect(settingAt(kinds[0]!.time)).toBeCloseTo(0.245, 2);
    // The event comes once the wheels have gripped for 0.2 s.
    expect(settingAt(kinds[1]!.time - 0.2)).toBeCloseTo(0.1556, 2);
  });

  it('is held back by its worm going down, close to the speed set', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(10)],
      profile: {
        points: [
          { chainage: 0, height: 0.5 },
          { chainage: 10, height: 0.1 },
        ],
      },
    });
    const result = run(trial(track, goods(), [at(0, 0.5, 1)], { script: { timeLimit: 12 } }));
    const last = result.frames - 1;
    // freeSpeed 0.6 × 0.5; the train pushes (4 % against 1.5 % rolling), so the engine runs at its setting and brakes.
    expect(result.speed[last * result.vehicles]).toBeCloseTo(0.3, 6);
    expect(result.railForce[last]).toBeLessThan(0);
    expect(result.force[last * (result.vehicles - 1)]).toBeLessThan(0);
    expect(result.energy.holding).toBeGreaterThan(0);
  });

  it('reverses: stops, and comes back the way it went', () => {
    const orders = [at(0.2, 0.6, 0.5), at(6, 0, 1), at(9, -0.6, 0.5)];
    const result = run(trial(level(12), goods(0.001), orders, { script: { timeLimit: 13 } }));
    const n = result.vehicles;
    const place = (time: number) => result.chainage[Math.round(time / result.interval) * n]!;
    expect(place(8.5)).toBeGreaterThan(place(3));
    expect(place(12.8)).toBeLessThan(place(8.5));
    expect(result.events.filter((e) => e.kind === 'standstill').length).toBeGreaterThanOrEqual(1);
  });

  it('lets a coupling go past its release force and runs both parts on', () => {
    const vehicles = goods().map((v, i) => (i === 3 ? wagon(0.06, { release: 0.05 }) : v));
    const result = run(trial(level(8, 0.02), vehicles, [at(0.2, 0.8, 0.5)], { script: { timeLimit: 10 } }));
    const parting = result.events.find((e) => e.kind === 'parting');
    expect(parting).toBeDefined();
    expect(result.outcome).toBe('parted');
    const j = parting!.subject;
    const last = result.frames - 1;
    const n = result.vehicles;
    expect(result.force[last * (n - 1) + j]).toBe(0);
    // The engine's part climbs, the other rolls back down the grade.
    expect(result.speed[last * n]).toBeGreaterThan(0);
    expect(result.speed[last * n + n - 1]).toBeLessThan(0);
  });

  it('shares the load between two engines by their motors', () => {
    const pair = [engine(0.4), engine(0.4), ...Array.from({ length: 6 }, () => wagon(0.1))];
    const result = run(trial(level(14, 0.02), pair, [at(0.2, 0.7, 0.5)], { script: { timeLimit: 15 } }));
    const last = result.frames - 1;
    expect(result.railForce[2 * last]).toBeCloseTo(result.railForce[2 * last + 1]!, 3);
    expect(result.railForce[2 * last]! + result.railForce[2 * last + 1]!).toBeCloseTo(2 * result.demand[2 * last]!, 3);
  });

  it('pushes in buff what it pulls in draft', () => {
    const wagons = Array.from({ length: 5 }, () => wagon(0.1));
    const script = { script: { timeLimit: 12 } };
    const pulled = run(trial(level(10, 0.02), [engine(0.4), ...wagons], [at(0.2, 0.6, 1)], script));
    const pushed = run(trial(level(10, 0.02), [...wagons, engine(0.4)], [at(0.2, 0.6, 1)], script));
    const lastPulled = (pulled.frames - 1) * 5;
    const lastPushed = (pushed.frames - 1) * 5;
    for (let j = 0; j < 5; j++) {
      expect(pushed.force[lastPushed + 4 - j]).toBeCloseTo(-pulled.force[lastPulled + j]!, 4);
    }
  });

  it('is the same run in small goes as in one, and stalls when its patience is over, not at the next frame', () => {
    // Pulls on the level, and is stopped by the climb long after its setting was turned.
    const input = climb(helixTrack(1, 0.08), 0.002);
    const weak = [engine(0.4, { stallForce: 0.5, rotatingMass: 0.3 }), ...goods(0.002).slice(1)];
    const heavy = { ...input, train: { ...input.train, vehicles: weak } };
    const whole = run(heavy);
    expect(whole.outcome).toBe('stalled');
    const stepper = startRun(heavy);
    while (!stepper.advance(0.007));
    expect(stepper.finish()).toEqual(whole);
    // It crawled until the last frame that is more than a second old, and has stood since.
    const stall = whole.events.find(({ kind }) => kind === 'stall')!;
    const speedAt = (time: number) => whole.speed[Math.floor(time / whole.interval) * whole.vehicles]!;
    expect(speedAt(stall.time - 1.02)).toBeGreaterThan(1e-3);
    expect(speedAt(stall.time - 0.96)).toBeLessThan(1e-3);
  });

  it('refuses a train that does not stand on the track, naming where it would be', () => {
    expect(() => run(trial(level(3), goods(), [], { script: { start: 0.2, finish: 2 } }))).toThrow(
      /does not stand on the track.*-0\.\d+ m/,
    );
  });
});
