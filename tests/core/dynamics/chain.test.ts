import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { evenly } from '../../evenly.ts';
import { chainOn, momentum } from './chains.ts';
import { level, wagon } from './trains.ts';

const free = { rolling: { coulomb: 0, perSpeed: 0, breakaway: 1 } };
const noDrag = { curveFactor: 0, flangeFriction: 0 };

describe('the chain below it', () => {
  const made = new Map<string, ReturnType<typeof wagon>>();
  /** One object a kind, so that the route is tabulated once a kind. */
  const hostile = ({ m, k, s }: { m: number; k: number; s: number }) => {
    const key = `${m} ${k} ${s}`;
    const known = made.get(key) ?? wagon(m, { draftStiffness: k, buffStiffness: k, slack: s / 2 });
    made.set(key, known);
    return known;
  };
  const masses = fc.array(fc.double({ min: 0.02, max: 1, noNaN: true }), { minLength: 2, maxLength: 9 });

  it('keeps momentum whatever the joints do, when nothing outside acts', () => {
    fc.assert(
      fc.property(masses, evenly(0, 0.003), fc.infiniteStream(evenly(-0.3, 0.3)), (ms, slack, stream) => {
        const vehicles = ms.map((m) => wagon(m, { slack }, free));
        const chain = chainOn(level(4), vehicles, 2.5, { forces: noDrag, speeds: [...stream.take(ms.length)] });
        const before = momentum(chain, ms);
        chain.advance(500);
        expect(momentum(chain, ms)).toBeCloseTo(before, 9);
        expect(chain.unsettled).toBe(0);
      }),
      { numRuns: 40 },
    );
  });

  it('is of second order in the step where nothing sticks', () => {
    // Undamped and without slack a joint is one linear spring, so nothing touches.
    const truck = wagon(
      0.08,
      { damping: 0, draftStiffness: 200, buffStiffness: 200 },
      { rolling: { coulomb: 0.01, perSpeed: 0.05, breakaway: 1 } },
    );
    const sag = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(6)],
      profile: {
        points: [
          { chainage: 0, height: 0.1 },
          { chainage: 3, height: 0, curve: { length: 4 } },
          { chainage: 6, height: 0.1 },
        ],
      },
    });
    const speeds = (step: number) => {
      const chain = chainOn(sag, [truck, truck, truck, truck], 2, { step, speeds: [0.4, 0.38, 0.41, 0.4] });
      chain.advance(Math.round(1 / step));
      return [0, 1, 2, 3].map(chain.speed);
    };
    const [a, b, c] = [speeds(0.001), speeds(0.0005), speeds(0.00025)] as const;
    const far = (p: number[], q: number[]) => Math.max(...p.map((v, i) => Math.abs(v - q[i]!)));
    const order = Math.log2(far(a, b) / far(b, c));
    expect(order).toBeGreaterThan(1.9);
    expect(order).toBeLessThan(2.1);
  });

  it('keeps energy when joints are undamped, blows in the slack included', () => {
    const vehicles = [0.1, 0.3, 0.05, 0.2].map((m) => wagon(m, { slack: 0.002, damping: 0 }, free));
    const chain = chainOn(level(4), vehicles, 2.5, { forces: noDrag, speeds: [0.1, -0.2, 0.3, 0] });
    const before = chain.kinetic() + chain.stored();
    chain.advance(5000);
    expect((chain.kinetic() + chain.stored()) / before).toBeCloseTo(1, 8);
  });

  it('keeps energy when springs are driven through both their stages', () => {
    // 0.3 m/s between 0.1 and 0.3 kg would take 6 mm of 200 N/m: stops 20 times as stiff are met again and again.
    const stops = { draftSecond: { from: 0.0005, stiffness: 8000 }, buffSecond: { from: 0.0005, stiffness: 8000 } };
    const soft = { slack: 0.001, damping: 0, draftStiffness: 400, buffStiffness: 400 };
    const start = (couplings: object) => {
      const vehicles = [0.1, 0.3, 0.05, 0.2, 0.1].map((m) => wagon(m, { ...soft, ...couplings }, free));
      return chainOn(level(4), vehicles, 2.5, { forces: noDrag, speeds: [0.1, -0.2, 0.3, 0, -0.1] });
    };
    const [staged, plain] = [start(stops), start({})];
    const before = staged.kinetic() + staged.stored();
    staged.advance(5000);
    plain.advance(5000);
    expect((staged.kinetic() + staged.stored()) / before).toBeCloseTo(1, 8);
    expect(staged.unsettled).toBe(0);
    // The stops do something: without them the same train moves otherwise.
    expect(Math.max(...[0, 1, 2, 3, 4].map((i) => Math.abs(staged.speed(i) - plain.speed(i))))).toBeGreaterThan(0.01);
  });

  it('is the same train from either end', () => {
    // Eight vehicles and nine: the fold in the middle falls on a joint and on a vehicle that has no partner.
    for (const count of [1, 2, 8, 9]) {
      const masses = Array.from({ length: count }, (_, i) => 0.05 + 0.02 * ((i * 7) % 5));
      const speeds = masses.map((_, i) => 0.1 - 0.05 * ((i * 3) % 4));
      const there = chainOn(
        level(6),
        masses.map((m) => wagon(m, { slack: 0.001 })),
        4,
        { forces: noDrag, speeds },
      );
      const back = chainOn(
        level(6),
        [...masses].reverse().map((m) => wagon(m, { slack: 0.001 })),
        4,
        {
          forces: noDrag,
          speeds: [...speeds].reverse().map((v) => -v),
        },
      );
      there.advance(400);
      back.advance(400);
      for (let i = 0; i < count; i++) expect(back.speed(count - 1 - i)).toBeCloseTo(-there.speed(i), 9);
    }
  });

  it('settles every step of hostile trains: mass ratio 1:1000, no slack, much slack, stiff and soft joints', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            m: fc.constantFrom(0.001, 0.05, 1),
            k: fc.constantFrom(50, 4000, 1e6),
            s: fc.constantFrom(0, 0.001, 0.05),
          }),
          { minLength: 2, maxLength: 12 },
        ),
        evenly(-0.5, 0.5),
        (list, v) => {
          const chain = chainOn(level(4, 0.02), list.map(hostile), 3, { speeds: list.map((_, i) => (i % 2 ? v : -v)) });
          const start = chain.kinetic() + chain.potential() + chain.stored();
          chain.advance(800);
          const { rolling, curve, flange, coupler } = chain.losses();
          const end = chain.kinetic() + chain.potential() + chain.stored() + rolling + curve + flange + coupler;
          expect(chain.unsettled).toBe(0);
          expect(list.every((_, i) => Number.isFinite(chain.speed(i)))).toBe(true);
          expect(Math.abs(end - start)).toBeLessThan(1e-6 * Math.max(Math.abs(start), 1e-3));
        },
      ),
      { numRuns: 60 },
    );
  });
});
