import type { ShapedScene, ShapeScale, ShapeValues, StartingShape } from '../../state/shapes/index.ts';

/** What a shape comes to with these numbers, or why it comes to nothing. */
export type Made = { readonly ok: true; readonly shaped: ShapedScene } | { readonly ok: false; readonly why: string };

export function madeOf(shape: StartingShape, scale: ShapeScale, values: ShapeValues): Made {
  try {
    return { ok: true, shaped: shape.make(scale, values) };
  } catch (error) {
    // Shapes say in words what numbers would do; anything else is a fault of the program.
    if (!(error instanceof RangeError)) throw error;
    return { ok: false, why: error.message };
  }
}
