import { describe, expect, it } from 'vitest';
import { inkGeometry } from '../../../src/stage/ink/ink.ts';
import { emptyStrokes, line } from '../../../src/stage/ink/strokes.ts';
import { lensPalettes, lensWayFaces, stockPalettes, wayFaces } from '../../../src/stage/palette.ts';
import { paletteSize } from '../../../src/stage/solid/matt.ts';
import { themed } from '../../../src/stage/theme.ts';

describe('inkGeometry', () => {
  it('gives every stroke four corners and two triangles, all carrying the whole stroke', () => {
    const strokes = emptyStrokes();
    line(strokes, [0, 0, 0], [1, 2, 2], 1.2, 3, 0.001, 5);
    line(strokes, [1, 1, 1], [1, 1, 2], 0.7, 0);
    const geometry = inkGeometry(strokes);
    expect(geometry.getAttribute('from').count).toBe(8);
    expect(geometry.getIndex()?.count).toBe(12);
    for (let corner = 0; corner < 4; corner++) {
      expect([...geometry.getAttribute('to').array].slice(3 * corner, 3 * corner + 3)).toEqual([1, 2, 2]);
      // A stroke's run goes on from where its line began by its own length of 3 m.
      expect([...geometry.getAttribute('run').array].slice(2 * corner, 2 * corner + 2)).toEqual([5, 8]);
    }
    geometry.dispose();
  });

  it('has bounds around both ends', () => {
    const strokes = emptyStrokes();
    line(strokes, [-1, 0, 0], [3, 0, 0], 1, 0);
    const { boundingSphere } = inkGeometry(strokes);
    expect(boundingSphere?.center.x).toBe(1);
    expect(boundingSphere?.radius).toBe(2);
  });
});

describe('palettes', () => {
  it('fit the shader, and the lens has a colour for every face', () => {
    for (const dress of ['vehicle', 'engine', 'chosen'] as const) {
      expect(stockPalettes[dress].faces.length).toBeLessThanOrEqual(paletteSize);
      expect(lensPalettes[dress].faces).toHaveLength(stockPalettes[dress].faces.length);
    }
    expect(wayFaces.length).toBeLessThanOrEqual(paletteSize);
    expect(lensWayFaces).toHaveLength(wayFaces.length);
  });

  it('reach the screen as they are written, not as light', () => {
    const { r, g, b } = themed('#6A28C0', 'ink');
    expect([r, g, b].map((part) => Math.round(part * 255))).toEqual([0x6a, 0x28, 0xc0]);
  });
});
