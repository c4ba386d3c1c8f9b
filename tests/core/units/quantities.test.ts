import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatAngle,
  formatForce,
  formatMass,
  formatNumber,
  formatSpeed,
  otherForms,
  parseAngle,
  parseForce,
  parseMass,
  parseSpeed,
  type QuantityKind,
  type Reading,
} from '../../../src/core/units/index.ts';

const value = (reading: Reading) => {
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};
const message = (reading: Reading) => (reading.ok ? `taken as ${reading.read}` : reading.message);

describe('masses', () => {
  it.each([
    ['150g', 0.15],
    ['150', 0.15],
    ['150 grams', 0.15],
    ['0.3kg', 0.3],
    ['0,3 kg', 0.3],
    ['5oz', 0.141747615625],
    ['2lb', 0.90718474],
    ['2 lbs.', 0.90718474],
    ['1 lb 4 oz', 0.5669904625],
    ['5 1/2 oz', 0.1559223771875],
  ])('%s', (text, kilograms) => {
    expect(value(parseMass(text))).toBeCloseTo(kilograms, 14);
  });

  it('takes a bare number in the unit of the field', () => {
    expect(value(parseMass('4', { unit: 'oz' }))).toBeCloseTo(0.1133980925, 14);
  });

  it.each([
    ['1lb 17oz', 'less than 16 oz'],
    ['1kg 200g', 'mixes units'],
    ['-5 g', 'cannot be negative'],
    ['5 gf', 'gf is not a unit'],
    ['5 mm', 'mm is not a unit'],
  ])('refuses %s', (text, why) => {
    expect(message(parseMass(text))).toContain(why);
    expect(message(parseMass(text))).toContain('Write a mass like 150 g');
  });

  it('are shown', () => {
    expect(formatMass(0.15)).toBe('150\u2009g');
    expect(formatMass(0.1505)).toBe('150.5\u2009g');
    expect(formatMass(0.15, { unit: 'oz' })).toBe('5.29\u2009oz');
    expect(formatMass(1.25, { unit: 'kg', digits: 2 })).toBe('1.25\u2009kg');
    expect(formatMass(1.2, { unit: 'kg', digits: 2 })).toBe('1.20\u2009kg');
    expect(formatMass(1.2, { unit: 'kg' })).toBe('1.2\u2009kg');
    expect(formatMass(Number.NaN)).toBe('–');
  });
});

describe('long texts', () => {
  it('are read up to 80 characters and refused beyond', () => {
    const digits = (total: number, unit: string): string => `0.5${'0'.repeat(total - 3 - unit.length)}${unit}`;
    expect(value(parseForce(digits(80, ' N')))).toBe(0.5);
    expect(value(parseMass(digits(80, ' kg')))).toBe(0.5);
    expect(value(parseAngle(digits(80, ' rad')))).toBe(0.5);
    expect(message(parseForce(digits(81, ' N')))).toContain('too long for one force');
    expect(message(parseMass(digits(81, ' kg')))).toContain('too long for one mass');
    expect(message(parseAngle(digits(81, ' rad')))).toContain('too long for one angle');
  });

  it('may stand between blanks', () => {
    expect(value(parseForce('  0.5 N  '))).toBe(0.5);
    expect(value(parseMass('\t5 oz\n'))).toBeCloseTo(0.141747615625, 14);
  });

  it('are quoted by their first 40 characters', () => {
    expect(message(parseMass('x'.repeat(41)))).toContain(`“${'x'.repeat(40)}…”`);
    expect(message(parseMass('x'.repeat(40)))).toContain(`“${'x'.repeat(40)}”`);
  });
});

describe('forces', () => {
  it.each([
    ['90gf', 0.8825985],
    ['90 g', 0.8825985],
    ['0.9N', 0.9],
    ['0.9 n', 0.9],
    ['50 mN', 0.05],
    ['0.09 kgf', 0.8825985],
    ['3.2ozf', 0.88964432],
    ['3.2 oz', 0.88964432],
    ['1 lbf', 4.44822162],
    ['−0.2 N', -0.2],
  ])('%s', (text, newtons) => {
    expect(value(parseForce(text))).toBeCloseTo(newtons, 8);
  });

  it('says that grams were taken as a weight', () => {
    expect(parseForce('90 g')).toMatchObject({ read: '90 gf (0.883\u2009N)' });
  });

  it('takes a bare number only where the field says its unit', () => {
    expect(message(parseForce('90'))).toContain('90 has no unit');
    expect(value(parseForce('90', { unit: 'gf' }))).toBeCloseTo(0.8825985, 12);
  });

  it('does not take meganewtons for millinewtons', () => {
    expect(message(parseForce('5 MN'))).toContain('MN is not a unit');
  });

  it('are shown', () => {
    expect(formatForce(0.8825985)).toBe('0.883\u2009N');
    expect(formatForce(0.8825985, { unit: 'gf' })).toBe('90\u2009gf');
    expect(formatForce(-0.8825985, { unit: 'ozf' })).toBe('−3.17\u2009ozf');
    expect(formatForce(0.5, { signed: true, digits: 1 })).toBe('+0.5\u2009N');
  });
});

