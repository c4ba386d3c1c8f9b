import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import type { Run } from '../../../src/core/dynamics/types.ts';
import { makeTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

const g = 9.80665;
const grade = 0.02;
const pitch = Math.atan(grade);
/** Drag of a mass on the grade, gravity and rolling of 1.5 %, N. */
const drag = (mass: number) => mass * g * (Math.sin(pitch) + 0.015 * Math.cos(pitch));
const wagons = (count: number) => Array.from({ length: count }, () => wagon(0.1));

/** Values of the last frame. */
const end = (result: Run) => {
  const n = result.vehicles;
  const f = result.frames - 1;
  const k = result.locomotives.length;
  return {
    speed: result.speed[f * n]!,
    force: (j: number) => result.force[f * (n - 1) + j]!,
    rail: (e: number) => result.railForce[f * k + e]!,
  };
};

describe('two engines with unequal motors', () => {
  const strong = { stallForce: 1.2, freeSpeed: 0.6 };
  const weak = { stallForce: 0.9, freeSpeed: 0.5 };

  it('run at the speed and with the shares of their two lines', () => {
    // 1.2 kg up 2 %: 0.8·(1.2 + 0.9) - v·(1.2/0.6 + 0.9/0.5) = D.
    const train = [engine(0.4, strong), engine(0.4, weak), ...wagons(6)];
    const demand = drag(1.4);
    const speed = (0.8 * 2.1 - demand) / (1.2 / 0.6 + 0.9 / 0.5);
    expect(speed).toBeLessThan(0.8 * 0.5);
    const last = end(run(trial(level(14, grade), train, [at(0, 0.8, 1)], { script: { timeLimit: 14 } })));
    expect(last.speed / speed).toBeCloseTo(1, 3);
    expect(last.rail(0)).toBeCloseTo(1.2 * (0.8 - speed / 0.6), 3);
    expect(last.rail(1)).toBeCloseTo(0.9 * (0.8 - speed / 0.5), 3);
    // Between them the faster pulls on the slower what it has left over for it and the train.
    expect(last.force(0)).toBeCloseTo(1.2 * (0.8 - speed / 0.6) - drag(0.4), 3);
  });

  it('fight where little is asked: the slower one’s worm holds, and the faster pulls against it', () => {
    const train = [engine(0.4, strong), engine(0.4, { ...weak, freeSpeed: 0.4 }), ...wagons(1)];
    const result = run(trial(level(14), train, [at(0, 0.8, 1)], { script: { timeLimit: 14 } }));
    const last = end(result);
    const level15 = (mass: number) => 0.015 * mass * g;
    // The worm runs at 0.8·0.4; the faster engine gives 1.2·(0.8 - 0.32/0.6), the slower one the rest, which is a brake.
    expect(last.speed).toBeCloseTo(0.32, 4);
    expect(last.rail(0)).toBeCloseTo(1.2 * (0.8 - 0.32 / 0.6), 3);
    expect(last.rail(1)).toBeCloseTo(level15(0.9) - 1.2 * (0.8 - 0.32 / 0.6), 3);
    expect(last.rail(1)).toBeLessThan(0);
    expect(result.energy.holding).toBeGreaterThan(0);
  });

  it('brake by its motor line alone where the slower one has no worm', () => {
    const train = [engine(0.4, strong), engine(0.4, { ...weak, freeSpeed: 0.3, worm: false }), ...wagons(1)];
    const last = end(run(trial(level(14), train, [at(0, 0.8, 1)], { script: { timeLimit: 14 } })));
    const speed = (0.8 * 2.1 - 0.015 * 0.9 * g) / (1.2 / 0.6 + 0.9 / 0.3);
    expect(speed).toBeGreaterThan(0.8 * 0.3);
    expect(last.speed / speed).toBeCloseTo(1, 3);
    expect(last.rail(1)).toBeCloseTo(0.9 * (0.8 - speed / 0.3), 3);
  });

  it('hold a speed together on controllers of their own', () => {
    const orders = [0, 9].map((vehicle) => ({ when: { time: 0.1 }, setting: 1, hold: 0.2, ramp: 1, vehicle }));
    const train = [engine(0.4, strong), ...wagons(8), engine(0.4, weak)];
    const last = end(run(trial(level(14, grade), train, orders, { script: { timeLimit: 20 } })));
    expect(last.speed).toBeCloseTo(0.2, 4);
    expect(last.rail(0) + last.rail(1)).toBeCloseTo(drag(1.6), 3);
  });
});

describe('a banker at the rear', () => {
  it('leaves a node without force where the front engine’s pull is used up', () => {
    const train = [engine(0.4), ...wagons(9), engine(0.4, { stallForce: 0.7 })];
    const speed = (0.8 * 1.9 - drag(1.7)) / (1.9 / 0.6);
    const last = end(run(trial(level(16, grade), train, [at(0, 0.8, 1)], { script: { timeLimit: 16 } })));
    const front = 1.2 * (0.8 - speed / 0.6) - drag(0.4);
    for (let j = 0; j < 10; j++) expect(last.force(j)).toBeCloseTo(front - j * drag(0.1), 3);
    // As many wagons are pulled as the front engine can: joints ahead of the node draw, those behind push.
    const node = front / drag(0.1);
    expect(node).toBeGreaterThan(1);
    expect(node).toBeLessThan(9);
    const signs = Array.from({ length: 10 }, (_, j) => Math.sign(last.force(j)));
    expect(signs.lastIndexOf(1)).toBe(Math.floor(node));
    expect(signs.indexOf(-1)).toBe(Math.floor(node) + 1);
  });

  it('moves the node back when it eases off, and off the train when it shuts', () => {
    const train = [engine(0.4), ...wagons(6), engine(0.4, { worm: false })];
    const orders = [at(0, 0.8, 1), { when: { time: 8 }, setting: 0.4, ramp: 1, vehicle: 7 }];
    const result = run(trial(level(20, grade), train, orders, { script: { timeLimit: 18 } }));
    const pushed = (time: number) => {
      const f = Math.round(time / result.interval);
      return result.force.slice(f * 7, f * 7 + 7).filter((force) => force < 0).length;
    };
    expect(pushed(7.5)).toBeGreaterThan(pushed(17.5));
    // 1.2·(0.8 + 0.4) - 4·v = D: the banker no longer bears its own weight, and everything is in draft.
    const speed = (1.2 * 1.2 - drag(1.4)) / 4;
    expect(1.2 * (0.4 - speed / 0.6)).toBeLessThan(drag(0.4));
    expect(pushed(17.5)).toBe(0);
    expect(end(result).speed / speed).toBeCloseTo(1, 3);
  });
});

describe('weight that does not drive', () => {
  it('of a tender or a pony truck pulls down but does not grip', () => {
    // Turned up over 20 s, so that starting costs a hundredth of a newton. 290 g with 170 g on driven wheels at 0.2 grip 0.333 N; on 2 % engine and 6 wagons ask 0.31 N, and 7 ask 0.34 N.
    const half = engine(0.29, { drivenMass: 0.17, adhesion: 0.2, slidingAdhesion: 0.15, stallForce: 2 });
    const grip = 0.2 * 0.17 * g * Math.cos(pitch);
    const outcome = (count: number) =>
      run(trial(level(10, grade), [half, ...wagons(count)], [at(0.2, 0.3, 20)], { script: { timeLimit: 24 } }));
    expect(drag(0.29 + 0.6)).toBeLessThan(grip);
    expect(drag(0.29 + 0.7)).toBeGreaterThan(grip);
    const passes = outcome(6);
    expect(passes.outcome).toBe('time-limit');
    expect(passes.gripLimit.at(-1)).toBeCloseTo(grip, 6);
    expect(outcome(7).outcome).toBe('stalled');
  });
});

describe('a train that parts on a grade', () => {
  /** Level to 3.5 m, then 3 %. */
  const bank = (length: number): Track =>
    makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(length)],
      profile: {
        points: [
          { chainage: 0, height: 0.6 },
          { chainage: 3.5, height: 0.6, curve: { length: 0.4 } },
          { chainage: length, height: 0.6 + 0.03 * (length - 3.5) },
        ],
      },
    });
  const weakLink = (release: number) => [engine(0.4), wagon(0.1), wagon(0.1), wagon(0.1, { release }), wagon(0.1)];

  it('loses its rear part, which runs back to the end of the track at the speed its fall gives it', () => {
    // Two wagons ask 0.029 N behind the weak joint on the level and 0.088 N on 3 %: it lets go on the way up.
    const result = run(trial(bank(14), weakLink(0.08), [at(0.2, 0.5, 1)], { script: { timeLimit: 60 } }));
    const parting = result.events.find((event) => event.kind === 'parting')!;
    expect(parting.subject).toBe(2);
    expect(parting.chainage).toBeGreaterThan(3.2);
    expect(result.outcome).toBe('parted');
    // Each part is still simulated on: the front climbs to its end meanwhile.
    expect(result.chainage[(result.frames - 1) * 5]!).toBeGreaterThan(parting.chainage + 1);
    // Rolling takes 1.5 % of the way back; the fall is not enough for the level, so they come to rest there.
    const last = (result.frames - 1) * 5;
    const rest = result.events.some((event) => event.kind === 'end-of-track');
    const highest = (i: number) => Math.max(...result.chainage.filter((_, k) => k % 5 === i));
    const [top, stop] = [highest(3), result.chainage[last + 3]!];
    const height = (s: number) => (s > 3.7 ? 0.03 * (s - 3.5) : s < 3.3 ? 0 : (0.03 * (s - 3.3) * (s - 3.3)) / 0.8);
    expect(rest).toBe(false);
    expect(result.speed[last + 3]).toBe(0);
    // Energy: what the fall gives rolling takes, 1.5 % of the plan way; the last wagon stands 0.12 m behind and falls less.
    const fall = (height(top) - height(stop) + height(top - 0.12) - height(stop - 0.12)) / 2;
    expect(fall / (0.015 * (top - stop))).toBeCloseTo(1, 2);
  });

  it('runs off the end when the grade goes on to there', () => {
    const result = run(
      trial(level(12, 0.04), weakLink(0.08), [at(0.2, 0.6, 0.3)], { script: { start: 6, timeLimit: 60 } }),
    );
    expect(result.outcome).toBe('parted');
    const leaving = result.events.at(-1)!;
    expect(leaving.kind).toBe('end-of-track');
    expect(leaving.subject).toBe(4);
    // Its end, 50 mm behind its middle, has just passed the end of the rail.
    expect(leaving.chainage).toBeLessThan(0.05);
    expect(leaving.chainage).toBeGreaterThan(0.05 - 0.0011 * Math.abs(leaving.value));
    // Falling 4 % less 1.5 % from where it parted: v² = 2·g·(sin - 0.015·cos)·way.
    const highest = Math.max(...result.chainage.filter((_, k) => k % 5 === 4));
    const angle = Math.atan(0.04);
    const pull = g * (Math.sin(angle) - 0.015 * Math.cos(angle));
    const way = (highest - leaving.chainage) / Math.cos(angle);
    expect(-leaving.value / Math.sqrt(2 * pull * way)).toBeCloseTo(1, 3);
  });

  it('goes on until the lost part lies still when the front arrives before', () => {
    // 3 % from 3.5 to 6 m, then 5 %: there two wagons ask 0.127 N, and the front is nearly through.
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(14)],
      profile: {
        points: [
          { chainage: 0, height: 0.6 },
          { chainage: 3.5, height: 0.6, curve: { length: 0.4 } },
          { chainage: 6, height: 0.675, curve: { length: 0.4 } },
          { chainage: 14, height: 1.075 },
        ],
      },
    });
    const result = run(trial(track, weakLink(0.11), [at(0.2, 0.8, 6)], { script: { finish: 7.5, timeLimit: 90 } }));
    const arrived = result.events.find((event) => event.kind === 'arrived')!;
    expect(arrived).toBeDefined();
    expect(result.events.at(-1)!.time).toBeGreaterThanOrEqual(arrived.time);
    expect(result.outcome).toBe('parted');
    const last = (result.frames - 1) * 5;
    const then = Math.floor(arrived.time / result.interval) * 5;
    expect(result.speed[then]).toBeGreaterThan(0);
    // It tells how fast its leading vehicle came in: as at the frame before, but for what a frame of 20 ms changes.
    expect(Math.abs(arrived.value / result.speed[then]! - 1)).toBeLessThan(0.05);
    expect(result.speed[then + 4]).toBeLessThan(0);
    for (let i = 0; i < 5; i++) expect(result.speed[last + i]).toBe(0);
    expect(result.setting.at(-1)).toBe(0);
  });
});

