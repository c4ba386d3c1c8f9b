import { describe, expect, it } from 'vitest';
import { collectFindings } from '../../../src/core/findings/index.ts';
import type { Cause, Cure, Finding } from '../../../src/core/findings/types.ts';
import { assessRun } from '../../../src/core/risks/index.ts';
import type { RiskContext } from '../../../src/core/risks/types.ts';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { along, engine, ramp, van } from './samples.ts';

const findings = (context: RiskContext): Finding[] => collectFindings(assessRun(context), context);
const firstOf = (context: RiskContext, risk: Finding['risk']): Finding => {
  const found = findings(context).find((finding) => finding.risk === risk);
  if (found === undefined) throw new Error(`no finding of ${risk}`);
  return found;
};
const causeOf = <K extends Cause['kind']>(finding: Finding, kind: K) =>
  finding.causes.find((cause): cause is Extract<Cause, { kind: K }> => cause.kind === kind);
const cureOf = <K extends Cure['kind']>(finding: Finding, kind: K) =>
  finding.cures.find((cure): cure is Extract<Cure, { kind: K }> => cure.kind === kind);

/** Faces of 0.5 mm, less than a support 2.5 mm high puts between the heads. */
const thin = van({ facingHeight: 0.0005, engagement: 0.0005, headHeightTolerance: 0 });

describe('heads put out of level by one support', () => {
  const high = ramp({ 10: 0.0025 });

  it.each([false, true])('are blamed on it, by the number the scene gives it (train reversed: %s)', (reversed) => {
    const context = along(high, [thin, thin, engine()], { force: -0.1 }, { reversed, propelled: true });
    const finding = firstOf(context, 'override');
    expect(finding.verdict).toBe('fails');
    expect(Math.abs(finding.chainage - 3)).toBeLessThan(0.25);
    expect(causeOf(finding, 'support-off')).toEqual({
      kind: 'support-off',
      support: 10,
      departure: expect.closeTo(0.0025, 9),
    });
    expect(causeOf(finding, 'buff')?.force).toBeCloseTo(0.1, 12);
  });

  it('break the grade from 2 % + 2.5/300 to 2 % - 2.5/300, as the train meets it', () => {
    const up = firstOf(along(high, [thin, thin], { force: -0.1 }), 'override');
    expect(causeOf(up, 'kink')?.before).toBeCloseTo(0.02 + 0.0025 / 0.3, 6);
    expect(causeOf(up, 'kink')?.after).toBeCloseTo(0.02 - 0.0025 / 0.3, 6);
    const down = firstOf(along(high, [thin, thin], { force: -0.1 }, { reversed: true }), 'override');
    expect(causeOf(down, 'kink')?.before).toBeCloseTo(-0.02 + 0.0025 / 0.3, 6);
  });

  it('are cured by setting it back, which is tried first', () => {
    const finding = firstOf(along(high, [thin, thin], { force: -0.1 }), 'override');
    expect(finding.cures[0]).toEqual({ kind: 'set-support', support: 10, by: expect.closeTo(-0.0025, 9) });
    const mended = along(ramp({}), [thin, thin], { force: -0.1 });
    expect(assessRun(mended).find((row) => row.risk === 'override')?.worst?.margin).toBeGreaterThan(0.00049);
  });

  it('are cured by pulling as well, and not when pulled already', () => {
    expect(cureOf(firstOf(along(high, [thin, thin], { force: -0.1 }), 'override'), 'change-working')).toBeDefined();
    const pulled = firstOf(along(high, [thin, thin], { force: 0.1 }), 'parting');
    expect(pulled.verdict).toBe('fails');
    expect(cureOf(pulled, 'set-support')?.support).toBe(10);
    expect(cureOf(pulled, 'change-working')).toBeUndefined();
  });

  it('are not blamed on supports that are all as high as each other', () => {
    const raised = ramp(Object.fromEntries(Array.from({ length: 21 }, (_, i) => [i, 0.0025])));
    expect(findings(along(raised, [thin, thin], { force: -0.1 }))[0].verdict).not.toBe('fails');
  });

  it('make one finding for each bad place, gravest first', () => {
    const twice = ramp({ 6: 0.0025, 15: 0.003 });
    const found = findings(along(twice, [thin, thin], { force: -0.1 })).filter(({ risk }) => risk === 'override');
    expect(found.map((finding) => causeOf(finding, 'support-off')?.support)).toEqual([15, 6]);
    expect(found[0].margin).toBeLessThan(found[1].margin);
  });
});

