import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wordsPlace } from '../../../src/stage/handles/wordsPlace.ts';

const stage = { width: 800, height: 500 };
const size = { width: 200, height: 50 };
const title = { left: 10, top: 7, width: 260, height: 42 };

describe('the words at the hand', () => {
  it('stand to its right, or to its left near the edge', () => {
    expect(wordsPlace({ x: 300, y: 300 }, size, stage, [])).toMatchObject({ left: 322, top: 266 });
    expect(wordsPlace({ x: 700, y: 300 }, size, stage, [])).toMatchObject({ left: 478, top: 266 });
  });

  it('leave the title free and stay on the stage, wherever the hand is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 500 }), (x, y) => {
        const { left, top } = wordsPlace({ x, y }, size, stage, [title]);
        const free = left >= 270 || top >= 49 || left + 200 <= 10;
        return free && left >= 0 && top >= 0 && left + 200 <= 800 && top + 50 <= 500;
      }),
    );
  });
});
