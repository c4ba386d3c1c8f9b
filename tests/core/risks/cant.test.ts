import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessRun, framePoser, riskById, tippingSpeed } from '../../../src/core/risks/index.ts';
import type { RiskContext, RiskId } from '../../../src/core/risks/types.ts';
import { newSideForces, sideForces } from '../../../src/core/risks/wheels/sideForces.ts';
import { turnVehicle } from '../../../src/core/stock/index.ts';
import { arc, makeTrack, type PlanElement, reverseTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { evenly } from '../../evenly.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial } from './samples.ts';

const assess = (id: RiskId, context: RiskContext) => assessRun(context, [riskById(id)])[0];

/** 120 g, 1.176798 N, its mass 22 mm up, heads 9.9 mm up, rails bear 8.75 mm from the middle. */
const coach = sampleVehicle({ pivotSpacing: 0.18, overhang: 0.04 });
const weight = 1.176798;

const canted = (elements: readonly PlanElement[], points: readonly { chainage: number; cant: number }[]): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements,
    profile: { points: [{ chainage: 0, height: 0 }] },
    cant: { points, lever: 0 },
  });
const even = (cant: number, elements: readonly PlanElement[] = [arc(0.6, 4)]) =>
  canted(elements, [{ chainage: 0, cant }]);

const alone = (track: Track, speed: number) =>
  assess('overturning', madeUpTrial(track, [coach], [{ lead: 1.5, extension: 0, speed: [speed] }])).worst;

