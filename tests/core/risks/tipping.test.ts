import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext, RiskId } from '../../../src/core/risks/types.ts';
import type { Coupling } from '../../../src/core/stock/types.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial } from './samples.ts';

const assess = (id: RiskId, context: RiskContext) => assessRun(context, [riskById(id)])[0];

/** 120 g, 1.176798 N, that tips over one rail at coupler height with × 8.75/9.9 = 1.040099 N; heads at 9.9 mm. */
const tipsAt = 1.040099;
const car = (pivotSpacing: number, overhang: number, coupling: Partial<Coupling> = {}) =>
  sampleVehicle({ pivotSpacing, overhang, coupling });
const coach = car(0.18, 0.04);
const curve = sampleTrack([arc(0.6, 4)]);
const still = { lead: 1.5, extension: 0, speed: [0, 0, 0] };

describe('string-lining', () => {
  const pulled = (force: number, speed = 0) => {
    const context = madeUpTrial(curve, [coach, coach, coach], [{ ...still, force, speed: [speed, speed, speed] }]);
    const sine = Math.sin((context.run.chainage[0] - context.run.chainage[1]) / 1.2);
    return { margin: assess('string-lining', context).margins[1], inward: 2 * force * sine };
  };

  it('pulls a vehicle in by both couplings, against its weight on half the rails', () => {
    const { margin, inward } = pulled(1);
    expect(margin).toBeCloseTo(1 - inward / tipsAt, 6);
  });

  it('has nothing left where the two are equal', () => {
    const { inward } = pulled(1);
    expect(pulled(tipsAt / inward).margin).toBeCloseTo(0, 6);
    expect(pulled((1.01 * tipsAt) / inward).margin).toBeLessThan(0);
  });

  it('is relieved by speed, at the height of the mass: 0.12 × 0.36/0.6 N × 22/9.9 = 0.16 N', () => {
    const { margin, inward } = pulled(1, 0.6);
    expect(margin).toBeCloseTo(1 - (inward - 0.16) / tipsAt, 6);
  });

  it('pulls the last vehicle in by one coupling only, and names the inner rail', () => {
    const context = madeUpTrial(curve, [coach, coach, coach], [{ ...still, force: 1 }]);
    const { margins, worst } = assess('string-lining', context);
    const sine = Math.sin((context.run.chainage[1] - context.run.chainage[2]) / 1.2);
    expect(margins[2]).toBeCloseTo(1 - sine / tipsAt, 6);
    expect(worst?.subject).toBe(1);
    expect(worst?.governing).toBe('inner-rail');
  });

  it('is a matter of the real pins: a long vehicle’s are thrown out, and its neighbour pays for it', () => {
    // Long: 240 mm between bogies on 450 mm, its middle √(450² - 120²) = 433.7050 mm from the centre, its pivot 160 mm along: 462.2770 mm out.
    // Short: 40 mm, √(450² - 20²) = 449.5553 mm, pivot 30 mm along: 450.5552 mm out. Drawbar 30 mm.
    // The short one's axis lies acos(30/450.5552) = 86.1823° from the line to the centre; the drawbar acos((450.5552² + 30² - 462.2770²)/(2 × 450.5552 × 30))
    // = 111.2548°; together 180° + 17.4369°. By length over radius it would be (160 + 30 + 30)/2/450 = 14.0°.
    const long = car(0.24, 0.05, { pivotInset: 0.01, reach: 0.015 });
    const short = car(0.04, 0.02, { pivotInset: 0.01, reach: 0.015 });
    const context = madeUpTrial(sampleTrack([arc(0.45, 4)]), [long, short], [{ ...still, speed: [0, 0], force: 0.5 }]);
    const { margins } = assess('string-lining', context);
    const angle = (Math.asin(((1 - margins[1]) * tipsAt) / 0.5) * 180) / Math.PI;
    expect(angle).toBeCloseTo(17.4369, 3);
  });

  it('does not arise on straight track, nor in a vehicle without a pull', () => {
    const level = sampleTrack([straight(4)]);
    expect(assessRun(madeUpTrial(level, [coach, coach], [{ lead: 2, force: 1 }]), [riskById('string-lining')])).toEqual(
      [],
    );
    expect(
      assess('string-lining', madeUpTrial(curve, [coach, coach, coach], [{ ...still, force: -1 }])).margins[1],
    ).toBeNaN();
  });
});

