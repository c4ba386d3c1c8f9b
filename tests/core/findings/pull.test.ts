import { describe, expect, it } from 'vitest';
import { defaultRunOptions } from '../../../src/core/dynamics/index.ts';
import { collectFindings, type Driven } from '../../../src/core/findings/index.ts';
import type { Finding } from '../../../src/core/findings/types.ts';
import { assessRun } from '../../../src/core/risks/index.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import type { Moment } from '../risks/samples.ts';
import { sampleDrive } from '../risks/samples.ts';
import { along, engine, ramp, van } from './samples.ts';

// An engine of 200 g with 0.392 N of grip and wagons of 100 g on 2 % up, straight. Wagons roll at 2 % of their weight: a kilogram asks
// 9.80665 N × (0.02 + 0.02) = 0.392 N, as much as the engine grips. Cures leave 2 % in hand.
const wagon = van({}, { mass: 0.1 });
const trainOf = (wagons: number): Vehicle[] => [engine(), ...Array.from({ length: wagons }, () => wagon)];

/** Driven over a metre and a half of the ramp of 6 m with one setting. */
const driven = (setting: number, timeLimit = 1e4): Driven => ({
  script: { start: 4.2, finish: 5.7, timeLimit, orders: [{ when: { time: 0 }, setting, ramp: 0 }] },
  options: defaultRunOptions,
});

function firstOf(
  risk: Finding['risk'],
  moment: Omit<Moment, 'lead'>,
  vehicles: readonly Vehicle[],
  timeLimit?: number,
): Finding {
  const context = along(ramp({}), vehicles, { force: 0.1, ...moment }, { from: 4.5, to: 4.6, step: 0.05 });
  const findings = collectFindings(assessRun(context), context, driven(moment.setting ?? 1, timeLimit));
  const found = findings.find((finding) => finding.risk === risk);
  if (found === undefined) throw new Error(`no finding of ${risk}`);
  return found;
}

/** Slipping where it stalled; what was asked there is less than what the route asks. */
const stalled = { setting: 1, motorLimit: 0.6, gripLimit: 0.392, demand: 0.41, rimSpeed: 0.4, railForce: 0.3 };

describe('a load too great for the grip', () => {
  const finding = firstOf('stall', stalled, trainOf(10));

  it('is blamed together with the grade', () => {
    expect(finding.verdict).toBe('fails');
    expect(finding.causes[0]).toEqual({ kind: 'grip-limit' });
    expect(finding.causes[1]).toEqual({ kind: 'grade', grade: expect.closeTo(0.02, 6) });
  });

  it('is short by what the wheels hold before they spin, not by what sliding ones give', () => {
    expect(finding.margin).toBeCloseTo(0.392 / 0.41 - 1, 12);
  });

  it('is cured for the whole route: 1.2 kg are to be 0.98 kg, which takes three wagons off', () => {
    expect(finding.cures).toContainEqual({ kind: 'fewer-vehicles', by: 3 });
  });

  it('is cured by weight that has to be carried up too: 0.2·(0.2 + x) = 1.02 × 0.04·(1.2 + x), so x = 56 g, in steps of 5 g: 60 g', () => {
    expect(finding.cures).toContainEqual({ kind: 'add-engine-weight', by: expect.closeTo(0.06, 9) });
  });

  it('has the same cures told of the spin', () => {
    const spin = firstOf('wheelspin', stalled, trainOf(10));
    expect(spin.verdict).toBe('fails');
    expect(new Set(spin.cures.map(({ kind }) => kind))).toEqual(new Set(['fewer-vehicles', 'add-engine-weight']));
    expect(spin.cures).toContainEqual({ kind: 'fewer-vehicles', by: 3 });
  });

  it('says what would pass: seven wagons; and that 1.2 kg climb 1.3 %, where 0.04/1.2 - 0.02 is left for the grade', () => {
    expect(finding.reach?.vehicles).toBe(7);
    expect(finding.reach?.grade).toBeCloseTo(0.013, 9);
    expect(finding.reach?.needed).toBeCloseTo(1.2 * 9.80665 * 0.04, 3);
    expect(finding.reach?.available).toBeCloseTo(0.392, 3);
  });

  it('is offered the weight that fits even where it is not enough, and told so, last', () => {
    // 2 kg would want 0.2·(0.2 + x) = 1.02 × 0.04·(2 + x): 261 g on an engine of 200 g.
    const heavy = trainOf(6).map((vehicle) => (vehicle.drive === null ? { ...vehicle, mass: 0.3 } : vehicle));
    const { cures } = firstOf('stall', stalled, heavy);
    expect(cures.at(-1)).toEqual({ kind: 'add-engine-weight', by: expect.closeTo(0.12, 9), enough: false });
    // 0.98 kg are 0.2 and two of 0.3 kg.
    expect(cures[0]).toEqual({ kind: 'fewer-vehicles', by: 4 });
  });

  it('shares the weight between two engines', () => {
    // 0.2·(0.2 + x) = 1.02 × 0.04·(1.2 + x) for both together, with half of grip and mass in each: 56 g are 2 × 28 g, so 30 g.
    const half = engine({ mass: 0.1, drive: sampleDrive({ drivenMass: 0.1, stallForce: 0.3 }) });
    const { cures } = firstOf('stall', { ...stalled, gripLimit: 0.196, demand: 0.205, railForce: 0.15 }, [
      half,
      half,
      ...trainOf(10).slice(1),
    ]);
    expect(cures).toContainEqual({ kind: 'add-engine-weight', by: expect.closeTo(0.03, 9) });
  });
});