describe('heads fitted at unlike heights', () => {
  it('are blamed before the track, and cured by matching them', () => {
    const drooping = van({ headHeight: 0.0089, facingHeight: 0.0011, headHeightTolerance: 0 });
    const straightVan = van({ facingHeight: 0.0011, headHeightTolerance: 0 });
    const finding = firstOf(along(ramp({ 10: 0.0012 }), [straightVan, drooping], { force: -0.1 }), 'override');
    expect(finding.causes[0]).toEqual({ kind: 'heads-differ', by: expect.closeTo(0.001, 9) });
    expect(finding.cures[0]).toEqual({ kind: 'match-heads', joint: 0 });
  });

  it('are near when only their tolerance could fail them', () => {
    const loose = van({ headHeightTolerance: 0.0016 });
    const finding = firstOf(along(ramp({}), [loose, loose], { force: -0.1 }), 'override');
    expect(finding.margin).toBeCloseTo(0.003, 4);
    expect(finding.range?.[0]).toBeLessThan(0);
    expect(finding.verdict).toBe('near');
  });
});

describe('a break of grade', () => {
  const abrupt = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(6)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 3, height: 0 },
        { chainage: 6, height: 0.09 },
      ],
    },
  });

  it('is named with both grades and cured by a vertical curve there', () => {
    const finding = firstOf(along(abrupt, [thin, thin], { force: -0.1 }), 'override');
    expect(finding.causes[0].kind).toBe('kink');
    expect(causeOf(finding, 'kink')?.before).toBeCloseTo(0, 9);
    expect(causeOf(finding, 'kink')?.after).toBeCloseTo(0.03, 9);
    const cure = cureOf(finding, 'vertical-curve');
    expect(cure?.chainage).toBe(3);
    // In steps of 50 mm from the longer vehicle's 290 mm up.
    expect((cure?.length ?? 0) / 0.05).toBeCloseTo(Math.round((cure?.length ?? 0) / 0.05), 9);
    expect(cure?.length).toBeGreaterThan(0.29);
  });

  it('gets the shortest curve that leaves more than near', () => {
    // End throw o(a + o)/2R of the van, 45 and 200 mm: a 300 mm curve of 3 % is R 10 m and leaves 0.7 - 0.55 mm, 450 mm is R 15 m and
    // leaves 0.7 - 0.37 = 0.33 mm, more than 0.3.
    const face = van({ facingHeight: 0.0007, headHeightTolerance: 0 });
    const finding = firstOf(along(abrupt, [face, face], { force: -0.1 }), 'override');
    expect(cureOf(finding, 'vertical-curve')?.length).toBeCloseTo(0.45, 9);
  });

  it('at a butt joint of the strip is cured by a splice', () => {
    const butted = ramp({ 10: 0.004 }, [3.0]);
    const finding = firstOf(along(butted, [thin, thin], { force: -0.1 }), 'override');
    expect(cureOf(finding, 'set-support')?.support).toBe(10);
    expect(cureOf(finding, 'splice-joint')?.chainage).toBe(3);
  });
});

describe('a coupling pulled beyond its release', () => {
  it('is cured by as many vehicles less as bring the pull under it', () => {
    // Five vans behind the joint are pulled with 1.3 N, the coupling lets go at 1 N: four of them would take 1.04 N, three 0.78 N.
    const weak = van({ release: 1 });
    const train = [engine(), weak, weak, weak, weak, weak];
    const finding = firstOf(
      along(ramp({}), train, { force: [1.3, 0.9, 0.6, 0.4, 0.2] }, { from: 2.5, to: 3, step: 0.05 }),
      'parting',
    );
    expect(finding.governing).toBe('release');
    expect(finding.cures).toEqual([{ kind: 'fewer-vehicles', by: 2 }, { kind: 'change-working' }]);
  });
});

describe('heads put out of level by a crest', () => {
  // From +4 % to -4 % in 400 mm: a crest of 5 m, by L/(change of grade).
  const crest = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(6)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: 3, height: 0.12, curve: { length: 0.4 } },
        { chainage: 6, height: 0 },
      ],
    },
  });

  it('are blamed on the vertical curve, by its radius', () => {
    const finding = firstOf(along(crest, [thin, thin], { force: -0.1 }), 'override');
    expect(finding.verdict).toBe('fails');
    expect(causeOf(finding, 'vertical-curve')?.radius).toBeCloseTo(5, 1);
  });

  it('are told with what the assessment compares them with', () => {
    const context = along(crest, [thin, thin], { force: -0.1 });
    const worst = assessRun(context).find(({ risk }) => risk === 'override')?.worst;
    expect(firstOf(context, 'override').compare).toEqual(worst?.compare);
    expect(worst?.compare?.length).toBeGreaterThan(0);
  });
});