describe('angles', () => {
  it.each([
    ['180°', Math.PI],
    ['180', Math.PI],
    ['180 deg', Math.PI],
    ['1/2 turn', Math.PI],
    ['1 1/2 turns', 3 * Math.PI],
    ['−90°', -Math.PI / 2],
    ['0.39 rad', 0.39],
  ])('%s', (text, radians) => {
    expect(value(parseAngle(text))).toBeCloseTo(radians, 14);
  });

  it('takes a bare number in the unit of the field', () => {
    expect(value(parseAngle('2', { unit: 'turn' }))).toBeCloseTo(4 * Math.PI, 14);
    expect(parseAngle('1 turn')).toMatchObject({ read: '1 turn (360°)' });
  });

  it('are shown', () => {
    expect(formatAngle(Math.PI / 8)).toBe('22.5°');
    expect(formatAngle(3 * Math.PI, { unit: 'turn' })).toBe('1.5\u2009turns');
    expect(formatAngle(2 * Math.PI, { unit: 'turn' })).toBe('1\u2009turn');
    expect(formatAngle(-2 * Math.PI, { unit: 'turn' })).toBe('−1\u2009turn');
    expect(formatAngle(-1, { unit: 'radian' })).toBe('−1\u2009rad');
  });
});

describe('speeds', () => {
  it.each([
    ['0.2 m/s', 0.2],
    ['0.2m / s', 0.2],
    ['200mm/s', 0.2],
    ['20 cm/s', 0.2],
    ['8 in/s', 0.2032],
  ])('%s is the model’s own', (text, speed) => {
    expect(value(parseSpeed(text))).toBeCloseTo(speed, 14);
    expect(value(parseSpeed(text, { scale: 87 }))).toBeCloseTo(speed, 14);
  });

  it('takes km/h and mph as scale speeds', () => {
    // 62.64 km/h is 17.4 m/s, and 17.4 / 87 = 0.2.
    for (const text of ['62.64 km/h', '62,64 kph', 'scale 62.64 km/h', '62.64 scale km/h']) {
      expect(value(parseSpeed(text, { scale: 87 }))).toBeCloseTo(0.2, 14);
    }
    // 1 mph is 0.44704 m/s by definition.
    expect(value(parseSpeed('76 mph', { scale: 76 }))).toBeCloseTo(0.44704, 14);
  });

  it('says at which scale they were taken', () => {
    expect(parseSpeed('62.64 km/h', { scale: 87 })).toMatchObject({ read: 'scale 62.64 km/h at 1:87 (200\u2009mm/s)' });
    expect(parseSpeed('0.2 m/s', { scale: 87 })).toMatchObject({ read: '0.2 m/s (62.6\u2009km/h)' });
    expect(parseSpeed('200 mm/s')).toMatchObject({ read: '200 mm/s (0.2\u2009m/s)' });
  });

  it('refuses a scale speed where no scale is known, and what has no unit', () => {
    expect(message(parseSpeed('60 km/h'))).toContain('need a scale');
    expect(message(parseSpeed('2 furlongs'))).toContain('furlongs is not a unit');
    expect(message(parseSpeed('60', { scale: 87 }))).toContain('60 has no unit');
    expect(message(parseSpeed('scale 2 m/s', { scale: 87 }))).toContain('m/s is not a unit');
    expect(value(parseSpeed('0.2', { unit: 'm/s' }))).toBe(0.2);
  });

  it('are shown', () => {
    expect(formatSpeed(0.2)).toBe('0.2\u2009m/s');
    expect(formatSpeed(0.2, { unit: 'mm/s' })).toBe('200\u2009mm/s');
    expect(formatSpeed(0.2, { unit: 'km/h', scale: 87 })).toBe('62.6\u2009km/h');
    expect(formatSpeed(0.2, { unit: 'km/h' })).toBe('–');
  });
});

