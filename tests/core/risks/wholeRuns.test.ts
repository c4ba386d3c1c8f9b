import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import type { RunInput } from '../../../src/core/dynamics/types.ts';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext, RiskSeries } from '../../../src/core/risks/types.ts';
import { turnVehicle } from '../../../src/core/stock/index.ts';
import type { Coupling, Vehicle } from '../../../src/core/stock/types.ts';
import { reverseTrack, type Track } from '../../../src/core/track/index.ts';
import { evenly } from '../../evenly.ts';
import { at, engine, trainLength, trial, wagon } from '../dynamics/trains.ts';
import { sampleTrack, variedElements, variedGrades } from '../stock/samples.ts';
import { mirroredTrack, scaledTrack, scaledVehicle } from './similar.ts';

/*
 * A whole trial, solved and judged, and the same trial in another dress: as its mirror image, from the other end, at another size. Mechanics knows no
 * left or right, no front, and no scale as long as all goes by Froude's rule; so neither may anything that comes out.
 */

const buffers = { spacing: 0.02, height: 0.012, headWidth: 0.006, headHeight: 0.005, length: 0.005 };
const half: Partial<Coupling> = { slack: 0, damping: 8, faceTilt: 0.4, headHeightTolerance: 0.0003 };

/** A vehicle that is unlike at its ends: centre of mass off its middle, overhangs and couplings of their own. */
const van = (mass: number, ahead: number): Vehicle => {
  const plain = wagon(mass, half, { frontOverhang: 0.017, rearOverhang: 0.023, massAhead: ahead, rolling: rolls });
  return {
    ...plain,
    front: { coupling: plain.front.coupling, buffers },
    rear: { coupling: { ...plain.rear.coupling, headHeight: 0.0104, reach: 0.018 }, buffers },
  };
};
const rolls = { coulomb: 0.015, perSpeed: 0.02, breakaway: 1.2 };
const tug = engine(0.3, { stallForce: 1.5, drivenWheelbase: 0.05, transferShare: 0.2, worm: false }, half, {
  rolling: rolls,
});

const trains = fc
  .record({
    masses: fc.array(fc.double({ min: 0.03, max: 0.12, noNaN: true }), { minLength: 2, maxLength: 4 }),
    ahead: evenly(-0.008, 0.008),
    place: fc.nat(4),
  })
  .map(({ masses, ahead, place }) => {
    const vans = masses.map((mass) => van(mass, ahead));
    return vans.toSpliced(Math.min(place, vans.length), 0, tug);
  });
const tasks = fc.record({
  vehicles: trains,
  radius: fc.double({ min: 0.55, max: 0.9, noNaN: true }),
  setting: fc.double({ min: 0.5, max: 0.9, noNaN: true }),
});
type Task = typeof tasks extends fc.Arbitrary<infer T> ? T : never;

const seconds = 4;
const inputOf = (track: Track, { vehicles, setting }: Task): RunInput =>
  trial(track, vehicles, [at(0, setting, 0.5), at(2.5, 0.2, 0.3)], {
    script: { start: trainLength(vehicles) + 0.2, finish: track.length - 0.01, timeLimit: seconds },
  });

const judged = (input: RunInput, size = 1) => {
  const result = run(input);
  const context: RiskContext = {
    path: input.path,
    train: input.train,
    run: result,
    surroundings: { tracks: [input.path.track], deckDepth: 0.017 * size, deckHalfWidth: 0.03 * size },
    propelled: false,
  };
  return { result, risks: assessRun(context) };
};

/** Numbers side by side, `other` measured in `unit`: as near as `within` of the greatest of them. Where one has nothing to say, NaN, neither has the other, but for one moment in twenty. */
function expectAlike(name: string, one: ArrayLike<number>, other: ArrayLike<number>, within: number, unit = 1): void {
  expect(other.length, name).toBe(one.length);
  let [off, most, unlike] = [0, 1e-12, 0];
  for (let k = 0; k < one.length; k++) {
    const [a, b] = [one[k]!, other[k]! / unit];
    if (Number.isNaN(a) !== Number.isNaN(b)) unlike++;
    else if (a !== b && !Number.isNaN(a)) {
      off = Math.max(off, Math.abs(b - a));
      most = Math.max(most, Math.abs(a));
    }
  }
  expect(off / most, name).toBeLessThanOrEqual(within);
  // Whether a joint that bears next to nothing pulls or pushes is for the last digits to say.
  expect(unlike, name).toBeLessThanOrEqual(within === 0 ? 0 : one.length / 20);
}

/*
 * Where two runs can differ: the route is tabulated every 2 mm, at any size and from whichever end, so that a larger model has it more finely, and a train from the
 * other end at other places. Measured: chainages to 1e-6, speeds to 1e-5, forces and margins to 1e-3 of their greatest, blows at a start to 3e-3.
 */
const table = { chainage: 5e-6, speed: 5e-5, force: 5e-3, blow: 1e-2, energy: 2e-5, margin: 3e-3 };

const riskUnits = { length: 1, force: 3, share: 0, angle: 0 } as const;

/** Margins side by side: every risk's unit as a power of the size. */
function expectMargins(one: readonly RiskSeries[], other: readonly RiskSeries[], within: number, size = 1): void {
  expect(other.map(({ risk }) => risk)).toEqual(one.map(({ risk }) => risk));
  one.forEach(({ risk, margins }, r) => {
    expectAlike(risk, margins, other[r]!.margins, within, size ** riskUnits[riskById(risk).unit]);
  });
}

