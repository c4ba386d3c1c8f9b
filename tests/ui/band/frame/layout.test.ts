import { describe, expect, test } from 'vitest';
import { namedJoints } from '../../../../src/ui/band/carpet/CarpetGutter.tsx';
import { carpetLayout, layoutOf, scrollFor } from '../../../../src/ui/band/frame/layout.ts';

describe('measures', () => {
  test('gutter and right column on a desk and on a tablet', () => {
    expect(layoutOf(1280, false, 1)).toMatchObject({
      gutter: 248,
      body: 864,
      right: 168,
      transport: 39,
      marginRow: 16,
    });
    expect(layoutOf(1024, true, 2)).toMatchObject({ gutter: 196, body: 696, right: 132, transport: 49, marginRow: 18 });
    // WCAG 2.2, success criterion 2.5.8: 24 px each way under a finger.
    expect(layoutOf(1024, true, 2, true)).toMatchObject({ marginRow: 24, coarse: true });
  });

  test('a carpet keeps its pitch up to eight joints, then closes up, then scrolls', () => {
    expect(carpetLayout(8)).toEqual({ pitch: 11, height: 94, full: 94 });
    expect(carpetLayout(3)).toEqual({ pitch: 11, height: 39, full: 39 });
    expect(carpetLayout(12).pitch).toBe(7);
    expect(carpetLayout(17)).toEqual({ pitch: 5, height: 91, full: 91 });
    expect(carpetLayout(40)).toEqual({ pitch: 5, height: 94, full: 206 });
  });

  test('the chosen joint is kept in sight with a neighbour on either side', () => {
    const carpet = carpetLayout(40);
    for (const now of [0, 50, 112]) {
      for (let joint = 0; joint < 40; joint++) {
        const scroll = scrollFor(joint, carpet, now);
        expect(scroll).toBeGreaterThanOrEqual(0);
        expect(scroll).toBeLessThanOrEqual(112);
        expect(3 + Math.max(0, joint - 1) * 5).toBeGreaterThanOrEqual(scroll - 3);
        expect(3 + (Math.min(39, joint + 1) + 1) * 5).toBeLessThanOrEqual(scroll + 94);
      }
    }
    // In sight already: it stays.
    expect(scrollFor(14, carpet, 50)).toBe(50);
  });

  test('joints are named where 11 px allow, the chosen one always', () => {
    expect(namedJoints(8, 11, 5)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(namedJoints(9, 5, null)).toEqual([0, 3, 6]);
    // 24 px for a finger: every third at 11 px.
    expect(namedJoints(8, 11, null, 24)).toEqual([0, 3, 6]);
    expect(namedJoints(9, 5, 4)).toEqual([0, 4]);
    expect(namedJoints(12, 7, 3)).toEqual([0, 3, 6, 8, 10]);
  });
});