describe('magnets', () => {
  // Shanks that damp well: stiff springs would throw the magnets apart again as they meet.
  const magnet = { release: 0.2, recouples: true, damping: 60 };
  const train = [engine(0.4, {}, magnet), ...new Array(3).fill(wagon(0.1, magnet))];
  // Snatched away, stopped, pushed back on at 48 mm/s, drawn off gently.
  const orders = [at(0, 1, 0), at(0.6, 0, 0.1), at(2, -0.08, 0.5), at(18, 0, 1.5), at(20, 0.3, 4)];

  it('let go above their force and couple again when pushed together, and only then', () => {
    const result = run(trial(level(8), train, orders, { script: { start: 3, timeLimit: 27 } }));
    const kinds = result.events.filter((event) => event.kind === 'parting' || event.kind === 'recoupling');
    expect(kinds.map((event) => event.kind)).toEqual(['parting', 'recoupling']);
    expect(kinds[0]!.value).toBeGreaterThan(0.2);
    const [apart, together] = kinds.map((event) => Math.round(event.time / result.interval));
    const j = kinds[0]!.subject;
    for (let f = apart! + 1; f < together!; f++) expect(result.force[f * 3 + j]).toBe(0);
    expect(kinds[1]!.time).toBeGreaterThan(2);
    expect(kinds[1]!.value).toBe(0);
    // Afterwards it pulls again: three wagons at 1.5 %, less those ahead of the joint.
    expect(result.outcome).toBe('time-limit');
    expect(result.force[(result.frames - 1) * 3 + j]).toBeCloseTo((3 - j) * 0.0015 * g, 3);
    expect(Math.abs(result.energy.residual)).toBeLessThan(1e-6 * result.energy.motor);
  });

  it('that are ordinary couplings stay parted when pushed', () => {
    const plain = train.map((vehicle) => ({
      ...vehicle,
      front: { ...vehicle.front, coupling: { ...vehicle.front.coupling, recouples: false } },
    }));
    const result = run(trial(level(8), plain, orders, { script: { start: 3, timeLimit: 14 } }));
    expect(result.events.some((event) => event.kind === 'recoupling')).toBe(false);
    expect(result.outcome).toBe('parted');
  });
});
