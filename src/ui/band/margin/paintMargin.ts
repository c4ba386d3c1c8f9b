import type { PaintMode } from '../frame/bandFrame.ts';
import { type Stretch, stretchesOf, widenStretches } from '../frame/columns.ts';

/** A stretch below zero must be seen from across the room: CSS px. */
const LEAST_FAILING = 6;

export interface MarginPainting {
  /** Least margin by device column, NaN where there is nothing to say. */
  readonly margin: Float64Array;
  readonly colour: (margin: number) => string;
  /** Share of plenty that is left, 0..1, for the height of a bar in one colour. */
  readonly left: (margin: number) => number;
  readonly density: number;
  /** Top and height of the strip in the row, CSS px. */
  readonly top: number;
  readonly height: number;
  readonly mode: PaintMode;
  readonly ink: string;
  readonly mark: string;
}

/** The stretches below zero in device columns, at least 6 CSS px wide each. */
export function failingStretches(margin: Float64Array, density: number): Stretch[] {
  return widenStretches(
    stretchesOf(margin.length, (c) => margin[c] < 0),
    Math.round(LEAST_FAILING * density),
    margin.length,
  );
}

/** Paints one margin row in device pixels: pencil by how much is left, flat marking colour below zero. */
export function paintMargin(context: CanvasRenderingContext2D, task: MarginPainting): void {
  const { margin, colour, left, density, mode, ink, mark } = task;
  const top = Math.round(task.top * density);
  const height = Math.round(task.height * density);
  for (let c = 0; c < margin.length; ) {
    const here = margin[c];
    if (!(here >= 0)) {
      c++;
      continue;
    }
    const first = c;
    if (mode === 'pattern') {
      context.fillStyle = ink;
      // Little left is a tall bar: what needs looking at carries the ink.
      const bar = Math.round((1 - left(here)) * height);
      context.fillRect(c, top + height - bar, 1, bar);
      c++;
      continue;
    }
    const fill = colour(here);
    while (c < margin.length && margin[c] >= 0 && colour(margin[c]) === fill) c++;
    context.fillStyle = fill;
    context.fillRect(first, top, c - first, height);
  }
  context.fillStyle = mark;
  for (const { first, last } of failingStretches(margin, density))
    context.fillRect(first, top, last - first + 1, height);
}
