import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext } from '../../../src/core/risks/types.ts';
import type { Buffers, Vehicle } from '../../../src/core/stock/types.ts';
import { arc, straight } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { type Moment, madeUpTrial, passing } from './samples.ts';

const heads: Buffers = { spacing: 0.02, height: 0.012, headWidth: 0.005, headHeight: 0.005, length: 0.006 };

/** Heads that just meet at the free length: shanks reach as far beyond the body end as buffers. 4 mm of slack, as with links. */
const coach = (buffers: Buffers | null = heads, slack = 0.002): Vehicle =>
  sampleVehicle({ pivotSpacing: 0.16, overhang: 0.034, buffers, coupling: { pivotInset: 0.008, reach: 0.014, slack } });

const risk = riskById('buffer-lock');
const assess = (context: RiskContext) => assessRun(context, [risk])[0];
const level = sampleTrack([straight(5)]);
const onStraight = (pair: readonly Vehicle[], moment: Omit<Moment, 'lead'>) =>
  assess(madeUpTrial(level, pair, [{ lead: 2, ...moment }])).worst;

describe('overlap of facing heads', () => {
  it('is all of the head on straight track: 5.0 mm', () => {
    const worst = onStraight([coach(), coach()], { force: -0.1 });
    expect(worst?.governing).toBe('overlap');
    expect(worst?.value).toBeCloseTo(0, 9);
    expect(worst?.margin).toBeCloseTo(0.005, 9);
  });

  it('of round heads 3 mm apart in height is 4 mm wide, by the triangle 3-4-5', () => {
    const worst = onStraight([coach({ ...heads, height: 0.015 }), coach()], { force: -0.1 });
    expect(worst?.limit).toBeCloseTo(0.004, 9);
  });

  it('is lost in height as well: heads 6 mm apart have gone 1 mm past each other', () => {
    const worst = onStraight([coach({ ...heads, height: 0.018 }), coach()], { force: -0.1 });
    expect(worst?.margin).toBeCloseTo(-0.001, 9);
  });

  it('takes the mean of unlike heads: 5 and 7 mm wide hold to 6 mm', () => {
    expect(onStraight([coach({ ...heads, headWidth: 0.007 }), coach()], { force: -0.1 })?.limit).toBeCloseTo(0.006, 9);
  });

  it('does not arise without a facing pair', () => {
    expect(assessRun(madeUpTrial(level, [coach(), coach(null)], [{ lead: 2 }]), [risk])).toEqual([]);
  });
});

describe('a gap between faces', () => {
  const missing = [coach({ ...heads, height: 0.018 }), coach()];

  it('keeps heads harmless that have lost their overlap: pulled, half the slack of 4 mm is open', () => {
    // 0.4 N on 2000 N/m (two halves of 4000 in series) opens 0.2 mm more.
    const worst = onStraight(missing, { force: 0.4 });
    expect(worst?.governing).toBe('gap');
    expect(worst?.margin).toBeCloseTo(0.0022, 9);
  });

  it('counts as it was at the greatest squeeze between frames', () => {
    // Squeezed: half the slack, and 0.3 N on 3000 N/m = 0.1 mm: faces 2.1 mm past touching, heads 1 mm past each other.
    expect(onStraight(missing, { force: 0.4, buffPeak: -0.3 })?.margin).toBeCloseTo(-0.001, 9);
    const wide = [coach({ ...heads, height: 0.012 + 0.0081 }), coach()];
    expect(onStraight(wide, { force: 0.4, buffPeak: -0.3 })?.margin).toBeCloseTo(-0.0021, 9);
  });

  it('of a floating joint counts as closed when it is about to close, as it is when not', () => {
    expect(onStraight(missing, { extension: 0.0005, speed: [0.2, 0.25] })?.margin).toBeCloseTo(-0.001, 9);
    expect(onStraight(missing, { extension: 0.0005, speed: [0.2, 0.2] })?.margin).toBeCloseTo(0.0005, 9);
  });
});

describe('a reverse curve without a straight', () => {
  // Offset of the ends of equal vehicles where the curves meet: (L² - a²)/4R with L 240 mm over buffers, a 160 mm and R 700 mm: 11.4 mm
  // against heads of 5 mm.
  const reverse = sampleTrack([straight(0.8), arc(0.7, 0.9), arc(0.7, -0.9), straight(0.8)]);
  const trial = (force: number): RiskContext =>
    madeUpTrial(reverse, [coach(heads, 0.004), coach(heads, 0.004)], passing(0.9, 2.6, 0.004, { force }));

  it('locks buffers when propelled', () => {
    const { worst } = assess(trial(-0.3));
    expect(worst?.margin).toBeLessThan(-0.004);
    expect(worst?.governing).toBe('overlap');
    // Where the curves meet, within a tenth of a vehicle.
    expect(Math.abs((worst?.chainage ?? 0) - (0.8 + 0.63))).toBeLessThan(0.024);
  });

  it('does not when pulled: overlap is lost but the faces stay apart', () => {
    const { worst } = assess(trial(0.3));
    expect(worst?.margin).toBeGreaterThan(0);
    expect(worst?.governing).toBe('gap');
    // Nothing squeezes the joint: none of the gap goes, and all that stands open is in hand.
    expect(worst?.value).toBe(0);
    expect(worst?.limit).toBe(worst?.margin);
  });
});
