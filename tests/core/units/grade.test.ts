import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatGrade, type GradeForm, parseGrade } from '../../../src/core/units/index.ts';
import { evenly } from '../../evenly.ts';

const value = (text: string, bare?: GradeForm) => {
  const reading = parseGrade(text, bare ? { bare } : {});
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

describe('grades as builders write them', () => {
  it.each([
    ['1 in 40', 0.025],
    ['1in40', 0.025],
    ['1 IN 40', 0.025],
    ['1:40', 0.025],
    ['1 : 40', 0.025],
    ['1/40', 0.025],
    ['2 in 80', 0.025],
    ['2.5 per 100', 0.025],
    ['1 in 33.3', 0.03003003],
    ['1 in 33,3', 0.03003003],
    ['2.38%', 0.0238],
    ['2,38 %', 0.0238],
    ['2 1/2 %', 0.025],
    ['2½%', 0.025],
    ['2.5 per cent', 0.025],
    ['2.5 percent', 0.025],
    ['23.8‰', 0.0238],
    ['23.8 per mille', 0.0238],
    ['25 mm/m', 0.025],
    ['25 mm per m', 0.025],
    ['25 mm in 1 m', 0.025],
    ['12 mm in 600 mm', 0.02],
    ['1/2" in 24"', 0.0208333333],
    ['1/2 in in 24 in', 0.0208333333],
    ['1/8" per ft', 0.0104166667],
    ['45°', 1],
    ['level', 0],
    ['flat', 0],
    ['0', 0],
    ['−2.38 %', -0.0238],
    ['-1 in 40', -0.025],
    ['1 in 40 down', -0.025],
    ['down 1:40', -0.025],
    ['falling 2%', -0.02],
    ['1 in 40 up', 0.025],
  ])('%s', (text, grade) => {
    expect(value(text)).toBeCloseTo(grade, 9);
  });

  it('takes degrees by their tangent', () => {
    expect(value('1.36°')).toBeCloseTo(0.0237409, 7);
    expect(value('1.36deg')).toBe(value('1.36°'));
    expect(value('1.36 degrees')).toBe(value('1.36°'));
    expect(value('-1.36°')).toBe(-value('1.36°'));
  });

  it('takes a bare number only where the field says what it means', () => {
    expect(parseGrade('2.5')).toMatchObject({ ok: false });
    expect(value('40', 'one-in')).toBe(0.025);
    expect(value('2.5', 'percent')).toBe(0.025);
    expect(value('25', 'permille')).toBe(0.025);
    expect(value('45', 'degree')).toBeCloseTo(1, 12);
    expect(value('2.5%', 'one-in')).toBe(0.025);
  });

  it('says what was understood, in another form too', () => {
    expect(parseGrade('-1:40')).toMatchObject({ read: '1 in 40 down (2.50\u2009%)' });
    expect(parseGrade('2.5%')).toMatchObject({ read: '2.5 % up (1 in 40)' });
    expect(parseGrade('-0 %')).toMatchObject({ read: 'level', value: 0 });
  });
});

describe('unclear grades are refused with the reason', () => {
  it.each([
    ['1 in', 'without its N'],
    ['1in', 'without its N'],
    ['1:', 'second number is missing'],
    ['42', 'could be per cent, degrees or “1 in 42”'],
    ['1/2', 'could be a fraction of a per cent'],
    ['1 in 0', 'no distance'],
    ['42 in 1', 'steeper than 1 in 1'],
    ['238%', 'steeper than 1 in 1'],
    ['46°', 'steeper than 45°'],
    ['91°', 'steeper than 45°'],
    ['1 in 42 mm', 'a unit on both, or on neither'],
    ['1 mm in 42', 'a unit on both, or on neither'],
    ['1 in 1,500', '1.500 or 1500'],
    ['2% 3%', 'mixes units'],
    ['2 % 1°', 'mixes units'],
    ['-2% down', 'sign and a word'],
    ['--2%', 'two signs'],
    ['1 in -42', 'in is not a unit'],
    ['24 mm', 'mm is not a unit'],
    ['steep', 'does not start with a number'],
    ['', 'nothing was written'],
    ['down', 'does not start with a number'],
  ])('%s', (text, why) => {
    const reading = parseGrade(text);
    expect(reading).toMatchObject({ ok: false });
    if (reading.ok) return;
    expect(reading.message).toContain(`“${text}”`);
    expect(reading.message).toContain(why);
    expect(reading.message).toContain('Write a grade like 1 in 42');
  });

  it('keeps to the bounds of the field and names them', () => {
    expect(parseGrade('4%', { most: 0.04 })).toMatchObject({ ok: true });
    expect(parseGrade('4.1%', { most: 0.04 })).toMatchObject({ message: expect.stringContaining('4.00\u2009%') });
    expect(parseGrade('-1 in 20', { least: -0.04 })).toMatchObject({
      message: expect.stringContaining('−4.00\u2009%'),
    });
  });

  it('never throws, and gives a buildable number or a reason, whatever is typed', () => {
    const pieces = [
      '1',
      '42',
      '0',
      '/',
      ' ',
      'in',
      ' in ',
      ':',
      '%',
      '°',
      '.',
      ',',
      '-',
      'up',
      ' down',
      'mm',
      'per',
      '‰',
      '½',
      'm',
    ];
    const typed = fc.oneof(
      fc.string({ maxLength: 90, unit: 'binary' }),
      fc.array(fc.constantFrom(...pieces), { maxLength: 10 }).map((some) => some.join('')),
    );
    fc.assert(
      fc.property(typed, (text) => {
        const reading = parseGrade(text);
        if (reading.ok) expect(Math.abs(reading.value)).toBeLessThanOrEqual(1);
        else expect(reading.message.length).toBeLessThan(400);
      }),
      { numRuns: 800 },
    );
  });
});

describe('grades as shown', () => {
  it.each([
    [1 / 42, {}, '1 in 42'],
    [1 / 41.9, {}, '1 in 41.9'],
    [-1 / 42, {}, '−1 in 42'],
    [1 / 42, { signed: true }, '+1 in 42'],
    [1 / 330.4, {}, '1 in 330'],
    [0, {}, 'level'],
    [0.000001, {}, 'level'],
    [1 / 42, { form: 'percent' }, '2.38\u2009%'],
    [-1 / 42, { form: 'percent' }, '−2.38\u2009%'],
    [1 / 42, { form: 'percent', signed: true }, '+2.38\u2009%'],
    [1 / 42, { form: 'percent', digits: 1 }, '2.4\u2009%'],
    [1 / 42, { form: 'permille' }, '23.8\u2009‰'],
    [1 / 42, { form: 'degree' }, '1.36°'],
    [-0.000001, { form: 'percent' }, '0.00\u2009%'],
    [Number.NaN, { form: 'percent' }, '–'],
  ] as const)('%d %j is %s', (grade, style, shown) => {
    expect(formatGrade(grade, style)).toBe(shown);
  });

  it('is read back to within half the last place', () => {
    const grade = evenly(-0.2, 0.2);
    const form = fc.constantFrom<GradeForm>('percent', 'permille', 'degree');
    fc.assert(
      fc.property(grade, form, (steepness, written) => {
        const shown = formatGrade(steepness, { form: written, digits: 3 });
        // A change of one degree is at most (1 + 0.2²) π/180 of grade within these bounds.
        const half = { percent: 0.5e-5, permille: 0.5e-6, degree: 0.5e-3 * 1.04 * (Math.PI / 180), 'one-in': 0 }[
          written
        ];
        expect(Math.abs(value(shown) - steepness)).toBeLessThanOrEqual(half * (1 + 1e-9));
      }),
      { numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), fc.boolean(), (n, down) => {
        expect(value(formatGrade((down ? -1 : 1) / n))).toBe((down ? -1 : 1) / n);
      }),
    );
    expect(value('1 in 8')).toBe(0.125);
  });
});
