import { describe, expect, it } from 'vitest';
import { readSetting } from '../../../src/ui/panel/trial/readSetting.ts';

describe('a speed setting as typed', () => {
  it.each([
    ['45', 0.45],
    ['45 %', 0.45],
    ['12,5%', 0.125],
    ['100 per cent', 1],
    ['0.3 m/s', 0.5],
    ['300 mm/s', 0.5],
  ])('reads %s', (text, share) => {
    const reading = readSetting(text, 0.6, undefined);
    expect(reading).toMatchObject({ ok: true });
    expect(reading.ok && reading.value).toBeCloseTo(share, 12);
  });

  it('takes a scale speed where the scale is known, and says why not where it is not', () => {
    // 76.2 km/h at 1:76.2 is 1 km/h, 1/3.6 m/s.
    const reading = readSetting('76.2 km/h', 1, 76.2);
    expect(reading.ok && reading.value).toBeCloseTo(1 / 3.6, 12);
    expect(readSetting('76.2 km/h', 1, undefined).ok).toBe(false);
  });

  it.each(['', 'fast', '0', '140 %', '5 m/s', '-20'])('refuses %j with an example', (text) => {
    const reading = readSetting(text, 0.6, 76.2);
    expect(reading).toMatchObject({ ok: false });
    expect(!reading.ok && reading.message).toMatch(/%/);
  });
});
