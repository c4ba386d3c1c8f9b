import { describe, expect, it } from 'vitest';
import { curveChangeNear, pairCurve, vehicleCurve } from '../../../../src/core/findings/explain/curves.ts';
import { collectFindings } from '../../../../src/core/findings/index.ts';
import { situationAt, trialOf } from '../../../../src/core/findings/situation.ts';
import type { Finding } from '../../../../src/core/findings/types.ts';
import { assessRun } from '../../../../src/core/risks/index.ts';
import type { Buffers } from '../../../../src/core/stock/types.ts';
import { arc, type PlanElement, straight, transition } from '../../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../../stock/samples.ts';
import { along } from '../samples.ts';

const heads: Buffers = { spacing: 0.02, height: 0.012, headWidth: 0.005, headHeight: 0.005, length: 0.007 };
const coach = (freeSwing = 1.5) =>
  sampleVehicle({
    pivotSpacing: 0.16,
    overhang: 0.034,
    buffers: heads,
    coupling: { pivotInset: 0.03, reach: 0.036, slack: 0.002, freeSwing },
  });

function firstOf(
  risk: Finding['risk'],
  elements: readonly PlanElement[],
  force: number,
  freeSwing?: number,
  reversed = false,
): Finding {
  const track = sampleTrack(elements);
  const context = along(
    track,
    [coach(freeSwing), coach(freeSwing)],
    { force },
    { from: 0.6, reversed, propelled: force < 0 },
  );
  const found = collectFindings(assessRun(context), context).find((finding) => finding.risk === risk);
  if (found === undefined) throw new Error(`no finding of ${risk}`);
  return found;
}

/** Eased reverse curve of 700 mm without a straight in the middle, at 1.8 m. */
const k = 1 / 0.7;
const entry = [straight(0.6), transition(0.4, 0, k)];
const exit = [transition(0.4, -k, 0), straight(0.6)];
const reverse = [...entry, arc(0.7, 0.8 * k), arc(0.7, -0.8 * k), ...exit];

describe('buffers on a reverse curve', () => {
  it.each([false, true])('lock when pushed, and the place is the scene’s own (reversed: %s)', (reversed) => {
    const finding = firstOf('buffer-lock', reverse, -0.1, undefined, reversed);
    expect(finding.verdict).toBe('fails');
    expect(finding.causes[0]).toEqual({ kind: 'reverse-curve', radius: expect.closeTo(0.7, 9) });
    expect(Math.abs(finding.chainage - 1.8)).toBeLessThan(0.05);
  });

  it('are cured by pulling, by an easement and by a straight as long as a vehicle, all at the middle of it', () => {
    const { cures } = firstOf('buffer-lock', reverse, -0.1);
    expect(new Set(cures.map(({ kind }) => kind))).toEqual(new Set(['change-working', 'easement', 'straight-between']));
    for (const cure of cures) if ('chainage' in cure) expect(cure.chainage).toBeCloseTo(1.8, 9);
    // 242 mm over buffers, in steps of 10 mm: it helps, but no straight takes the entry into the second curve away.
    expect(cures).toContainEqual({
      kind: 'straight-between',
      chainage: expect.anything(),
      length: expect.closeTo(0.25, 9),
      enough: false,
    });
    expect(cures.at(-1)?.kind).toBe('straight-between');
    // √(24 × 9 mm × 700 mm) = 389 mm, the nearest 50 mm, or that half as long again, or twice.
    const easement = cures.find((cure) => cure.kind === 'easement');
    expect([0.4, 0.6, 0.8]).toContainEqual(expect.closeTo(easement?.length ?? 0, 9));
  });

  it('of which one is tried and passes', () => {
    const { cures } = firstOf('buffer-lock', reverse, -0.1);
    const length = cures.flatMap((cure) => (cure.kind === 'easement' ? [cure.length] : []))[0];
    const rest = 0.8 - length / 2;
    const eased = [...entry, arc(0.7, rest * k), transition(length, k, -k), arc(0.7, -rest * k), ...exit];
    expect(firstOf('buffer-lock', eased, -0.1).margin).toBeGreaterThan(0);
  });

  it('are offered an easement that fits: 400 mm takes 200 mm from either curve of 250 mm, not from curves of 150 mm', () => {
    const curves = (length: number) => [...entry, arc(0.7, length * k), arc(0.7, -length * k), ...exit];
    const lengths = (length: number) =>
      firstOf('buffer-lock', curves(length), -0.1).cures.flatMap((cure) =>
        cure.kind === 'easement' ? [cure.length] : [],
      );
    expect(lengths(0.25)).toEqual([expect.closeTo(0.4, 9)]);
    expect(lengths(0.15)).toEqual([]);
  });

  it('offer no straight where a transition already runs from curve to curve', () => {
    const short = [...entry, arc(0.7, 1), transition(0.05, k, -k), arc(0.7, -1), ...exit];
    const finding = firstOf('buffer-lock', short, -0.1);
    expect(finding.verdict).toBe('fails');
    expect(finding.cures.map(({ kind }) => kind)).not.toContain('straight-between');
  });
});