describe('the other forms of a value', () => {
  it('leave out the form that the field shows', () => {
    expect(otherForms(0.6477, 'length', { shown: 'mm' })).toEqual(['25 1/2″', '2′ 1 1/2″']);
    expect(otherForms(1 / 42, 'grade', { shown: 'one-in' })).toEqual(['2.38\u2009%', '23.8\u2009‰', '1.36°']);
    expect(otherForms(0.15, 'mass', { shown: 'g' })).toEqual(['5.29\u2009oz']);
    expect(otherForms(0.8825985, 'force', { shown: 'gf' })).toEqual(['0.883\u2009N', '3.17\u2009ozf']);
    expect(otherForms(Math.PI, 'angle', { shown: 'degree' })).toEqual(['0.5\u2009turns', '3.1416\u2009rad']);
    expect(otherForms(0.2, 'speed', { shown: 'm/s' })).toEqual(['200\u2009mm/s']);
    expect(otherForms(0.2, 'speed', { shown: 'mm/s', scale: 87 })).toEqual([
      '0.2\u2009m/s',
      '62.6\u2009km/h',
      '38.9\u2009mph',
    ]);
  });

  it('name the same text once', () => {
    expect(otherForms(0.1016, 'length', { shown: 'mm' })).toEqual(['4″']);
    expect(otherForms(Number.NaN, 'length')).toEqual([]);
  });
});

describe('all kinds together', () => {
  it('read back what they show to within half the last place', () => {
    const round: Record<string, readonly [(x: number) => string, (text: string) => Reading, half: number]> = {
      g: [(x) => formatMass(Math.abs(x), { digits: 3 }), parseMass, 0.5e-6],
      oz: [(x) => formatMass(Math.abs(x), { unit: 'oz', digits: 3 }), parseMass, 0.5e-3 * 0.028349523125],
      N: [(x) => formatForce(x, { digits: 3 }), parseForce, 0.5e-3],
      gf: [(x) => formatForce(x, { unit: 'gf', digits: 3 }), parseForce, 0.5e-6 * 9.80665],
      turn: [(x) => formatAngle(x, { unit: 'turn', digits: 3 }), parseAngle, 0.5e-3 * 2 * Math.PI],
      kmh: [
        (x) => formatSpeed(x, { unit: 'km/h', scale: 87, digits: 3 }),
        (text) => parseSpeed(text, { scale: 87 }),
        0.5e-3 / 3.6 / 87,
      ],
    };
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(round)), fc.double({ min: -9, max: 9, noNaN: true }), (name, x) => {
        const [write, read, half] = round[name]!;
        const back = value(read(write(x)));
        const meant = name === 'g' || name === 'oz' ? Math.abs(x) : x;
        expect(Math.abs(back - meant)).toBeLessThanOrEqual(half * (1 + 1e-9));
      }),
      { numRuns: 500 },
    );
    expect(value(parseMass(formatMass(0.123)))).toBe(0.123);
  });

  it('never throw and never give a number that is not finite', () => {
    const parsers: Record<Exclude<QuantityKind, 'length' | 'grade'>, (text: string) => Reading> = {
      mass: parseMass,
      force: parseForce,
      angle: parseAngle,
      speed: (text) => parseSpeed(text, { scale: 87 }),
    };
    const pieces = [
      '1',
      '42',
      '0',
      '/',
      ' ',
      'g',
      'kg',
      'N',
      'lb',
      'oz',
      '°',
      'm/s',
      'km/h',
      'scale ',
      '.',
      ',',
      '-',
      '½',
      'turn',
    ];
    const typed = fc.oneof(
      fc.string({ maxLength: 100, unit: 'binary' }),
      fc.array(fc.constantFrom(...pieces), { maxLength: 8 }).map((some) => some.join('')),
    );
    fc.assert(
      fc.property(typed, (text) => {
        for (const parse of Object.values(parsers)) {
          const reading = parse(text);
          if (reading.ok) expect(Number.isFinite(reading.value)).toBe(true);
          else expect(reading.message).toContain('Write a');
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('write numbers with a true minus and no minus zero', () => {
    expect(formatNumber(-1.25, { digits: 2 })).toBe('−1.25');
    expect(formatNumber(-0.001, { digits: 2 })).toBe('0.00');
    expect(formatNumber(100, { digits: 0, trim: true })).toBe('100');
    expect(formatNumber(1.5, { digits: 3, trim: true, signed: true })).toBe('+1.5');
    expect(formatNumber(Number.NEGATIVE_INFINITY, { digits: 1 })).toBe('–');
  });
});
