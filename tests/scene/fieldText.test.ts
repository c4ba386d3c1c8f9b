import { describe, expect, it } from 'vitest';
import { fieldName, fieldUnit, readField } from '../../src/scene/index.ts';

describe('readField', () => {
  it('takes plain numbers in the unit of the field, and what builders say', () => {
    expect(readField('a/lengthMm', '450')).toEqual({ ok: true, value: 450 });
    expect(readField('a/lengthMm', '18in')).toEqual({ ok: true, value: 457.2 });
    expect(readField('a/gradePercent', '1 in 40')).toEqual({ ok: true, value: 2.5 });
    expect(readField('a/massG', '5oz')).toMatchObject({ ok: true });
    expect(readField('a/turns', '3.5')).toEqual({ ok: true, value: 3.5 });
    expect(readField('a/turns', 'three')).toMatchObject({ ok: false });
    expect(readField('a/lengthMm', '')).toMatchObject({ ok: false });
  });
});

describe('fieldUnit and fieldName', () => {
  it.each([
    ['t/verticalCurveLengthMm', 'vertical curve length', 'mm'],
    ['t/radiusMm', 'radius', 'mm'],
    ['t/off/38/byMm', 'off by', 'mm'],
    ['t/gradePercent', 'grade', '%'],
    ['s/rollingPercentPerMPerS', 'rolling', '% per m/s'],
    ['s/massG', 'mass', 'g'],
    ['v/2/count', 'how many', ''],
    ['s/drive/stallForceN', 'stall force', 'N'],
    ['s/drive/adhesion', 'adhesion', ''],
    ['a/turns', 'turns', ''],
    ['s/freeSpeedMmPerS', 'free speed', 'mm/s'],
  ])('%s is the %s in %s', (at, name, unit) => {
    expect(fieldName(at)).toBe(name);
    expect(fieldUnit(at)).toBe(unit);
  });
});