describe('overturning', () => {
  const flat = sampleTrack([arc(0.6, 4)]);

  it('by speed: 0.12 × 0.6²/0.6 = 0.072 N at the mass, against 1.176798 × 8.75/22 = 0.468045 N', () => {
    const worst = alone(flat, 0.6);
    expect(worst?.value).toBeCloseTo(0.072, 9);
    expect(worst?.limit).toBeCloseTo(0.468045, 6);
    expect(worst?.margin).toBeCloseTo(0.846169, 6);
    expect(worst?.governing).toBe('outer-rail');
    expect(worst?.compare).toEqual([{ label: 'at-rest', value: 0, limit: 0, margin: 1 }]);
  });

  it('happens at √(9.80665 × 0.6 × 8.75/22) = 1.529779 m/s, and with cant at the speed of its own balance', () => {
    expect(tippingSpeed(coach, 0.6)).toBeCloseTo(1.529779, 6);
    expect(alone(flat, 1.529779)?.margin).toBeCloseTo(0, 5);
    expect(alone(even(0.06), tippingSpeed(coach, 0.6, 0.06))?.margin).toBeCloseTo(0, 9);
    expect(tippingSpeed(coach, 0.6, 1.3)).toBe(Number.POSITIVE_INFINITY);
  });

  it('by cant at rest: 1 - tan 0.06 × 22/8.75 = 0.848962, over the inner rail', () => {
    const worst = alone(even(0.06), 0);
    expect(worst?.margin).toBeCloseTo(0.848962, 6);
    expect(worst?.governing).toBe('inner-rail');
    expect(worst?.compare).toContainEqual({ label: 'without-cant', value: 0, limit: 0, margin: 1 });
  });

  it('is no matter at the speed that cant is made for: v² = 9.80665 × 0.6 × tan 0.06', () => {
    expect(alone(even(0.06), Math.sqrt(9.80665 * 0.6 * 0.060072104))?.margin ?? 1).toBeCloseTo(1, 7);
  });

  it('counts pushes and pulls at the heights of the heads: 2 × F × sin of the swing × 9.9/22', () => {
    const three = [coach, coach, coach];
    const context = (force: number) => madeUpTrial(flat, three, [{ lead: 1.5, extension: 0, force, speed: [0, 0, 0] }]);
    const sine = Math.sin((context(1).run.chainage[0] - context(1).run.chainage[1]) / 1.2);
    for (const force of [1, -1]) {
      expect(assess('overturning', context(force)).margins[1]).toBeCloseTo(1 - (2 * sine * 9.9) / 22 / 0.468045, 6);
    }
  });

  it('does not arise on level straight track, and on canted straight track at any speed', () => {
    const level = sampleTrack([straight(4)]);
    expect(assessRun(madeUpTrial(level, [coach], [{ lead: 2 }]), [riskById('overturning')])).toEqual([]);
    const worst = alone(even(0.06, [straight(4)]), 3);
    expect(worst?.margin).toBeCloseTo(0.848962, 6);
    expect(worst?.governing).toBe('rail');
  });

  it('is that of the mirror image and of the train run the other way, anchored at 0.848962 above', () => {
    const lop = sampleVehicle({ pivotSpacing: 0.13, overhang: 0.03, rearOverhang: 0.05 }, { massAhead: 0.006 });
    fc.assert(
      fc.property(
        evenly(-0.08, 0.08),
        evenly(-1, 1),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (cant, force, speed) => {
          const track = even(cant);
          const vehicles = [lop, coach, turnVehicle(lop)];
          const moment = { lead: 1.5, extension: 0, force, speed: [speed, speed, speed] };
          const here = madeUpTrial(track, vehicles, [moment]);
          const mirrored = madeUpTrial(even(-cant, [arc(0.6, -4)]), vehicles, [moment]);
          const back = madeUpTrial(reverseTrack(track), [...vehicles].reverse().map(turnVehicle), [
            { ...moment, lead: track.length - here.run.chainage[2], speed: [-speed, -speed, -speed] },
          ]);
          for (const id of ['overturning', 'string-lining', 'jack-knife', 'wheel-climb'] as const) {
            const margins = [...assess(id, here).margins];
            const [reflected, turned] = [mirrored, back].map((context) => [...assess(id, context).margins]);
            turned.reverse();
            margins.forEach((margin, i) => {
              for (const other of [reflected[i], turned[i]]) {
                if (Number.isNaN(margin)) expect(other).toBeNaN();
                else expect(Math.abs(other - margin)).toBeLessThan(1e-8);
              }
            });
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('cant', () => {
  const three = [coach, coach, coach];
  const moment = { lead: 1.5, extension: 0, force: 1, speed: [0, 0, 0] };

  it('that leans inwards takes from the hold against string-lining by sin φ × 22/9.9 of the weight, and both are told', () => {
    const { worst, margins } = assess('string-lining', madeUpTrial(even(0.06), three, [moment]));
    const plain = assess('string-lining', madeUpTrial(even(0), three, [moment])).margins[1];
    const inward = (1 - plain) * ((weight * 8.75) / 9.9);
    const leaning = inward + (weight * 0.059964 * 22) / 9.9;
    // Pins 9.9 mm up lean in by 0.6 mm, on 0.1 % less radius.
    expect(margins[1]).toBeCloseTo(1 - leaning / ((weight * 0.998201 * 8.75) / 9.9), 3);
    expect(worst?.compare?.[0].label).toBe('without-cant');
    expect(worst?.compare?.[0].margin).toBeCloseTo(plain, 3);
  });

  it('that leans outwards adds to it', () => {
    const outward = assess('string-lining', madeUpTrial(even(-0.06), three, [moment])).margins[1];
    expect(outward).toBeGreaterThan(assess('string-lining', madeUpTrial(even(0), three, [moment])).margins[1]);
  });

  it('that runs in takes load from a wheel: 0.2 rad/m over 60 mm and 17.5 mm is 0.21 mm, of 0.5 mm 42 %', () => {
    const wagon = sampleVehicle({ pivotSpacing: 0.06, overhang: 0.03, bogies: false }, { rigidWheelbase: 0.06 });
    const ramp = canted(
      [arc(0.6, 3)],
      [
        { chainage: 1, cant: 0 },
        { chainage: 1.3, cant: 0.06 },
      ],
    );
    const limitAt = (lead: number) =>
      assess('wheel-climb', madeUpTrial(ramp, [wagon], [{ lead, speed: [0] }])).worst?.limit ?? Number.NaN;
    expect(limitAt(1.15) / limitAt(0.5)).toBeCloseTo(0.58, 3);
  });

  it('that runs in sharply lifts a corner of a rigid frame: 1 rad/m is 1.05 mm, less 0.5 mm that the frame takes up', () => {
    const wagon = sampleVehicle({ pivotSpacing: 0.06, overhang: 0.03, bogies: false });
    const ramp = canted(
      [straight(3)],
      [
        { chainage: 1, cant: 0 },
        { chainage: 1.1, cant: 0.1 },
      ],
    );
    const { worst } = assess('axle-lift', madeUpTrial(ramp, [wagon], [{ lead: 1.05 }]));
    expect(worst?.value).toBeCloseTo(0.00055, 6);
    expect(worst?.governing).toBe('corner');
    expect(worst?.margin).toBeCloseTo(0.0009 - 0.00055, 6);
  });
});

describe('couplings on a vertical curve', () => {
  it('lift what they pull in a sag: 144 mm from vehicle to vehicle on 10 m is a rise of 7.2 mm a metre at either end', () => {
    const sag = sampleTrack(
      [straight(4)],
      [
        { chainage: 0, height: 0.06 },
        { chainage: 2, height: 0, curve: { radius: 10 } },
        { chainage: 4, height: 0.06 },
      ],
    );
    const van = sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02 });
    const context = madeUpTrial(sag, [van, van, van], [{ lead: 2.144, extension: 0, force: 1 }]);
    const forces = newSideForces();
    const sides = sideForces(context);
    sides.look(framePoser(context)(0), 1);
    sides.write(1, 1, 1, 0, forces);
    // Pivots 9.9 mm up are 0.1 % nearer to the centre of the sag.
    expect(Math.abs((weight - forces.frontLoad - forces.rearLoad) / 0.0144 - 1)).toBeLessThan(0.0015);
    sides.write(1, -1, -1, 0, forces);
    expect(Math.abs((forces.frontLoad + forces.rearLoad - weight) / 0.0144 - 1)).toBeLessThan(0.0015);
  });
});
