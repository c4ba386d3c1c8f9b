import { describe, expect, it } from 'vitest';
import {
  formatGrade,
  kilogramsPerPound,
  metresPerInch,
  metresPerMile,
  parseForce,
  parseGrade,
  parseLength,
  parseMass,
  type Reading,
  standardGravity,
} from '../../src/core/units/index.ts';

const value = (reading: Reading) => {
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

describe('units against their definitions', () => {
  // NIST Special Publication 811 (2008), appendix B.8: exact factors of the international inch, foot, mile and pound.
  it('has the international inch, foot, mile and pound', () => {
    expect(metresPerInch).toBe(0.0254);
    expect(value(parseLength('1 ft'))).toBe(0.3048);
    expect(metresPerMile).toBe(1609.344);
    expect(kilogramsPerPound).toBe(0.45359237);
  });

  // NIST SP 811 (2008), B.8: ounce (avoirdupois) 2.834952 E-02 kg, ounce-force 2.780139 E-01 N, pound-force 4.448222 N,
  // kilogram-force 9.80665 N exactly. Seven figures are printed.
  it('has the ounce, ounce-force, pound-force and gram-force', () => {
    expect(value(parseMass('1 oz'))).toBeCloseTo(0.02834952, 8);
    expect(value(parseForce('1 ozf'))).toBeCloseTo(0.2780139, 7);
    expect(value(parseForce('1 lbf'))).toBeCloseTo(4.448222, 6);
    expect(value(parseForce('1000 gf'))).toBeCloseTo(9.80665, 12);
    expect(standardGravity).toBe(9.80665);
  });
});

describe('grades against the table of gradients', () => {
  // per cent = 100 / N = 100 tan(angle), worked by hand to three places of a degree.
  it.each([
    [25, 4, 2.291],
    [30, 3.333, 1.909],
    [40, 2.5, 1.432],
    [50, 2, 1.146],
    [100, 1, 0.573],
  ])('1 in %d is %d %% and %d°', (n, percent, degrees) => {
    const grade = value(parseGrade(`1 in ${n}`));
    expect(grade * 100).toBeCloseTo(percent, 3);
    expect(formatGrade(grade, { form: 'degree', digits: 3 })).toBe(`${degrees.toFixed(3)}°`);
    // Half of the last place of the angle is 0.0005° = 8.7e-6 of grade.
    expect(Math.abs(value(parseGrade(`${degrees}°`)) - grade)).toBeLessThan(8.8e-6);
  });

  // A rise of 4 for every 100 along the rail is 4.0032 for every 100 in plan: a grade here is taken in plan.
  it('takes a grade over the plan distance, not along the rail', () => {
    const alongRail = Math.asin(0.04) * (180 / Math.PI);
    expect(value(parseGrade(`${alongRail.toFixed(9)}°`)) * 100).toBeCloseTo(4.0032, 4);
    expect(value(parseGrade('4 mm in 100 mm')) * 100).toBeCloseTo(4, 12);
  });

  // The slip most made with a digital level: 2° is 3.49 %, which is tan 2° from any table of tangents (0.03492).
  it('does not take 2 % for 2°', () => {
    expect(value(parseGrade('2°'))).toBeCloseTo(0.03492, 5);
    expect(value(parseGrade('2 %'))).toBe(0.02);
  });

  // Common practice, no source: a spirit level with half an inch of packing under 24 in stands level on a 2.083 % grade.
  it('takes packing under a level as a grade', () => {
    expect(value(parseGrade('1/2" in 24"')) * 100).toBeCloseTo(2.083, 3);
  });

  // Common practice, no source: an eighth of an inch in a foot is about 1 %.
  it('takes a plumber’s fall as a grade', () => {
    expect(value(parseGrade('1/8" per ft')) * 100).toBeCloseTo(1.04, 2);
  });
});
