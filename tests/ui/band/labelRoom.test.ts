import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Box, LabelRoom } from '../../../src/ui/band/labelRoom.ts';

describe('room for lettering', () => {
  test('is given once', () => {
    const room = new LabelRoom({ left: 0, right: 100, top: 0, bottom: 20 });
    expect(room.take({ left: 10, right: 30, top: 0, bottom: 10 })).toBe(true);
    expect(room.take({ left: 29, right: 40, top: 5, bottom: 15 })).toBe(false);
    expect(room.take({ left: 30, right: 40, top: 0, bottom: 10 })).toBe(true);
    expect(room.take({ left: 95, right: 105, top: 0, bottom: 10 })).toBe(false);
    room.block({ left: -5, right: 200, top: 15, bottom: 16 });
    expect(room.take({ left: 60, right: 70, top: 10, bottom: 18 })).toBe(false);
  });

  test('no two labels ever lie on each other', () => {
    const box = fc
      .tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 15 }))
      .map(([left, width, top]): Box => ({ left, right: left + width, top, bottom: top + 6 }));
    fc.assert(
      fc.property(fc.array(box, { maxLength: 30 }), (boxes) => {
        const room = new LabelRoom({ left: 0, right: 100, top: 0, bottom: 20 });
        const taken = boxes.filter((one) => room.take(one));
        for (const [k, a] of taken.entries()) {
          for (const b of taken.slice(k + 1)) {
            const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
            const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
            expect(Math.min(across, down)).toBeLessThanOrEqual(0);
          }
        }
      }),
    );
  });
});
