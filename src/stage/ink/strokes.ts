import type { Vec3 } from '../../core/math/vec3.ts';

/**
 * Straight strokes being put together, one row each: ends in metres; style is least width in screen pixels, width in
 * metres (the wider of the two is drawn) and the role of the ink; run is the distance along its line at both ends, for dashes.
 */
export interface Strokes {
  readonly from: number[];
  readonly to: number[];
  readonly style: number[];
  readonly run: number[];
}

export const emptyStrokes = (): Strokes => ({ from: [], to: [], style: [], run: [] });

export const strokeCount = (strokes: Strokes): number => strokes.from.length / 3;

/** Adds one stroke of `weight` screen pixels, or `width` metres where that is more. */
export function line(strokes: Strokes, a: Vec3, b: Vec3, weight: number, role: number, width = 0, run = 0): void {
  strokes.from.push(...a);
  strokes.to.push(...b);
  strokes.style.push(weight, width, role);
  strokes.run.push(run, run + Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]));
}