describe('entering a single curve', () => {
  it('is called so, and only an easement is offered for the offset: no straight takes it away', () => {
    // (L² - a²)/8R on 300 mm: 13.7 mm.
    const finding = firstOf('buffer-lock', [straight(1.5), arc(0.3, 2.5), straight(1)], -0.1);
    expect(finding.verdict).toBe('fails');
    expect(finding.causes[0].kind).toBe('curve-entry');
    expect(finding.cures.map(({ kind }) => kind)).not.toContain('straight-between');
    expect(finding.cures.map(({ kind }) => kind)).toContain('easement');
  });
});

describe('the curve a pair stands in', () => {
  // Straight to 1 m, 500 mm to the left to 3 m, then to the right to 5 m, then straight; the pair is 0.45 m long, its joint at `place`.
  const bends = sampleTrack([straight(1), arc(0.5, 4), arc(0.5, -4), straight(1)]);
  const curveAt = (place: number) => {
    const context = along(bends, [coach(), coach()], { force: 0.1 }, { from: place + 0.11, to: place + 0.12 });
    const situation = situationAt(trialOf(context), 'coupler-swing', 0, 0);
    return situation === null ? [] : pairCurve(situation);
  };
  it.each([
    [0.6, []],
    [1.05, [{ kind: 'curve-entry', radius: 0.5 }]],
    [2, [{ kind: 'curve', radius: 0.5 }]],
    [3, [{ kind: 'reverse-curve', radius: 0.5 }]],
    [4, [{ kind: 'curve', radius: 0.5 }]],
    [4.95, [{ kind: 'curve-entry', radius: 0.5 }]],
  ])('with its joint at %f m', (place, causes) => {
    expect(curveAt(place)).toEqual(causes);
  });
});

describe('the curve one vehicle stands in', () => {
  // The same bends; the coach reaches 114 mm either way from its middle, its running points 80 mm.
  const bends = sampleTrack([straight(1), arc(0.5, 4), arc(0.5, -4), straight(1)]);
  const curveAt = (place: number) => {
    const context = along(bends, [coach(), coach()], { force: 0.1 }, { from: place, to: place + 0.01 });
    // Any risk with something to say of its first subject will do.
    const situation = situationAt(trialOf(context), 'coupler-swing', 0, 0);
    return situation === null ? null : vehicleCurve(situation);
  };
  it.each([
    [0.87, []],
    [0.9, [{ kind: 'curve-entry', radius: 0.5 }]],
    [2, [{ kind: 'curve', radius: 0.5 }]],
    [2.9, [{ kind: 'reverse-curve', radius: 0.5 }]],
    [5.1, [{ kind: 'curve-entry', radius: 0.5 }]],
    [5.13, []],
  ])('from body end to body end, with its middle at %f m', (place, causes) => {
    expect(curveAt(place)).toEqual(causes);
  });
});

describe('a coupling at its stop all round a curve', () => {
  it('is blamed on the curve, which no easement widens', () => {
    const finding = firstOf('coupler-swing', [straight(1), arc(0.5, 5), straight(1)], 0.1, 0.2);
    expect(finding.verdict).toBe('fails');
    expect(['curve', 'curve-entry']).toContain(finding.causes[0].kind);
    if (finding.causes[0].kind === 'curve') expect(finding.cures).toEqual([]);
  });
});

describe('the change of curvature near a place', () => {
  // An easement from 1.0 m to 1.4 m.
  const eased = sampleTrack([straight(1), transition(0.4, 0, 1 / 0.7), arc(0.7, 1)]);

  it.each([
    [0.85, null],
    [0.95, 1.2],
    [1.2, 1.2],
    [1.45, 1.2],
    [1.55, null],
  ])('is an easement from 0.1 m before it to 0.1 m after it: %d m', (place, middle) => {
    expect(curveChangeNear(eased, place, 0.1)?.chainage ?? null).toEqual(
      middle === null ? null : expect.closeTo(middle, 9),
    );
  });

  it('is a jump where there is one, though an easement is as near', () => {
    const joined = sampleTrack([straight(1), arc(0.9, 0.5), transition(0.4, 1 / 0.9, 1 / 0.7), arc(0.7, 1)]);
    expect(curveChangeNear(joined, 1.3, 0.35)).toMatchObject({
      length: 0,
      before: 0,
      after: expect.closeTo(1 / 0.9, 9),
    });
  });
});