describe('jack-knifing', () => {
  const level = sampleTrack([straight(4)]);
  /** 160 mm between bogies, pivots 102 mm from the middle. */
  const van = (reach = 0.01) => car(0.16, 0.03, { reach });
  const pushed = (reach?: number, force = -1) =>
    assess('jack-knife', madeUpTrial(level, [van(reach), van(reach), van(reach)], [{ ...still, lead: 2, force }]));

  it('on the straight folds drawbars by the play of the wheels', () => {
    // Play 0.25 mm either side: askew by ψ = 0.5/160 = 0.003125; each pivot 0.31875 mm aside; β = asin(0.6375/20) = 0.031880.
    // Per running gear (2Y·cos β + L·cos ψ·sin β)/(a·cos ψ), 2Y = 0.6375 the play at the pivots, L = 204, a = 160: 0.044623 N for each N.
    // Each running gear bears 0.588399 N and tips at × 8.75/9.9 = 0.520050 N.
    expect(pushed().margins[1]).toBeCloseTo(1 - 0.044623 / 0.52005, 5);
    expect(pushed().worst?.governing).toBe('rail');
  });

  it('folds short drawbars further: half of 20 mm, nearly twice', () => {
    // β = asin(0.6375/10) = 0.063793; sin(β + ψ) × 204/160 = 0.085258.
    expect(pushed(0.005).margins[1]).toBeCloseTo(1 - 0.085258 / 0.52005, 5);
  });

  it('fails where the push is twelve times as large, whichever way it folds', () => {
    expect(pushed(0.01, -11).margins[1]).toBeGreaterThan(0);
    expect(pushed(0.01, -12).margins[1]).toBeLessThan(0);
  });

  it('in a curve throws vehicles to the outside', () => {
    const { worst } = assess('jack-knife', madeUpTrial(curve, [coach, coach, coach], [{ ...still, force: -2 }]));
    expect(worst?.governing).toBe('outer-rail');
    const right = sampleTrack([arc(0.6, -4)]);
    const mirrored = assess('jack-knife', madeUpTrial(right, [coach, coach, coach], [{ ...still, force: -2 }]));
    expect(mirrored.worst?.margin).toBeCloseTo(worst?.margin ?? Number.NaN, 9);
  });

  it('is made worse by speed there: 0.588399 × 0.6²/(9.80665 × 0.6) × 22/9.9 = 0.08 N', () => {
    const at = (speed: number) =>
      assess(
        'jack-knife',
        madeUpTrial(curve, [coach, coach, coach], [{ ...still, force: -1, speed: [speed, speed, speed] }]),
      ).margins[1];
    expect(at(0) - at(0.6)).toBeCloseTo(0.08 / 0.52005, 6);
  });

  it('does not arise where nothing pushes', () => {
    expect(pushed(0.01, 1).worst).toBeNull();
    expect(assessRun(madeUpTrial(level, [coach], [{ lead: 2 }]), [riskById('jack-knife')])).toEqual([]);
  });
});

describe('a joint that has parted', () => {
  it('pulls at nothing: what is left is the speed, 0.12 × 0.2²/0.6 = 0.008 N of 0.468045 N', () => {
    const moments = [1.5, 1.504, 1.508].map((lead) => ({ lead, extension: 0 }));
    const parted = { kind: 'parting', time: 0.015, chainage: 1.4, subject: 0, value: 2 } as const;
    const { margins } = assess('overturning', madeUpTrial(curve, [coach, coach], moments, { events: [parted] }));
    expect(margins[4]).toBeCloseTo(1 - 0.008 / 0.468045, 5);
    expect(margins[5]).toBeCloseTo(1 - 0.008 / 0.468045, 5);
  });
});
