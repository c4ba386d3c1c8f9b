import { describe, expect, it } from 'vitest';
import { pickPost } from '../../../src/stage/supports/pickPost.ts';
import type { Post } from '../../../src/stage/supports/posts.ts';

/** A post with one rod, upright at (x, 0) from the table to its head. */
const post = (index: number | null, x: number): Post => ({
  trackId: 'line',
  index,
  chainage: x,
  departure: 0,
  centre: [x, 0, 0.1],
  left: [0, 1],
  rods: [{ x, y: 0, foot: 0, head: 0.1, side: 1 }],
});

/** Seen from the side at 1000 px a metre. */
const fromTheSide = ([x, , z]: readonly number[]) => ({ x: 1000 * x, y: 500 - 1000 * z });

describe('the support that a hand points at', () => {
  const posts = [post(0, 0.1), post(1, 0.2), post(null, 0.3)];
  const at = (x: number, y: number, reach = 12) => pickPost(posts, { x, y }, reach, fromTheSide);

  it('is the nearest by its rods, all the way down to the table', () => {
    expect(at(105, 450)).toEqual({ trackId: 'line', index: 0 });
    expect(at(195, 498)).toEqual({ trackId: 'line', index: 1 });
    expect(at(150, 450)).toBeNull();
    expect(at(178, 450, 24)).toEqual({ trackId: 'line', index: 1 });
  });

  it('is none that the file does not have, and none out of sight', () => {
    expect(at(300, 450)).toBeNull();
    expect(pickPost(posts, { x: 100, y: 450 }, 12, () => null)).toBeNull();
  });
});
