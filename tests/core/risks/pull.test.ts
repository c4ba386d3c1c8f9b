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

  it('counts slipping wheels by what they hold before they slip, however little sliding ones give', () => {
    const slipping = { ...running, setting: 1, motorLimit: 0.6, demand: 0.49, rimSpeed: 0.4, railForce: 0.294 };
    expect(assess('stall', trial([slipping])).worst?.margin).toBeCloseTo(0.392 / 0.49 - 1, 12);
  });

  it('takes off the weight that the greater pull would move off the driven wheels', () => {
    // A drawbar at 15 mm over a wheelbase of 60 mm moves 0.25 N off a newton of pull, so 0.05 N of grip. Sliding wheels give 0.294 N at 0.392 N of
    // grip; holding G they pull G - 0.294 N more: G = 0.392 - 0.05·(G - 0.294) = 0.4067/1.05.
    const leaning = { ...engine, drive: sampleDrive({ drawbarHeight: 0.015, transferShare: 1 }) };
    const slipping = {
      lead: 2,
      ...running,
      setting: 1,
      motorLimit: 0.6,
      demand: 0.49,
      rimSpeed: 0.4,
      railForce: 0.294,
    };
    const { worst } = assess('stall', madeUpTrial(level, [leaning, coach], [slipping]));
    expect(worst?.limit).toBeCloseTo(0.4067 / 1.05, 12);
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

  it('reads two engines at every frame by their own rows', () => {
    const moments = [2, 2.004].map((lead) => ({ lead, ...running, demand: 0.2 }));
    const context = madeUpTrial(level, [engine, engine, coach], moments);
    context.run.motorLimit.set([0.3, 0.05, 0.2, 0.04]);
    const { margins } = assess('stall', context);
    expect(margins[2]).toBeCloseTo(0.24 / 0.4 - 1, 12);
    expect(margins[3]).toBe(margins[2]);
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
  const gripping = { ...running, setting: 1, motorLimit: 0.6 };

  it('leaves the grip that is not used, as a share of what is: 0.392 N for 0.28 N is 40 % more', () => {
    const { worst } = assess('wheelspin', trial([{ ...gripping, railForce: 0.28 }]));
    expect(worst?.value).toBeCloseTo(0.28, 12);
    expect(worst?.limit).toBeCloseTo(0.392, 12);
    expect(worst?.margin).toBeCloseTo(0.4, 12);
    expect(worst?.governing).toBe('grip');
  });

  it('says while they spin how far beyond the limit the rim is asked', () => {
    // 300 g of train and 200 g of rotor at a stand: a motor of 0.6 N against a train that asks 0.3 N would leave both
    // 0.3/0.5 = 0.6 m/s², so 0.6 - 0.2 × 0.6 = 0.48 N at the rail.
    const spinning = { ...gripping, speed: [0, 0], rimSpeed: 0.3, railForce: 0.294, demand: 0.3 };
    const { worst } = assess('wheelspin', trial([spinning]));
    expect(worst?.value).toBeCloseTo(0.48, 12);
    expect(worst?.margin).toBeCloseTo(0.392 / 0.48 - 1, 12);
    expect(worst?.governing).toBe('slip');
  });

  it('counts the motor at the speed of the train: at 0.2 of 0.6 m/s it gives 0.4 N, and 0.36 N of it reach the rail', () => {
    // 0.1 N over 0.5 kg are 0.2 m/s²: 0.4 - 0.04. That is less than the grip, yet they spin: 1 % beyond it.
    const moving = { ...gripping, rimSpeed: 0.5, railForce: 0.294, demand: 0.3 };
    expect(assess('wheelspin', trial([moving])).worst?.value).toBeCloseTo(1.01 * 0.392, 12);
    // With a rotor of next to no mass and a train that asks more it is the train that decides.
    const heavy = { ...moving, demand: 0.7, speed: [0.2, 0.2] };
    expect(assess('wheelspin', trial([heavy])).worst?.value).toBeCloseTo((0.4 * 0.3 + 0.7 * 0.2) / 0.5, 12);
  });

  it('is below zero whenever the wheels slip', () => {
    const easy = { ...gripping, setting: 0.1, rimSpeed: 0.5, railForce: 0.294, demand: 0 };
    expect(assess('wheelspin', trial([easy])).worst?.margin).toBeLessThan(0);
  });

  it('does not take grip at exactly its limit for a slip', () => {
    expect(assess('wheelspin', trial([{ ...gripping, railForce: 0.392 }])).worst?.margin).toBe(0);
  });

  it('says nothing where nothing is asked of the wheels', () => {
    expect(assess('wheelspin', trial([{ ...gripping, railForce: 0 }])).worst).toBeNull();
  });

  it('does not miss a slip between two frames', () => {
    const slip = { kind: 'slip', time: 0.03, chainage: 2, subject: 0, value: 0.01 } as const;
    const used = { ...gripping, setting: 0.1, railForce: 0.35 };
    const { margins } = assess('wheelspin', trial([used, used, used], { events: [slip] }));
    expect(margins[1]).toBeCloseTo(0.392 / 0.35 - 1, 12);
    expect(margins[2]).toBeLessThan(0);
  });
});
