import { describe, expect, it } from 'vitest';
import { emptySolid } from '../../../src/stage/solid/solid.ts';
import { drawPost } from '../../../src/stage/supports/postSolid.ts';
import { posts } from '../../../src/stage/supports/posts.ts';
import { tableTops } from '../../../src/stage/table/tableTop.ts';
import { stripUnderside } from '../../../src/stage/way/measures.ts';
import { bounds, fallingHelix, measures, vertices } from '../samples.ts';

const helix = fallingHelix();
const tables = tableTops([helix], measures, []);

describe('posts', () => {
  const list = posts([helix], tables, measures);

  it('are one a support, in order, with its departure', () => {
    expect(list.map((post) => post.index)).toEqual(helix.supports.map((_, i) => i));
    expect(list[5].departure).toBe(0.0025);
  });

  it('stand on the table, outside the strip, on both sides', () => {
    for (const post of list) {
      expect(post.rods.map((rod) => rod.side)).toEqual([1, -1]);
      for (const rod of post.rods) {
        expect(rod.foot).toBe(tables[0].top);
        expect(rod.head).toBeGreaterThan(post.centre[2] - stripUnderside(measures));
        const away = Math.hypot(rod.x - post.centre[0], rod.y - post.centre[1]);
        expect(away).toBeGreaterThan(measures.stripWidth / 2);
      }
    }
  });

  it('stand on another strip rather than pierce it', () => {
    // The same helix again, moved so that its strip runs where the first one's outer rods come down.
    const crossing = { ...fallingHelix(0.05), id: 'crossing' };
    const both = posts([helix, crossing], tableTops([helix, crossing], measures, []), measures);
    const lifted = both.filter((post) => post.trackId === 'helix').flatMap((post) => post.rods);
    expect(lifted.some((rod) => rod.foot > tables[0].top + 0.02)).toBe(true);
  });
});

describe('a track whose file gives no supports', () => {
  it('stands on plain rods that nothing can name', () => {
    const bare = { ...helix, supports: [] };
    const list = posts([bare], tables, measures);
    expect(list.length).toBeGreaterThan(10);
    expect(list.every((post) => post.index === null)).toBe(true);
    const bearers = emptySolid();
    const hangers = emptySolid();
    drawPost(bearers, hangers, list[0], measures);
    expect(bearers.position).toHaveLength(0);
    expect(hangers.strokes.from.length / 3).toBe(2);
  });
});

describe('drawPost', () => {
  it('hangs the bearer right under the strip', () => {
    const bearers = emptySolid();
    const hangers = emptySolid();
    const post = posts([helix], tables, measures)[3];
    drawPost(bearers, hangers, post, measures);
    const { high } = bounds(vertices(bearers));
    expect(high[2]).toBeCloseTo(post.centre[2] - stripUnderside(measures), 12);
    expect(hangers.strokes.from.length / 3).toBe(2);
  });
});
