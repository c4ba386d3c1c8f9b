import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closestCall,
  describeFinding,
  describePass,
  explainRisk,
  type Naming,
  standingOf,
} from '../../../src/core/findings/index.ts';
import type { Finding } from '../../../src/core/findings/types.ts';
import { byGravity } from '../../../src/core/findings/verdict.ts';
import { risks } from '../../../src/core/risks/index.ts';

const naming: Naming = { vehicleNames: ['Engine', 'Van', 'Van'], locomotives: [0] };
const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;
const plain = (text: string | null): string => (text ?? '').replaceAll('\u2009', ' ');

const finding = (change: Partial<Finding>): Finding => ({
  risk: 'override',
  verdict: 'passes',
  time: 1,
  frame: 50,
  chainage: 7.42,
  subject: 1,
  value: 0.001,
  limit: 0.0025,
  margin: 0.0015,
  range: null,
  parts: [],
  governing: 'facing',
  causes: [],
  cures: [],
  ...change,
});

describe('how a finding stands', () => {
  it.each<[Finding['verdict'], Finding['range'], string]>([
    ['fails', null, 'fails'],
    ['fails', [-0.003, -0.001], 'fails'],
    ['fails', [-0.0012, 0.0008], 'undecided'],
    // Exactly nothing left still passes.
    ['fails', [-0.0012, 0], 'undecided'],
    ['near', [-0.0001, 0.0019], 'undecided'],
    ['near', [0, 0.002], 'near'],
    ['passes', [0.0004, 0.002], 'passes'],
  ])('%s over %j: %s', (verdict, range, standing) => {
    expect(standingOf({ verdict, range })).toBe(standing);
  });

  it('is said with may, and the range with both signs', () => {
    const said = describeFinding(
      finding({ verdict: 'fails', margin: -0.0002, range: [-0.0002, 0.0009] }),
      naming,
      show,
    );
    expect(plain(said.headline)).toBe('Joint 2 may ride up at 7.42 m.');
    expect(said.standing).toBe('may fail');
    expect(plain(said.range)).toBe('−0.2 to +0.9 mm');
    expect(plain(describeFinding(finding({ range: [0.0005, 0.0025] }), naming, show).range)).toBe('0.5 to 2.5 mm');
  });

  it('is said of every risk in words of its own', () => {
    for (const { id, subject } of risks) {
      const headline = (verdict: Finding['verdict'], range: Finding['range']) =>
        describeFinding(finding({ risk: id, subject: subject === 'locomotive' ? 0 : 1, verdict, range }), naming, show)
          .headline;
      const said = [
        headline('fails', null),
        headline('fails', [-0.001, 0.001]),
        headline('near', null),
        headline('passes', null),
      ];
      expect(new Set(said).size, id).toBe(4);
      expect(said[1], id).toContain(' may ');
    }
  });

  it('orders what fails, what may, what is near and what passes, and within each the least first', () => {
    const share = ({ margin }: Finding): number => margin / 0.0015;
    const rows = [
      finding({ verdict: 'fails', margin: -0.0001 }),
      finding({ verdict: 'fails', margin: -0.002, range: [-0.003, 0.0001] }),
      finding({ verdict: 'near', margin: 0.0003, range: [-0.0001, 0.0007] }),
      finding({ verdict: 'near', margin: 0.0002 }),
      finding({ verdict: 'passes', margin: 0.002 }),
    ].map((one) => ({ finding: one, share: share(one) }));
    expect(rows.toReversed().sort(byGravity)).toEqual(rows);
  });
});

describe('a trial that passes', () => {
  const close = finding({ risk: 'wheelspin', subject: 0, governing: 'grip', value: 0.3, limit: 0.36, margin: 0.2 });
  const roomy = finding({ margin: 0.0015 });

  it('names what came closest, in terms of what is plenty for it: 0.2 of 0.5 before 1.5 of 1.5 mm', () => {
    expect(closestCall([roomy, close])).toBe(close);
    expect(plain(describePass([roomy, close], naming, show))).toBe(
      'Passes. Closest call: grip in hand, 20 % left, Engine, 7.42 m.',
    );
  });

  it('passes only just where something is near', () => {
    const near = finding({ verdict: 'near', margin: 0.0004 });
    expect(plain(describePass([close, near], naming, show))).toBe(
      'Passes, but only just. Closest call: riding up, 0.4 mm left, joint 2, 7.42 m.',
    );
  });

  it('is no such trial where something fails or may fail', () => {
    expect(describePass([close, finding({ verdict: 'fails', margin: -0.001 })], naming, show)).toBeNull();
    expect(describePass([close, finding({ verdict: 'near', range: [-0.0001, 0.001] })], naming, show)).toBeNull();
    expect(describePass([], naming, show)).toBe('Passes.');
  });
});

describe('what a risk is', () => {
  it('is said in two sentences for each, none twice', () => {
    const said = risks.map(({ id }) => explainRisk(id));
    expect(new Set(said).size).toBe(risks.length);
    for (const text of said) expect(text.split('. ').length, text).toBe(2);
  });
});

describe('every value', () => {
  it('has some unit whatever governs', () => {
    fc.assert(
      fc.property(fc.constantFrom(...risks), fc.double({ min: 0.001, max: 1, noNaN: true }), ({ id }, value) => {
        const { value: said, margin } = describeFinding(finding({ risk: id, subject: 0, value }), naming, show);
        expect(said).toMatch(/\d.*(mm|N|%|°)$/u);
        expect(margin).toMatch(/\d.*(mm|N|%|°)$/u);
      }),
    );
  });
});
