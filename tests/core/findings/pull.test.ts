import { describe, expect, it } from 'vitest';
import { collectFindings } from '../../../src/core/findings/index.ts';
import type { Finding } from '../../../src/core/findings/types.ts';
import { assessRun } from '../../../src/core/risks/index.ts';
import type { Moment } from '../risks/samples.ts';
import { sampleDrive } from '../risks/samples.ts';
import { along, engine, ramp, van } from './samples.ts';

/** Engine of 200 g and four vans of 100 g on 2 %. */
const wagon = van({}, { mass: 0.1 });
const train = [engine(), wagon, wagon, wagon, wagon];

function firstOf(risk: Finding['risk'], moment: Omit<Moment, 'lead'>, vehicles = train): Finding {
  const context = along(ramp({}), vehicles, { force: 0.1, ...moment }, { from: 2, to: 2.1, step: 0.05 });
  const found = collectFindings(assessRun(context), context).find((finding) => finding.risk === risk);
  if (found === undefined) throw new Error(`no finding of ${risk}`);
  return found;
}

describe('a motor that gives too little', () => {
  // 0.3 N at half setting for 0.36 N; full on the motor stalls at 0.6 N.
  const finding = firstOf('stall', { setting: 0.5, motorLimit: 0.3, gripLimit: 0.5, demand: 0.36 });

  it('is blamed together with the grade', () => {
    expect(finding.verdict).toBe('fails');
    expect(finding.causes[0]).toEqual({ kind: 'motor-limit' });
    expect(finding.causes[1]).toEqual({ kind: 'grade', grade: expect.closeTo(0.02, 6) });
  });

  it('is helped by a setting with a fifth in hand, 0.432 / 0.6, and by one vehicle less: 0.36 N × 500/600 g = 0.30 N', () => {
    expect(finding.cures).toContainEqual({ kind: 'setting', to: expect.closeTo(0.72, 9) });
    expect(finding.cures).toContainEqual({ kind: 'fewer-vehicles', by: 1 });
  });

  it('cannot be set past full', () => {
    const hopeless = firstOf('stall', { setting: 1, motorLimit: 0.6, gripLimit: 2, demand: 0.88 });
    // 0.88 N falls to 0.587 N at 400 g of 600: two vans less.
    expect(hopeless.cures).toEqual([{ kind: 'fewer-vehicles', by: 2 }]);
  });
});

describe('wheels that give too little', () => {
  const finding = firstOf('stall', { setting: 1, motorLimit: 0.6, gripLimit: 0.392, demand: 0.45 });

  it('are helped by weight on them, which has to be carried up too', () => {
    expect(finding.causes[0]).toEqual({ kind: 'grip-limit' });
    // Wanted 1.1 × 0.45 = 0.495 N, short by 0.103 N. A newton more of weight grips 0.2 N and asks 1.1 × 0.45/5.88399 = 0.08413 N:
    // 0.103/0.11587 = 0.8889 N = 90.6 g, in steps of 5 g: 95 g.
    expect(finding.cures).toContainEqual({ kind: 'add-engine-weight', by: expect.closeTo(0.095, 9) });
  });

  it('share it between two engines', () => {
    const two = firstOf('stall', { setting: 1, motorLimit: 0.6, gripLimit: 0.196, demand: 0.225 }, [
      engine(),
      engine(),
      wagon,
      wagon,
    ]);
    // The same sum for 600 g in all, half of the 90.6 g for each.
    expect(two.cures).toContainEqual({ kind: 'add-engine-weight', by: expect.closeTo(0.05, 9) });
  });

  it('are left alone where no weight that fits would do', () => {
    const light = firstOf('stall', { setting: 1, motorLimit: 0.9, gripLimit: 0.39, demand: 0.8 });
    expect(light.cures.map(({ kind }) => kind)).not.toContain('add-engine-weight');
  });
});

describe('spinning wheels', () => {
  it('that could grip what is needed are turned too hard: 0.95 × 0.392 N of 0.6 N is a setting of 0.62', () => {
    const finding = firstOf('wheelspin', { setting: 1, gripLimit: 0.392, demand: 0.2, rimSpeed: 0.5, railForce: 0.3 });
    expect(finding.verdict).toBe('fails');
    expect(finding.cures).toEqual([{ kind: 'setting', to: expect.closeTo(0.62, 9) }]);
  });

  it('that could not are helped by weight or by fewer vehicles', () => {
    const finding = firstOf('wheelspin', { setting: 1, gripLimit: 0.392, demand: 0.45, rimSpeed: 0.5, railForce: 0.3 });
    expect(finding.cures.map(({ kind }) => kind).sort()).toEqual(['add-engine-weight', 'fewer-vehicles']);
  });

  it('that nearly spin are helped where the force goes: to the load, or to the hand', () => {
    const near = { setting: 1, gripLimit: 0.392, gripUse: 0.97, railForce: 0.38 };
    // 0.365 of 0.38 N is 96 %.
    const loaded = firstOf('wheelspin', { ...near, demand: 0.365 });
    expect(loaded.cures.map(({ kind }) => kind).sort()).toEqual(['add-engine-weight', 'fewer-vehicles']);
    const started = firstOf('wheelspin', { ...near, demand: 0.2 });
    expect(started.cures.map(({ kind }) => kind)).toEqual(['setting']);
  });

  it('of a driven coach at the rear count as well', () => {
    const rear = van({}, { mass: 0.15, drive: sampleDrive() });
    const finding = firstOf('wheelspin', { gripUse: 0.97 }, [engine(), wagon, rear]);
    expect(finding.verdict).toBe('near');
  });
});
