import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import { at, engine, level, trial, wagon } from './trains.ts';

const g = 9.80665;
const blowsOf = (result: ReturnType<typeof run>) =>
  result.events.filter(({ kind }) => kind === 'run-in' || kind === 'run-out');

describe('blows in the couplings', () => {
  // Slack of 0.15 m either side: at 0.2 m/s the next joint is met after three quarters of a second, when the wave before has passed.
  const apart = { slack: 0.15, damping: 4 };

  it.each([
    ['a light wagon behind a heavy one', [0.3, 0.02]],
    ['a heavy wagon behind a light one', [0.02, 0.3]],
  ])('are told one by one where they come one by one, by the weight of the lighter: %s', (_name, masses) => {
    const train = [engine(0.4, {}, apart), ...masses.map((mass) => wagon(mass, apart))];
    const result = run(trial(level(14), train, [at(0, 0.35, 0.5)], { script: { timeLimit: 12 } }));
    const firsts = [0, 1].map((joint) => blowsOf(result).find(({ subject }) => subject === joint)!);
    firsts.forEach((blow, joint) => {
      expect(blow.kind).toBe('run-out');
      const lighter = Math.min([0.4, ...masses][joint]!, [0.4, ...masses][joint + 1]!);
      expect(blow.value).toBeGreaterThan(0.05 * lighter * g);
      // The value is the peak of its frame, and the place the middle of its joint.
      const frame = Math.round(blow.time / result.interval);
      expect(result.draftPeak[2 * frame + joint]).toBe(blow.value);
      expect(blow.chainage).toBeCloseTo(
        0.5 * (result.chainage[3 * frame + joint]! + result.chainage[3 * frame + joint + 1]!),
        6,
      );
    });
    expect(firsts[1]!.time - firsts[0]!.time).toBeGreaterThan(0.6);
  });

  it('weaker than a twentieth of the lighter neighbour’s weight are none', () => {
    // 1 mm of slack taken up at half a millimetre a second: v·√(k·m*) is 3 mN, and the wagon's own drag 1 mN, of 9.8 mN.
    const close = { slack: 0.001, damping: 4 };
    const easy = { rolling: { coulomb: 0.005, perSpeed: 0, breakaway: 1 } };
    const train = [engine(0.4, {}, close, easy), wagon(0.3, close, easy), wagon(0.02, close, easy)];
    const drag = (mass: number) => mass * g * 0.005;
    const setting = drag(0.72) / 1.2 + 0.0005 / 0.6;
    const result = run(
      trial(level(4), train, [at(0, setting, 4)], { script: { timeLimit: 20 }, options: { stallPatience: 100 } }),
    );
    // The joint was met: it draws what hangs behind it.
    expect(result.force[(result.frames - 1) * 2 + 1]! / drag(0.02)).toBeCloseTo(1, 1);
    expect(Math.max(...result.draftPeak.filter((_, k) => k % 2 === 1))).toBeLessThan(0.05 * 0.02 * g);
    expect(blowsOf(result).filter(({ subject }) => subject === 1)).toEqual([]);
  });

  it('near together are one wave, told by its strongest', () => {
    const slack = { slack: 0.001 };
    const train = [engine(0.4, {}, slack), ...new Array(5).fill(wagon(0.1, slack))];
    const result = run(trial(level(9), train, [at(0, 0.8, 0), at(2, 0, 0.05)], { script: { timeLimit: 4 } }));
    const [out, into] = ['run-out', 'run-in'].map((kind) => result.events.filter((event) => event.kind === kind));
    const strongest = (column: Float64Array, from: number, to: number) =>
      Math.max(...[...column.subarray(5 * Math.round(from / 0.02), 5 * Math.round(to / 0.02))].map(Math.abs));
    expect(out!.filter(({ time }) => time < 2)).toHaveLength(1);
    expect(out![0]!.value).toBe(strongest(result.draftPeak, 0, 2));
    // The engine is cut and its worm brakes: from slack or draft the train runs in on it.
    const [first] = into!;
    expect(first!.time).toBeGreaterThan(2);
    expect(first!.value).toBe(result.buffPeak[5 * Math.round(first!.time / 0.02) + first!.subject]);
    // Joints that push already may be pressed harder; as a blow, into no contact, none was.
    expect(-first!.value).toBeGreaterThan(0.9 * strongest(result.buffPeak, 2, 4));
  });

  it('into open slack are told too, where the joint neither drew nor pushed before', () => {
    // 0.15 m of slack closed at the pace of a pushing engine, which leaves the joint free for the better part of a second.
    const train = [wagon(0.1, apart), engine(0.4, {}, apart)];
    const result = run(trial(level(9), train, [at(0, 0.35, 0.5)], { script: { timeLimit: 5 } }));
    const [first] = blowsOf(result);
    expect(first!.kind).toBe('run-in');
    expect(first!.time).toBeGreaterThan(0.5);
    const frame = Math.round(first!.time / result.interval);
    expect(result.force[frame - 2]).toBe(0);
    expect(first!.value).toBe(result.buffPeak[frame]);
  });
});
