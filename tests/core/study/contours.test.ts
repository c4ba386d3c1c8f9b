import { describe, expect, it } from 'vitest';
import { type Area, contoursOf, joinedLines, mapArea, type Piece, type Place } from '../../../src/core/study/index.ts';

/** Twice the area that pieces go round, what is inside to their left (shoelace formula). */
const area = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, [[a, b], [c, d]]) => sum + (a * d - c * b) / 2, 0);

const bits = (place: Place): string => place.join();

/** Every place that a piece begins at is the end of exactly one other. */
function closes(pieces: readonly Piece[]): boolean {
  const starts = pieces.map(([from]) => bits(from)).sort();
  const ends = pieces.map(([, to]) => bits(to)).sort();
  return starts.join('|') === ends.join('|');
}

const mapped = (inside: (x: number, y: number) => boolean, points = 17, refine = 12): Promise<Area<boolean>> =>
  mapArea(
    { across: { from: 0, to: 8, points }, up: { from: 0, to: 8, points }, refine },
    async (x, y) => inside(x, y),
    (good) => good,
  );

describe('the outline of what passes', () => {
  it('goes round a circle inside the range by itself, with nothing at the edge', async () => {
    const { outline, brink } = await mapped((x, y) => Math.hypot(x - 4, y - 4) <= 2.5);
    expect(brink).toEqual([]);
    expect(closes(outline)).toBe(true);
    // A polygon with its corners on a circle of radius R, none further apart than a cell's diagonal d, has between πR²(1 - d²/6R²) and πR²: sin t / t ≥ 1 - t²/6.
    const [full, diagonal] = [Math.PI * 2.5 ** 2, Math.hypot(0.5, 0.5)];
    expect(area(outline)).toBeLessThan(full + 1e-3);
    expect(area(outline)).toBeGreaterThan(full * (1 - diagonal ** 2 / (6 * 2.5 ** 2)));
    const [line, ...others] = joinedLines(outline);
    expect(others).toEqual([]);
    expect(line[0]).toEqual(line.at(-1));
  });

  it('is closed along the edge of the range where the region goes on beyond it: half a circle, a quarter, and a strip', async () => {
    const whole = async (inside: (x: number, y: number) => boolean) => {
      const { outline, brink } = await mapped(inside);
      expect(brink.length).toBeGreaterThan(0);
      expect(closes(outline)).toBe(false);
      expect(closes([...outline, ...brink])).toBe(true);
      // The edge is the edge of the range, and the border found touches it at its ends alone.
      const onEdge = ([x, y]: Place) => x === 0 || x === 8 || y === 0 || y === 8;
      expect(brink.flat().every(onEdge)).toBe(true);
      return area([...outline, ...brink]);
    };
    for (const [radius, share, inside] of [
      [3, 1 / 2, (x: number, y: number) => Math.hypot(x, y - 4) <= 3],
      [4, 1 / 4, (x: number, y: number) => Math.hypot(x - 8, y - 8) <= 4],
    ] as const) {
      const [found, full] = [await whole(inside), Math.PI * radius ** 2 * share];
      expect(found).toBeLessThan(full + 1e-3);
      expect(found).toBeGreaterThan(full * (1 - 0.5 / (6 * radius ** 2)));
    }
    // Straight borders are exact but for the halving: 2^-12 of half a unit.
    expect(await whole((x) => x >= 2.2 && x <= 5.9)).toBeCloseTo(3.7 * 8, 2);
    expect(await whole((x, y) => x + y <= 7)).toBeCloseTo(24.5, 2);
  });

  it('is the border of the range alone where everything passes, and nothing where nothing does', async () => {
    const all = await mapped(() => true, 5, 0);
    expect(all.outline).toEqual([]);
    expect(closes(all.brink)).toBe(true);
    expect(area(all.brink)).toBe(64);
    const none = await mapped(() => false, 5, 0);
    expect([none.outline, none.brink]).toEqual([[], []]);
  });

  it('keeps two corners of a saddle apart, each closed for itself', async () => {
    const { outline, brink } = await mapped((x, y) => x < 4 === y < 4, 2, 10);
    expect(closes([...outline, ...brink])).toBe(true);
    expect(joinedLines([...outline, ...brink])).toHaveLength(2);
    // Two triangles with legs of half the range.
    expect(area([...outline, ...brink])).toBeCloseTo(16, 1);
  });

  it('closes whatever the grid shows, chance included', async () => {
    let state = 7;
    const flip = () => {
      state = (state * 48271) % 2147483647;
      return state % 2 === 0;
    };
    for (let round = 0; round < 20; round++) {
      const known = new Map<string, boolean>();
      const inside = (x: number, y: number) => {
        const key = `${x} ${y}`;
        known.set(key, known.get(key) ?? flip());
        return known.get(key) === true;
      };
      const { outline, brink } = await mapped(inside, 9, 1);
      expect(closes([...outline, ...brink])).toBe(true);
    }
  });
});

describe('lines of a level', () => {
  const grid = Array.from({ length: 33 }, (_, k) => k / 4 - 4);
  const over = (of: (x: number, y: number) => number) => grid.flatMap((y) => grid.map((x) => of(x, y)));

  it('of a plane are straight, to rounding', () => {
    const lines = contoursOf(
      grid,
      grid,
      over((x, y) => 2 * x - y + 0.3),
      1,
    );
    expect(lines).toHaveLength(1);
    for (const [x, y] of lines[0]) expect(2 * x - y + 0.3).toBeCloseTo(1, 12);
  });

  it('of a cone are circles, and close', () => {
    const lines = contoursOf(
      grid,
      grid,
      over((x, y) => -Math.hypot(x, y)),
      -2.6,
    );
    expect(lines).toHaveLength(1);
    expect(lines[0][0]).toEqual(lines[0].at(-1));
    // Straight interpolation on a side of length h departs from the root of a function of curvature 1/r by h²/8r at most.
    for (const [x, y] of lines[0]) expect(Math.abs(Math.hypot(x, y) - 2.6)).toBeLessThan(0.25 ** 2 / (8 * 2.6) + 1e-9);
    // More inside, so counterclockwise.
    const turns = lines[0].slice(1).reduce((sum, [x, y], k) => sum + (lines[0][k][0] * y - x * lines[0][k][1]) / 2, 0);
    expect(turns).toBeGreaterThan(0.99 * Math.PI * 2.6 ** 2);
  });

  it('of two hills are two at a high level and one at a low one; the saddle between them decides by its mean', () => {
    const hills = over((x, y) => Math.exp(-((x - 1.6) ** 2) - y * y) + Math.exp(-((x + 1.6) ** 2) - y * y));
    expect(contoursOf(grid, grid, hills, 0.6)).toHaveLength(2);
    expect(contoursOf(grid, grid, hills, 0.1)).toHaveLength(1);
    const saddle = [1, 0, 0, 1];
    expect(contoursOf([0, 1], [0, 1], saddle, 0.4)).toEqual([
      [
        [0.6, 0],
        [1, 0.4],
      ],
      [
        [0.4, 1],
        [0, 0.6],
      ],
    ]);
    expect(contoursOf([0, 1], [0, 1], saddle, 0.6)).toHaveLength(2);
  });

  it('end where a value is not known', () => {
    const values = over((x) => x).map((value, k) => (k === 16 * 33 + 16 ? null : value));
    expect(contoursOf(grid, grid, values, 0.1)).toHaveLength(2);
  });
});
