import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holdingSetting, shareDemand } from '../../../src/core/dynamics/engineShares.ts';
import type { Drive } from '../../../src/core/stock/types.ts';
import { evenly } from '../../evenly.ts';
import { engine } from './trains.ts';

const drive = (stallForce: number, freeSpeed: number, worm: boolean): Drive =>
  engine(0.3, { stallForce, freeSpeed, worm }).drive!;

/** A pulls 1 N at a stand and runs 0.4 m/s with nothing to pull, B 3 N and 1 m/s. */
const a = (worm: boolean) => drive(1, 0.4, worm);
const b = (worm: boolean) => drive(3, 1, worm);

function share(drives: readonly Drive[], settings: readonly number[], asked: number) {
  const pulls = new Float64Array(drives.length);
  const speed = shareDemand(drives, settings, asked, pulls);
  return { speed, pulls: [...pulls] };
}

const expectShares = (found: ReturnType<typeof share>, speed: number, pulls: readonly number[]) => {
  expect(found.speed).toBeCloseTo(speed, 12);
  expect(found.pulls).toHaveLength(pulls.length);
  pulls.forEach((pull, e) => {
    expect(found.pulls[e]).toBeCloseTo(pull, 12);
  });
};

// By hand, from straight motor lines (common practice for permanent-magnet motors, no source): A at full setting gives
// 1 N - 2.5 N·s/m · v, B at half setting 1.5 N - 3 N·s/m · v, together 2.5 N - 5.5 N·s/m · v.
describe('engines that share a demand', () => {
  it('run at the speed at which their lines add up to it', () => {
    expectShares(share([a(false), b(false)], [1, 0.5], 0.85), 0.3, [0.25, 0.6]);
    // Worms change nothing below the speed of the slower setting, 0.4 m/s.
    expectShares(share([a(true), b(true)], [1, 0.5], 0.85), 0.3, [0.25, 0.6]);
  });

  it('brake by their lines where the train pushes and no worm holds', () => {
    expectShares(share([a(false), b(false)], [1, 0.5], -0.8), 0.6, [-0.5, -0.3]);
  });

  it('go no faster than the slowest worm lets them, whose engine bears what is left', () => {
    // A's worm stops at 0.4 m/s, where B still pulls 0.3 N against it; B's at 0.5 m/s, where A is dragged with 0.25 N.
    expectShares(share([a(true), b(true)], [1, 0.5], -0.8), 0.4, [-1.1, 0.3]);
    expectShares(share([b(true), a(true)], [0.5, 1], -0.8), 0.4, [0.3, -1.1]);
    expectShares(share([a(false), b(true)], [1, 0.5], -0.8), 0.5, [-0.25, -0.55]);
  });

  it('bear it standing by what their motors give, and alike where they give nothing', () => {
    expectShares(share([a(false), b(false)], [1, 0.5], 5), 0, [2, 3]);
    expectShares(share([a(true), b(true)], [0, 0], 0.5), 0, [0.25, 0.25]);
    // A worm at no setting lets nothing move, however the train pushes.
    expectShares(share([a(true), b(false)], [0, 0], -0.5), 0, [-0.25, -0.25]);
  });

  it('do so however weak they are, and not at all where there are none', () => {
    // Lines of 0.25 and 0.2 N·s/m, 0.1 N and 0.1 N at a stand.
    const weak = [drive(0.1, 0.4, false), drive(0.1, 0.5, false)];
    expectShares(share(weak, [1, 1], 0.11), 0.2, [0.05, 0.06]);
    expectShares(share(weak, [1, 0.5], 0.3), 0, [0.2, 0.1]);
    // A train without engines has no speed of balance, pushed or pulled.
    expectShares(share([], [], -1), 0, []);
    expectShares(share([], [], 1), 0, []);
  });

  it('need a setting for a speed at which they then run at that speed, worms or none', () => {
    const force = fc.double({ min: 0.2, max: 4, noNaN: true });
    const fast = fc.double({ min: 0.1, max: 1.2, noNaN: true });
    const one = fc.tuple(force, fast, fc.boolean());
    const demand = evenly(-2, 4);
    fc.assert(
      fc.property(one, one, demand, fc.double({ min: 0.01, max: 0.5, noNaN: true }), (p, q, asked, speed) => {
        const drives = [drive(...p), drive(...q)];
        const setting = holdingSetting(drives, speed, asked, Number.POSITIVE_INFINITY);
        // Motors without a worm that would have to be turned backwards to brake: nothing is the least there is.
        if (setting === 0) {
          const line = p[0] / p[1] + q[0] / q[1];
          expect(asked + line * speed).toBeLessThanOrEqual(0);
          expect(p[2] || q[2]).toBe(false);
          return;
        }
        const found = share(drives, [setting, setting], asked);
        expect(found.speed).toBeCloseTo(speed, 9);
        expect(found.pulls[0]! + found.pulls[1]!).toBeCloseTo(asked, 9);
      }),
    );
  });

  it('are given no higher setting than allowed', () => {
    // Both lines at 0.2 m/s take 0.5 N + 0.6 N from 4 N: 1 N more asks for 2.1/4.
    expect(holdingSetting([a(false), b(false)], 0.2, 1, 1)).toBeCloseTo(0.525, 12);
    expect(holdingSetting([a(false), b(false)], 0.2, 1, 0.5)).toBe(0.5);
    // Pushed, the worms ask for 0.2/0.4 and 0.2/1: the greater lets both run.
    expect(holdingSetting([a(true), b(true)], 0.2, -3, 1)).toBe(0.5);
    expect(holdingSetting([b(true), a(true)], 0.2, -3, 1)).toBe(0.5);
    expect(holdingSetting([a(false), b(false)], 0.2, -3, 1)).toBe(0);
  });
});
