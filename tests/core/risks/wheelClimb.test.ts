import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext } from '../../../src/core/risks/types.ts';
import type { Vehicle } from '../../../src/core/stock/types.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { type Moment, madeUpTrial, sampleDrive } from './samples.ts';

const risk = riskById('wheel-climb');
const assess = (context: RiskContext) => assessRun(context, [risk])[0];

/** 120 g on two bogies of 30 mm wheelbase, 180 mm apart: 0.588399 N on each, 0.147100 N on each wheel. Nadal at 70° and 0.2: 1.644069. */
const coach = sampleVehicle({ pivotSpacing: 0.18, overhang: 0.04 });
const climbsAt = 0.241842;
const standing = (vehicles: number, change: Partial<Moment> = {}): Moment => ({
  lead: 1.5,
  speed: Array.from({ length: vehicles }, () => 0),
  extension: 0,
  ...change,
});
const curve = sampleTrack([arc(0.6, 4)]);
const level = sampleTrack([straight(4)]);

describe('a vehicle alone in a curve', () => {
  // 0.588399 × 0.2 × (0.72 × 16.5/30 + 0.47) = 0.588399 × 0.1732 = 0.101911 N on the leading flange of each bogie.
  const alone = (vehicle: Vehicle, radius: number, speed = 0, hand = 1) =>
    assess(madeUpTrial(sampleTrack([arc(radius, hand * 2.5)]), [vehicle], [standing(1, { lead: 0.7, speed: [speed] })]))
      .worst;

  it('presses its leading flanges outward by the couple that curving takes', () => {
    const worst = alone(coach, 0.6);
    expect(worst?.value).toBeCloseTo(0.101911, 6);
    expect(worst?.limit).toBeCloseTo(climbsAt, 6);
    expect(worst?.margin).toBeCloseTo(0.578605, 5);
    expect(worst?.governing).toBe('outer-rail');
  });

  it('on bogies of three axles with the same force, on wheels that bear a sixth of a bogie each', () => {
    const worst = alone({ ...coach, bogieAxles: 3 }, 0.6);
    expect(worst?.value).toBeCloseTo(0.101911, 6);
    // 0.588399 / 6 x 1.644069.
    expect(worst?.limit).toBeCloseTo(0.161228, 6);
  });

  it('does so in curves of either hand', () => {
    expect(alone(coach, 0.6, 0, -1)).toEqual({ ...alone(coach, 0.6), margin: expect.closeTo(0.578605, 5) });
  });

  it('does so by half where wheels stand at half the angle they slide at: 30 mm on 12 m', () => {
    expect(alone(coach, 12)?.value).toBeCloseTo(0.101911 / 2, 6);
  });

  it('is thrown outward by its speed: 0.588399 × 0.6²/(9.80665 × 0.6) = 0.036 N, half on each flange', () => {
    expect(alone(coach, 0.6, 0.6)?.value).toBeCloseTo(0.101911 + 0.018, 6);
  });

  it('on a rigid frame presses one flange with the couple of all of it, that of the axle in front', () => {
    // 1.176798 × 0.2 × (0.72 × 16.5/60 + 0.47) = 0.157220 N; each wheel bears 0.294200 N.
    const wagon = sampleVehicle({ pivotSpacing: 0.06, overhang: 0.03, bogies: false }, { rigidWheelbase: 0.06 });
    expect(alone(wagon, 0.6)?.value).toBeCloseTo(0.15722, 6);
    expect(alone(wagon, 0.6)?.limit).toBeCloseTo(2 * climbsAt, 6);
    // Nose-heavy by 10 mm: 2/3 on the leading axle going one way, 1/3 going the other.
    const noseHeavy = { ...wagon, massAhead: 0.01 };
    expect(alone(noseHeavy, 0.6)?.limit).toBeCloseTo((4 / 3) * 2 * climbsAt, 6);
    expect(alone(noseHeavy, 0.6, -1e-9)?.limit).toBeCloseTo((2 / 3) * 2 * climbsAt, 6);
  });

  it('has nothing to climb on the straight', () => {
    expect(assessRun(madeUpTrial(level, [coach], [standing(1)]), [risk])).toEqual([]);
  });
});

