import { describe, expect, it } from 'vitest';
import { collectFindings } from '../../../src/core/findings/index.ts';
import type { Finding } from '../../../src/core/findings/types.ts';
import { assessRun } from '../../../src/core/risks/index.ts';
import type { RiskContext } from '../../../src/core/risks/types.ts';
import { arc, makeTrack, straight } from '../../../src/core/track/index.ts';
import { madeUpTrial, passing, type Setting } from '../risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { along, engine, ramp, van } from './samples.ts';

function worstOf(risk: Finding['risk'], context: RiskContext): Finding {
  const found = collectFindings(assessRun(context), context).find((finding) => finding.risk === risk);
  if (found === undefined) throw new Error(`no finding of ${risk}`);
  return found;
}

/** Level to 2 m, then 8 % down, without a curve between. */
const hump = sampleTrack(
  [straight(4)],
  [
    { chainage: 0, height: 0 },
    { chainage: 2, height: 0 },
    { chainage: 4, height: -0.16 },
  ],
);

describe('a wheel lifted', () => {
  const tank = (change = {}) => engine({ bogies: false, ...change });

  it('at a spliceless joint over a high support is blamed on the support, and cured by lowering it or splicing the joint', () => {
    // The strip ends 6 mm up over support 10, 300 mm from the next: 2 % steeper there were it free to turn over that one, 3 % were it clamped. Either side
    // of the joint, 100 mm of wheelbase: an end lifts 2 x 2 % x 50 mm to 2 x 3 % x 50 mm.
    const finding = worstOf('axle-lift', along(ramp({ 10: 0.006 }, [3]), [tank(), van()], { force: 0.1 }));
    expect(finding.verdict).toBe('fails');
    expect(finding.value).toBeGreaterThan(0.002);
    expect(finding.value).toBeLessThan(0.003);
    expect(Math.abs(finding.chainage - 3)).toBeLessThan(0.06);
    expect(finding.causes[0]).toEqual({ kind: 'support-off', support: 10, departure: expect.closeTo(0.006, 9) });
    expect(finding.cures.map(({ kind }) => kind)).toContain('set-support');
    expect(finding.cures.find((cure) => cure.kind === 'set-support')).toMatchObject({
      support: 10,
      by: expect.closeTo(-0.006, 9),
    });
  });

  it.each([false, true])('at a break of grade is cured by a vertical curve there (reversed: %s)', (reversed) => {
    const setting: Setting = { reversed };
    const finding = worstOf('axle-lift', along(hump, [tank(), van()], { force: 0.1 }, setting));
    // 8 % of 50 mm.
    expect(Math.abs(finding.value - 0.004)).toBeLessThan(0.0002);
    expect(finding.causes[0].kind).toBe('kink');
    expect(finding.cures[0]).toMatchObject({ kind: 'vertical-curve', chainage: expect.closeTo(2, 9) });
  });
});

describe('a van grounded', () => {
  it('on a hump of 8 % is blamed on the break and cured by a vertical curve', () => {
    // 8 % x 200 mm / 4 = 4 mm, as high as its underside; the lean takes a little of that.
    const low = van({}, { underside: 0.003 });
    const finding = worstOf('grounding', along(hump, [engine(), low], { force: 0.1 }));
    expect(finding.verdict).toBe('fails');
    expect(finding.subject).toBe(1);
    expect(Math.abs(finding.value - 0.004)).toBeLessThan(0.0001);
    expect(finding.causes[0]).toEqual({ kind: 'kink', before: expect.closeTo(0, 9), after: expect.closeTo(-0.08, 9) });
    expect(finding.cures[0]).toMatchObject({ kind: 'vertical-curve', chainage: expect.closeTo(2, 9) });
  });
});

describe('trains that foul each other', () => {
  const pair = [0.5, 0.538].map((radius) =>
    makeTrack({
      start: { x: 0, y: -radius, heading: 0 },
      elements: [arc(radius, 3)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    }),
  );
  const coach = sampleVehicle({ pivotSpacing: 0.16, overhang: 0.03 });

  it('on curves 38 mm apart are blamed on the track beside and the curve; nothing but room cures that', () => {
    const context = madeUpTrial(pair[0], [coach, coach], passing(0.6, 1.2, 0.05, { force: 0.1 }), {
      surroundings: { tracks: pair, deckDepth: 0.017 },
    });
    const finding = worstOf('passing', context);
    expect(finding.verdict).toBe('fails');
    expect(finding.causes).toEqual([{ kind: 'track-beside' }, { kind: 'curve', radius: expect.closeTo(0.5, 9) }]);
    expect(finding.cures).toEqual([]);
  });
});
