import { type LaidOutline, laidOutlines, pieceName } from '../../core/build/index.ts';
import type { BuildPlan } from '../../sim/build/index.ts';

/** A piece where it is sawn, with the name that is written on it. */
export interface NamedOutline extends LaidOutline {
  readonly name: string;
}

/** Every piece of a plan with its outline and its name. */
export function namedOutlines({ tracks, layout }: BuildPlan): NamedOutline[] {
  const all = tracks.flatMap(({ pieces, layers }, track) => pieces.map((piece) => ({ piece, layers, track })));
  return laidOutlines(
    all.map(({ piece }) => piece),
    all.map(({ layers }) => layers.width),
    layout,
  ).map((one) => {
    const { piece, track } = all[one.of];
    return { ...one, name: pieceName(track, piece.element, piece.count > 1 ? one.which : undefined) };
  });
}

/** Sheets stand one below the other with this between them, m. */
export const betweenSheets = 0.1;

/** Side of the square by which a print is checked to be to scale, m. */
export const scaleCheck = 0.1;

/** Height of the names, m. */
export const letterHeight = 0.012;
