import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, parseLength } from '../../../src/core/units/index.ts';
import { evenly } from '../../evenly.ts';

const value = (text: string, unit?: 'mm' | 'in' | 'ft' | 'm') => {
  const reading = parseLength(text, unit ? { unit } : {});
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

describe('lengths as builders write them', () => {
  it.each([
    ['24in', 0.6096],
    ['24"', 0.6096],
    ["24''", 0.6096],
    ['24″', 0.6096],
    ['24 in.', 0.6096],
    ['24 Inches', 0.6096],
    ['610', 0.61],
    ['610mm', 0.61],
    ['610 MM', 0.61],
    ['610\u2009mm', 0.61],
    [`2' 1 1/2"`, 0.6477],
    [`2'-1 1/2"`, 0.6477],
    ['2ft 1.5in', 0.6477],
    ['2 ft. 1½ in.', 0.6477],
    ['2′ 1 1⁄2″', 0.6477],
    ["2'", 0.6096],
    ['0.6m', 0.6],
    ['.6 m', 0.6],
    ['0,6 m', 0.6],
    ['61cm', 0.61],
    ['1 1/2"', 0.0381],
    ['1-1/2"', 0.0381],
    ['1½"', 0.0381],
    ['3/4"', 0.01905],
    ['2,5 mm', 0.0025],
    ['0,500 mm', 0.0005],
    ['−3 mm', -0.003],
    ['-3', -0.003],
    ['+3', 0.003],
    [`−2' 3"`, -0.6858],
  ])('%s', (text, metres) => {
    expect(value(text)).toBeCloseTo(metres, 15);
  });

  it('takes a number without a unit in the unit of the field', () => {
    expect(value('24', 'in')).toBeCloseTo(0.6096, 15);
    expect(value('1 1/2', 'in')).toBeCloseTo(0.0381, 15);
    expect(value('2', 'ft')).toBeCloseTo(0.6096, 15);
    expect(value('610 mm', 'in')).toBe(0.61);
  });

  it('says what was understood, in the other system too', () => {
    expect(parseLength(`2'-1 1/2"`)).toMatchObject({ read: '2 ft 1 1/2 in (647.7\u2009mm)' });
    expect(parseLength('-300')).toMatchObject({ read: '−300 mm (−11 13/16″)' });
  });

  it('gives zero without a sign', () => {
    expect(Object.is(value('-0'), 0)).toBe(true);
  });
});

describe('unclear lengths are refused with the reason', () => {
  it.each([
    [`2' 14"`, 'less than 12 in, and 14 is not'],
    [`2' 12"`, 'less than 12 in, and 12 is not'],
    ['12/0"', '12/0 divides by nothing'],
    ['1,5,2', 'more than one decimal mark'],
    ['1.5.2 mm', 'more than one decimal mark'],
    ['1,234.5', 'more than one decimal mark'],
    ['1,500', '1.500 or 1500'],
    ['1 3/2"', 'less than one'],
    ['1m 20cm', 'mixes units'],
    ['3 in 2 ft', 'mixes units'],
    [`2' 3" 4"`, 'mixes units'],
    ['2.5ft 3in', 'must be whole'],
    ['2 1/2 ft 3 in', 'must be whole'],
    ['2ft 3', '3 has no unit'],
    ['3 2ft', '3 2 is not one number'],
    ['24 24', '24 24 is not one number'],
    ['610.', 'not finished'],
    ['5-', 'ends with a dash'],
    [`2' -1"`, 'not understood'],
    ['--5', 'does not start with a number'],
    ['abc', 'does not start with a number'],
    ['', 'nothing was written'],
    ['1e3', 'e is not a unit'],
    ['150 g', 'g is not a unit'],
    ['1 in 42', '42 has no unit'],
    ['5 constructor', 'constructor is not a unit'],
    ['٣ mm', 'does not start with a number'],
  ])('%s', (text, why) => {
    const reading = parseLength(text);
    expect(reading).toMatchObject({ ok: false });
    if (reading.ok) return;
    expect(reading.message).toContain(`“${text}”`);
    expect(reading.message).toContain(why);
    expect(reading.message).toContain('Write a length like 610 mm');
  });

  it('keeps to the bounds of the field and names them', () => {
    expect(parseLength('0', { least: 0 })).toMatchObject({ ok: true, value: 0 });
    expect(parseLength('-1', { least: 0 })).toMatchObject({
      message: expect.stringContaining('least allowed here, 0\u2009mm'),
    });
    expect(parseLength('30"', { most: 0.6 })).toMatchObject({
      message: expect.stringContaining('most allowed here, 23 5/8″'),
    });
  });

  it('never throws, and gives a finite number or a reason, whatever is typed', () => {
    const pieces = [
      '1',
      '42',
      '0',
      '/',
      ' ',
      "'",
      '"',
      'in',
      'mm',
      'ft',
      '.',
      ',',
      '-',
      '−',
      '½',
      'm',
      '°',
      '%',
      'x',
      ' in ',
    ];
    const typed = fc.oneof(
      fc.string({ maxLength: 90, unit: 'binary' }),
      fc.array(fc.constantFrom(...pieces), { maxLength: 10 }).map((some) => some.join('')),
    );
    fc.assert(
      fc.property(typed, (text) => {
        const reading = parseLength(text);
        if (reading.ok) expect(Number.isFinite(reading.value)).toBe(true);
        else expect(reading.message.length).toBeLessThan(400);
      }),
      { numRuns: 800 },
    );
    expect(parseLength('9'.repeat(70)).ok).toBe(true);
    expect(parseLength('9'.repeat(100)).ok).toBe(false);
  });
});

describe('lengths as shown', () => {
  it.each([
    [0.6096, {}, '609.6\u2009mm'],
    [0.61, {}, '610\u2009mm'],
    [0.61, { digits: 1 }, '610.0\u2009mm'],
    [-0.0025, {}, '−2.5\u2009mm'],
    [0.0025, { signed: true }, '+2.5\u2009mm'],
    [-0.00001, {}, '0\u2009mm'],
    [0.3, { unit: 'in' }, '11 13/16″'],
    [-0.3, { unit: 'in' }, '−11 13/16″'],
    [0.3, { unit: 'in', fraction: 32 }, '11 13/16″'],
    [0.301, { unit: 'in', fraction: 32 }, '11 27/32″'],
    [0.6096, { unit: 'in' }, '24″'],
    [0.6477, { unit: 'ft' }, '2′ 1 1/2″'],
    [0.6096, { unit: 'ft' }, '2′'],
    [0.0127, { unit: 'ft' }, '1/2″'],
    [0.6095, { unit: 'ft' }, '2′'],
    [0.003, { unit: 'in' }, '0.118\u2009in'],
    [0, { unit: 'in' }, '0″'],
    [-0.000001, { unit: 'in' }, '0″'],
    [0.00635, { unit: 'in' }, '1/4″'],
    [0.3, { unit: 'in', digits: 2 }, '11.81\u2009in'],
    [12.5, { unit: 'm' }, '12.5\u2009m'],
    [Number.NaN, {}, '–'],
    [Number.POSITIVE_INFINITY, { unit: 'in' }, '–'],
  ] as const)('%d %j is %s', (metres, style, shown) => {
    expect(formatLength(metres, style)).toBe(shown);
  });

  // Half of the last place shown is all that writing may lose.
  it('is read back to within half the last place', () => {
    const metres = evenly(-50, 50);
    fc.assert(
      fc.property(metres, fc.constantFrom('mm', 'in', 'ft'), fc.constantFrom(16, 32, 64), (length, unit, fraction) => {
        const shown = unit === 'mm' ? formatLength(length, { digits: 2 }) : formatLength(length, { unit, fraction });
        const half = unit === 'mm' ? 0.000005 : 0.0254 / fraction / 2;
        expect(Math.abs(value(shown) - length)).toBeLessThanOrEqual(half * (1 + 1e-9));
      }),
      { numRuns: 500 },
    );
  });

  it('shows every sixteenth of an inch as itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 2000 }), (sixteenths) => {
        expect(value(formatLength((sixteenths * 0.0254) / 16, { unit: 'ft' }))).toBeCloseTo(
          (sixteenths * 0.0254) / 16,
          14,
        );
      }),
    );
    expect(formatLength((13 * 0.0254) / 16, { unit: 'in' })).toBe('13/16″');
  });
});
