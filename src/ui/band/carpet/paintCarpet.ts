import type { PaintMode } from '../frame/bandFrame.ts';
import { stretchesOf } from '../frame/columns.ts';
import { CARPET_MARGIN, type CarpetLayout } from '../frame/layout.ts';
import { type ForceColours, forceShade, type Inks } from './colourScales.ts';
import { patternsOf } from './patterns.ts';

export interface CarpetPainting {
  /** One array a joint: strongest force by device column, NaN where it never was. */
  readonly columns: readonly Float64Array[];
  readonly carpet: CarpetLayout;
  readonly density: number;
  readonly colours: ForceColours;
  readonly inks: Inks;
  readonly mode: PaintMode;
  /** For patterns and glyphs. */
  readonly ink: string;
}

/** The thread keeps this far from the ends of its slack stretch, CSS px, and shorter stretches go without. */
const THREAD_INSET = 1.5;
/** Glyphs need this much of one sign and more than half scale, CSS px. */
const GLYPH_ROOM = 9;

/** Paints the force carpet, all joints, in device pixels. */
export function paintCarpet(context: CanvasRenderingContext2D, task: CarpetPainting): void {
  const { columns, carpet, density, colours, mode, ink } = task;
  const patterns = mode === 'pattern' ? patternsOf(context, density, ink) : null;
  for (const [joint, forces] of columns.entries()) {
    const top = Math.round((CARPET_MARGIN + joint * carpet.pitch) * density);
    const bottom = Math.round((CARPET_MARGIN + (joint + 1) * carpet.pitch - 1) * density);
    const height = Math.max(1, bottom - top);
    for (let c = 0; c < forces.length; ) {
      const force = forces[c];
      const first = c;
      if (Number.isNaN(force)) {
        c++;
        continue;
      }
      if (force === 0) {
        while (c < forces.length && forces[c] === 0) c++;
        paintSlack(context, task, first, c - first, top, height);
        continue;
      }
      const fill = patterns ? patterns.fill(force, colours.greatest) : colours.colour(force);
      while (c < forces.length && sameFill(forces[c], force, fill)) c++;
      context.fillStyle = fill;
      context.fillRect(first, top, c - first, height);
    }
    if (mode === 'contrast') paintGlyphs(context, forces, colours.greatest, density, top, height);
  }

  function sameFill(force: number, of: number, fill: string | CanvasPattern): boolean {
    if (force === 0 || Number.isNaN(force) || force < 0 !== of < 0) return false;
    return force === of || (patterns ? patterns.fill(force, colours.greatest) : colours.colour(force)) === fill;
  }

  function paintSlack(
    on: CanvasRenderingContext2D,
    { inks: { slack, thread } }: Pick<CarpetPainting, 'inks'>,
    first: number,
    count: number,
    top: number,
    height: number,
  ): void {
    if (!patterns) {
      on.fillStyle = slack;
      on.fillRect(first, top, count, height);
    }
    const inset = THREAD_INSET * density;
    if (count <= 3 * inset && !patterns) return;
    on.fillStyle = patterns ? ink : thread;
    const weight = Math.max(1, Math.round(density));
    const from = patterns ? first : first + inset;
    on.fillRect(from, top + Math.floor((height - weight) / 2), patterns ? count : count - 2 * inset, weight);
  }
}

/** A small triangle in every long enough stretch above half scale: to the left for buff, to the right for draft. */
function paintGlyphs(
  context: CanvasRenderingContext2D,
  forces: Float64Array,
  greatest: number,
  density: number,
  top: number,
  height: number,
): void {
  const size = Math.min(3 * density, height / 3);
  const middle = top + height / 2;
  context.fillStyle = '#FFFFFF';
  for (const sign of [-1, 1]) {
    const strong = (c: number) => forces[c] * sign > 0 && forceShade(forces[c], greatest) > 0.5;
    for (const { first, last } of stretchesOf(forces.length, strong)) {
      if (last - first + 1 < GLYPH_ROOM * density) continue;
      const x = (first + last + 1) / 2;
      context.beginPath();
      context.moveTo(x + sign * size, middle);
      context.lineTo(x - sign * size, middle - size);
      context.lineTo(x - sign * size, middle + size);
      context.fill();
    }
  }
}