describe('a motor that gives too little', () => {
  // 0.9 kg ask 0.353 N; half of 0.6 N is less, the grip is more by 11 %.
  const moment = { setting: 0.5, motorLimit: 0.3, gripLimit: 0.392, demand: 0.353 };

  it('is blamed, and helped by the least setting that gives 2 % more: 0.360 N of 0.6 N is 61 %', () => {
    const finding = firstOf('stall', moment, trainOf(7));
    expect(finding.causes[0]).toEqual({ kind: 'motor-limit' });
    expect(finding.cures).toContainEqual({ kind: 'setting', to: 0.61 });
  });

  it('is helped by more where time is short: 1.5 m in 15 s are 0.1 m/s and 0.1 N more, so 76 %', () => {
    expect(firstOf('stall', moment, trainOf(7), 15).cures).toContainEqual({ kind: 'setting', to: 0.76 });
  });

  it('is helped by fewer vehicles as well, of which full on the motor takes none', () => {
    // 0.3/1.02 N carry 0.75 kg: two wagons less leave 0.7 kg.
    expect(firstOf('stall', moment, trainOf(7)).cures).toContainEqual({ kind: 'fewer-vehicles', by: 2 });
  });

  it('cannot be set past full, nor past the grip', () => {
    const heavy = firstOf('stall', { ...moment, demand: 0.43 }, trainOf(9));
    // 1.1 kg ask 0.431 N, more than the wheels hold.
    expect(heavy.cures.map(({ kind }) => kind)).not.toContain('setting');
  });
});

describe('a hand too rough for a load the wheels could carry', () => {
  const spun = { setting: 1, motorLimit: 0.6, gripLimit: 0.392, demand: 0.236, rimSpeed: 0.5, railForce: 0.3 };

  it('is told to set what even at a stand does not outdo the grip: 0.392/1.02 N of 0.6 N is 64 %', () => {
    const finding = firstOf('wheelspin', spun, trainOf(4));
    expect(finding.verdict).toBe('fails');
    expect(finding.cures).toEqual([{ kind: 'setting', to: 0.64 }]);
  });

  it('is told the same where it nearly spins, with a tenth to spare: 59 %', () => {
    const near = { setting: 1, motorLimit: 0.6, gripLimit: 0.392, demand: 0.236, railForce: 0.38 };
    expect(firstOf('wheelspin', near, trainOf(4)).cures).toEqual([{ kind: 'setting', to: 0.59 }]);
  });
});

describe('what passes', () => {
  it('says how many more it could be, of four wagons', () => {
    const finding = firstOf('stall', { ...stalled, demand: 0.236, rimSpeed: 0.2, railForce: 0.236 }, trainOf(4));
    expect(finding.verdict).toBe('passes');
    expect(finding.cures).toEqual([]);
    expect(finding.reach?.vehicles).toBe(7);
    // 0.04/0.6 - 0.02.
    expect(finding.reach?.grade).toBeCloseTo(0.046, 9);
  });

  it('says nothing of the route where nobody knows how the train is driven', () => {
    const context = along(ramp({}), trainOf(10), { force: 0.1, ...stalled }, { from: 4.5, to: 4.6, step: 0.05 });
    const [finding] = collectFindings(assessRun(context), context).filter(({ risk }) => risk === 'stall');
    expect(finding.cures).toEqual([]);
    expect(finding.reach).toBeUndefined();
  });
});