describe('a vehicle between others in a curve', () => {
  const three = [coach, coach, coach];
  /** Like vehicles meet at half the angle that they are apart on the arc, so each coupling pulls by the sine of it. */
  const at = (force: number) => {
    const context = madeUpTrial(curve, three, [standing(3, { force })]);
    const { chainage } = context.run;
    const half = (chainage[0] - chainage[1]) / 1.2;
    return { margin: assess(context).margins[1], sine: Math.sin(half), half };
  };

  it('pulled, is relieved on the outer rail first: the inner flange of the trailing axle takes half of its bogie’s share', () => {
    const { margin, sine } = at(1);
    expect(margin).toBeCloseTo(1 - sine / 2 / climbsAt, 5);
    // Pulled by little, the curve still presses more on the outer rail.
    const little = at(0.2);
    expect(little.margin).toBeCloseTo(1 - (0.101911 - 0.1 * little.sine) / climbsAt, 5);
  });

  it('pushed, is pressed further out, askew by the play of its wheels', () => {
    // Play 0.25 mm: askew by 0.5/180; pivots 122 mm out stand 0.338889 mm aside each, over a drawbar of 20 mm.
    const fold = Math.asin(0.677778 / 20) + 0.5 / 180;
    const { margin, half } = at(-1);
    const near = Math.sin(half + fold);
    const far = Math.sin(half - fold);
    const gear = near * (0.5 + 122 / 180) + far * (0.5 - 122 / 180);
    expect(margin).toBeCloseTo(1 - (0.101911 + gear / 2) / climbsAt, 5);
  });

  it('climbs when pulled hard enough, over the inner rail', () => {
    const { worst } = assess(madeUpTrial(curve, three, [standing(3, { force: 5 })]));
    expect(worst?.margin).toBeLessThan(0);
    expect(worst?.governing).toBe('inner-rail');
  });

  it('on the straight has nothing to say pulled, and the play of its wheels to bear when pushed', () => {
    const on = (force: number) => assess(madeUpTrial(level, three, [standing(3, { force })])).margins[1];
    expect(on(1)).toBeNaN();
    const fold = Math.sin(Math.asin(0.677778 / 20) + 0.5 / 180);
    expect(on(-1)).toBeCloseTo(1 - (fold * (244 / 180)) / 2 / climbsAt, 5);
  });

  it('has a range by the play of its wheels, 0.25 mm give or take 0.1 mm: two fifths of what presses either way', () => {
    const { worst } = assess(madeUpTrial(level, three, [standing(3, { force: -1 })]));
    const pressed = 1 - (worst?.margin ?? Number.NaN);
    const [least, most] = worst?.range ?? [Number.NaN, Number.NaN];
    expect((1 - least) / pressed).toBeCloseTo(1.4, 2);
    expect((1 - most) / pressed).toBeCloseTo(0.6, 2);
  });

  it('has no range where nothing pushes', () => {
    expect(assess(madeUpTrial(curve, three, [standing(3, { force: 1 })])).worst?.range).toBeNull();
  });

  it('is judged both ways after a blow: 1 N of pull and 0.3 N of push within one frame', () => {
    const both = assess(madeUpTrial(curve, three, [standing(3, { force: 1, buffPeak: -0.3 })])).margins[1];
    const pull = at(1).margin;
    const push = at(-0.3).margin;
    expect(both).toBeLessThanOrEqual(Math.min(pull, push) + 1e-9);
  });
});

describe('a coupling on a bogie', () => {
  it('bears on that bogie alone, and turns it besides', () => {
    // Shank 12 mm beyond the middle of a bogie (20 - 8), pulled at an angle off the track: the trailing axle of the front bogie and the leading one of the rear.
    const truck = sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02, coupling: { mount: 'bogie' } });
    const context = madeUpTrial(curve, [truck, truck, truck], [standing(3, { force: 1 })]);
    const half = (context.run.chainage[0] - context.run.chainage[1]) / 1.2;
    // Against the body the drawbar turns by half of what vehicles are apart; against the bogie by that less half of the body's own chord.
    const body = Math.sin(half);
    const bogie = Math.sin(half - Math.asin(0.05 / 0.6));
    const trailing = body / 2 + (bogie * 12) / 30;
    const outer = Math.abs(0.101911 - trailing);
    const worst = Math.max(Math.abs(body / 2 - (bogie * 12) / 30), trailing, outer);
    expect(assess(context).margins[1]).toBeCloseTo(1 - worst / climbsAt, 5);
  });
});

describe('weight moved from end to end', () => {
  /** Hardly a curve, so that forces along the train are forces along the bodies. */
  const gentle = sampleTrack([arc(30, 4)]);
  const engine = { ...coach, drive: sampleDrive() };

  it('takes off the leading bogie of an engine what it pulls at coupler height: 1 N × 9.9/180 = 0.055 N', () => {
    const { worst } = assess(madeUpTrial(gentle, [engine, coach], [standing(2, { force: 1, railForce: 1 })]));
    expect(worst?.subject).toBe(0);
    expect(worst?.limit).toBeCloseTo((climbsAt * (0.588399 - 0.055)) / 0.588399, 5);
  });

  it('puts on the end that a blow below the mass strikes 1 N × (22 - 9.9)/180 = 0.067222 N', () => {
    const { worst } = assess(madeUpTrial(level, [coach, coach], [standing(2, { force: -1 })]));
    expect(worst?.limit).toBeCloseTo((climbsAt * (0.588399 + 0.067222)) / 0.588399, 5);
    // Fold of a drawbar of 20 mm as above, lever (90 + 122)/180 at the end that is struck, half of it on each axle.
    const fold = Math.sin(Math.asin(0.677778 / 20) + 0.5 / 180);
    expect(worst?.value).toBeCloseTo((fold * (212 / 180)) / 2, 6);
  });
});
