import { cos, sin } from '../math/index.ts';
import type { CutPieces } from './cutPieces.ts';

/** A place on a sheet, m: along it to the right, across it downwards. */
export type OnSheet = readonly [x: number, y: number];

/** One side of a piece: a straight line, or an arc of less than half a circle about `centre`, clockwise as the sheet is seen. */
export type Side =
  | { readonly to: OnSheet }
  | { readonly to: OnSheet; readonly centre: OnSheet; readonly radius: number; readonly clockwise: boolean };

/** A closed outline: from `from` along its sides and back. */
export interface Outline {
  readonly from: OnSheet;
  readonly sides: readonly Side[];
}

/**
 * The outline of a piece of a strip `width` wide whose blank has its corner nearest the sheet's at `x`, `y`, m. Of an element's easements, which all differ, it is the one numbered `which`, from 0.
 */
export function pieceOutline(piece: CutPieces, width: number, x: number, y: number, which: number): Outline {
  const { blank, sector, ordinates } = piece;
  const at = (along: number, across: number): OnSheet => [x + along, y + across];
  if (sector !== undefined) {
    const [inner, outer] = [sector.radius - width / 2, sector.radius + width / 2];
    const middle = blank.length / 2;
    const [sine, cosine] = [sin(sector.angle / 2), cos(sector.angle / 2)];
    // The middle of the outer edge touches the upper side of the blank.
    const centre = at(middle, outer);
    const corner = (radius: number, side: 1 | -1) => at(middle + side * radius * sine, outer - radius * cosine);
    return {
      from: corner(outer, -1),
      sides: [
        { to: corner(outer, 1), centre, radius: outer, clockwise: true },
        { to: corner(inner, 1) },
        { to: corner(inner, -1), centre, radius: inner, clockwise: false },
        { to: corner(outer, -1) },
      ],
    };
  }
  const edges = ordinates?.[which % ordinates.length];
  if (edges === undefined) {
    const [right, lower] = [blank.length, blank.width];
    return closed([at(0, 0), at(right, 0), at(right, lower), at(0, lower)]);
  }
  const first = Math.min(...edges.map(({ along }) => along));
  const highest = Math.max(...edges.map(({ left }) => left));
  const half = edges.length / 2;
  const round = [...edges.slice(0, half), ...edges.slice(half).reverse()];
  return closed(round.map(({ along, left }) => at(along - first, highest - left)));
}

const closed = ([from, ...rest]: readonly OnSheet[]): Outline => ({
  from,
  sides: [...rest, from].map((to) => ({ to })),
});

/** An outline as the data of a path in SVG, each number times `scale` and written with `digits` decimals. */
export function outlinePath({ from, sides }: Outline, scale = 1, digits = 4): string {
  const at = ([x, y]: OnSheet): string => `${(x * scale).toFixed(digits)} ${(y * scale).toFixed(digits)}`;
  const side = (one: Side): string => {
    if (!('centre' in one)) return `L${at(one.to)}`;
    const radius = (one.radius * scale).toFixed(digits);
    return `A${radius} ${radius} 0 0 ${one.clockwise ? 1 : 0} ${at(one.to)}`;
  };
  return `M${at(from)}${sides.map(side).join('')}Z`;
}
