import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext } from '../../../src/core/risks/types.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { type Moment, madeUpTrial, type Setting, sampleDrive } from './samples.ts';

const level = sampleTrack([straight(5)]);
const body = { pivotSpacing: 0.1, overhang: 0.03 };
const engine: Vehicle = sampleVehicle(body, { kind: 'locomotive', mass: 0.2, drive: sampleDrive() });
const coach = sampleVehicle(body, { mass: 0.1 });
const train = [engine, coach];

const assess = (id: 'stall' | 'wheelspin', context: RiskContext) => assessRun(context, [riskById(id)])[0];
const trial = (moments: readonly Omit<Moment, 'lead'>[], setting: Setting = {}): RiskContext =>
  madeUpTrial(
    level,
    train,
    moments.map((moment, f) => ({ lead: 2 + 0.004 * f, ...moment })),
    setting,
  );

/** Half setting: 0.3 N from the motor, 0.392 N of grip. */
const running = { setting: 0.5, motorLimit: 0.3, gripLimit: 0.392 };

describe('stalling', () => {
  it('leaves what is available over what is needed, as a share of the need: 0.3 N for 0.2 N is half as much again', () => {
    const { worst } = assess('stall', trial([{ ...running, demand: 0.2 }]));
    expect(worst?.value).toBeCloseTo(0.2, 12);
    expect(worst?.limit).toBeCloseTo(0.3, 12);
    expect(worst?.margin).toBeCloseTo(0.5, 12);
    expect(worst?.governing).toBe('motor');
  });

  it('is by grip where the wheels hold less than the motor gives', () => {
    const { worst } = assess('stall', trial([{ ...running, setting: 1, motorLimit: 0.6, demand: 0.49 }]));
    expect(worst?.governing).toBe('grip');
    expect(worst?.margin).toBeCloseTo(0.392 / 0.49 - 1, 12);
  });

  it('says nothing where nothing is needed', () => {
    expect(assess('stall', trial([{ ...running, demand: 0 }])).worst).toBeNull();
    expect(assess('stall', trial([{ ...running, demand: -0.1 }])).worst).toBeNull();
  });

  it('does not take a train for stalled while the knob comes up, nor while it is turned off', () => {
    const up = [0, 0.1, 0.3, 0.5, 0.5].map((setting) => ({
      ...running,
      setting,
      motorLimit: 0.6 * setting,
      demand: 0.2,
    }));
    const off = [0.3, 0.1, 0].map((setting) => ({ ...running, setting, motorLimit: 0.6 * setting, demand: 0.2 }));
    const { margins } = assess('stall', trial([...up, ...off]));
    for (const margin of margins.slice(0, 4)) expect(margin).toBeCloseTo(0.5, 12);
    for (const margin of margins.slice(5)) expect(margin).toBeNaN();
  });

  it('judges a slower setting from the moment it is ordered', () => {
    const settings = [0.5, 0.5, 0.4, 0.3, 0.3];
    const { margins } = assess(
      'stall',
      trial(settings.map((setting) => ({ ...running, setting, motorLimit: 0.6 * setting, demand: 0.2 }))),
    );
    // At 0.3 the motor gives 0.18 N, a tenth less than needed.
    expect(margins[0]).toBeCloseTo(0.5, 12);
    for (const margin of margins.slice(1)) expect(margin).toBeCloseTo(-0.1, 12);
  });

  it('counts slipping wheels by what they give', () => {
    const slipping = { ...running, setting: 1, motorLimit: 0.6, demand: 0.3, rimSpeed: 0.4, railForce: 0.294 };
    expect(assess('stall', trial([slipping])).worst?.margin).toBeCloseTo(0.294 / 0.3 - 1, 12);
  });

  it('adds up two engines: the stronger helps the weaker', () => {
    const weak = { ...engine, drive: sampleDrive({ stallForce: 0.1 }) };
    const context = madeUpTrial(level, [engine, weak, coach], [{ lead: 2, ...running, demand: 0.2 }]);
    context.run.motorLimit.set([0.3, 0.05]);
    const { margins } = assess('stall', context);
    // 0.30 + 0.05 N for 2 × 0.2 N, and both rows say so.
    expect(margins[0]).toBeCloseTo(0.35 / 0.4 - 1, 12);
    expect(margins[1]).toBe(margins[0]);
  });

  it('says what the need is made of: a grade of 2 % under 300 g asks 0.0588 N', () => {
    const climb = sampleTrack(
      [straight(5)],
      [
        { chainage: 0, height: 0 },
        { chainage: 5, height: 0.1 },
      ],
    );
    const { worst } = assess('stall', madeUpTrial(climb, train, [{ lead: 2, ...running, demand: 0.2 }]));
    const part = (label: string) => worst?.parts.find((one) => one.label === label)?.value ?? 0;
    expect(part('grade')).toBeCloseTo(0.3 * 9.80665 * 0.02, 4);
    // Rolling at 2 % of the weight, as the samples roll.
    expect(part('rolling')).toBeCloseTo(0.3 * 9.80665 * 0.02, 4);
    expect(part('grade') + part('rolling') + part('curve')).toBeCloseTo(0.2, 12);
  });
});

describe('a train set back down the same grade', () => {
  it('is helped by it: the grade takes 0.0588 N off the need', () => {
    const climb = sampleTrack(
      [straight(5)],
      [
        { chainage: 0, height: 0 },
        { chainage: 5, height: 0.1 },
      ],
    );
    const backing = { ...running, setting: -0.5, demand: 0.01, speed: [-0.2, -0.2] };
    const { worst } = assess('stall', madeUpTrial(climb, train, [{ lead: 2, ...backing }]));
    expect(worst?.parts[0].value).toBeCloseTo(-0.3 * 9.80665 * 0.02, 4);
  });
});

describe('wheelspin', () => {
  it('leaves the grip that is not used', () => {
    const { worst } = assess('wheelspin', trial([{ gripUse: 0.8 }]));
    expect(worst?.margin).toBeCloseTo(0.2, 12);
    expect(worst?.governing).toBe('grip');
  });

  it('runs on below zero by the share of the turning that is lost', () => {
    // Rim at 0.4 m/s, engine at 0.2 m/s: half.
    const { worst } = assess('wheelspin', trial([{ gripUse: 0.75, rimSpeed: 0.4 }]));
    expect(worst?.margin).toBeCloseTo(-0.5, 12);
    expect(worst?.governing).toBe('slip');
  });

  it('is complete where the wheels turn on the spot', () => {
    expect(assess('wheelspin', trial([{ speed: [0, 0], rimSpeed: 0.3, gripUse: 0.75 }])).worst?.margin).toBeCloseTo(
      -1,
      12,
    );
  });

  it('is no more than complete where the wheels turn against the way', () => {
    expect(assess('wheelspin', trial([{ rimSpeed: -0.2, gripUse: 0.75 }])).worst?.margin).toBeCloseTo(-1, 12);
  });

  it('does not take grip at exactly its limit for a slip', () => {
    expect(assess('wheelspin', trial([{ gripUse: 1 }])).worst?.margin).toBe(0);
  });

  it('does not miss a slip between two frames', () => {
    const slip = { kind: 'slip', time: 0.03, chainage: 2, subject: 0, value: 0.01 } as const;
    const { margins } = assess(
      'wheelspin',
      trial([{ gripUse: 0.9 }, { gripUse: 0.9 }, { gripUse: 0.9 }], { events: [slip] }),
    );
    expect(margins[1]).toBeCloseTo(0.1, 12);
    expect(margins[2]).toBeLessThan(0);
  });
});