const eventsOf = ({ events }: ReturnType<typeof run>) => events.map(({ kind, subject }) => `${kind} ${subject}`);

describe('a whole trial', () => {
  it('is that of its mirror image: to the bit as it runs, and as it is judged', () => {
    fc.assert(
      fc.property(tasks, (task) => {
        const track = sampleTrack(variedElements(task.radius), variedGrades);
        const [one, other] = [judged(inputOf(track, task)), judged(inputOf(mirroredTrack(track), task))];
        expect(one.result.frames).toBeGreaterThan(150);
        expect([...other.result.chainage]).toEqual([...one.result.chainage]);
        expect([...other.result.force]).toEqual([...one.result.force]);
        expect(eventsOf(other.result)).toEqual(eventsOf(one.result));
        expect(other.result.energy).toEqual(one.result.energy);
        // A chord placed to 1e-13 m, held against a margin of some mm.
        expectMargins(one.risks, other.risks, 1e-7);
      }),
      { numRuns: 3 },
    );
  });

  it('is that of a model four times and 2¼ times as large: lengths by k, masses and forces by k³, times by √k', () => {
    fc.assert(
      fc.property(tasks, fc.constantFrom(4, 2.25), (task, k) => {
        const track = sampleTrack(variedElements(task.radius), variedGrades);
        const input = inputOf(track, task);
        const root = Math.sqrt(k);
        const { script, options, train } = input;
        const other: RunInput = {
          path: { track: scaledTrack(track, k), reversed: false },
          train: { ...train, vehicles: train.vehicles.map((vehicle) => scaledVehicle(vehicle, k)) },
          script: {
            ...script,
            start: script.start * k,
            finish: script.finish * k,
            timeLimit: script.timeLimit * root,
            orders: script.orders.map((order) => ({
              ...order,
              when: 'time' in order.when ? { time: order.when.time * root } : { chainage: order.when.chainage * k },
              ramp: order.ramp * root,
            })),
          },
          options: {
            ...options,
            step: options.step * root,
            frameInterval: options.frameInterval * root,
            stallPatience: options.stallPatience * root,
          },
        };
        const [small, large] = [judged(input), judged(other, k)];
        expect(small.result.frames).toBeGreaterThan(150);
        expectAlike('time', small.result.time, large.result.time, 1e-12, root);
        expectAlike('chainage', small.result.chainage, large.result.chainage, table.chainage, k);
        expectAlike('speed', small.result.speed, large.result.speed, table.speed, root);
        expectAlike('force', small.result.force, large.result.force, table.force, k ** 3);
        expectAlike('peaks', small.result.buffPeak, large.result.buffPeak, table.blow, k ** 3);
        expect(large.result.outcome).toBe(small.result.outcome);
        for (const part of ['motor', 'potential', 'rolling', 'curve', 'flange', 'coupler', 'slip'] as const) {
          // Force by length.
          expectAlike(
            part,
            [small.result.energy[part]],
            [large.result.energy[part]],
            part === 'coupler' ? table.force : table.energy,
            k ** 4,
          );
        }
        expectMargins(small.risks, large.risks, table.margin, k);
      }),
      { numRuns: 3 },
    );
  });

  it('is that of the train set turned about on the track run the other way, its settings turned round', () => {
    fc.assert(
      fc.property(tasks, (task) => {
        const track = sampleTrack(variedElements(task.radius), variedGrades);
        const input = inputOf(track, task);
        const turned = task.vehicles.map(turnVehicle).reverse();
        const one = judged(input);
        const n = turned.length;
        // The other body end, where the first run begins: half the leading body and its front before the first origin, and so on to the last one's rear.
        const rearAt =
          one.result.chainage[n - 1]! - task.vehicles[n - 1]!.pivotSpacing / 2 - task.vehicles[n - 1]!.rearOverhang;
        const other = judged({
          ...input,
          path: { track: reverseTrack(track), reversed: true },
          train: { name: 'turned', vehicles: turned },
          script: {
            ...input.script,
            start: track.length - rearAt,
            finish: track.length - 0.001,
            orders: input.script.orders.map((order) => ({ ...order, setting: -order.setting })),
          },
        });
        const [a, b] = [one.result, other.result];
        const frames = Math.min(a.frames, b.frames);
        expect(frames).toBeGreaterThan(150);
        const column = (values: Float64Array, width: number, k: number) =>
          Array.from({ length: frames }, (_, f) => values[f * width + k]!);
        for (let i = 0; i < n; i++) {
          const there = column(b.chainage, n, n - 1 - i).map((s) => track.length - s);
          expectAlike(`chainage ${i}`, column(a.chainage, n, i), there, table.chainage);
          expectAlike(
            `speed ${i}`,
            column(a.speed, n, i),
            column(b.speed, n, n - 1 - i).map((v) => -v),
            table.speed,
          );
        }
        for (let j = 0; j + 1 < n; j++) {
          expectAlike(`force ${j}`, column(a.force, n - 1, j), column(b.force, n - 1, n - 2 - j), table.force);
        }
      }),
      { numRuns: 3 },
    );
  });
});
