import type { CutPieces } from '../../../core/build/index.ts';

/** The outline of a piece whose blank has its corner at `x`, `y` of the sheet, m, as the path of a drawing. `which` of an element's easements, from 0. */
export function outlineOf(piece: CutPieces, width: number, x: number, y: number, which: number): string {
  const { blank, sector, ordinates } = piece;
  const at = (across: number, down: number): string => `${(x + across).toFixed(4)} ${(y + down).toFixed(4)}`;
  if (sector !== undefined) {
    const [inner, outer] = [sector.radius - width / 2, sector.radius + width / 2];
    const middle = blank.length / 2;
    const [sine, cosine] = [Math.sin(sector.angle / 2), Math.cos(sector.angle / 2)];
    // The outer edge's middle touches the blank's upper side.
    const corner = (radius: number, side: number): string => at(middle + side * radius * sine, outer - radius * cosine);
    return `M${corner(outer, -1)}A${outer} ${outer} 0 0 1 ${corner(outer, 1)}L${corner(inner, 1)}A${inner} ${inner} 0 0 0 ${corner(inner, -1)}Z`;
  }
  const edges = ordinates?.[which % ordinates.length];
  if (edges !== undefined) {
    const [first, highest] = [Math.min(...edges.map(({ along }) => along)), Math.max(...edges.map(({ left }) => left))];
    const half = edges.length / 2;
    const round = [...edges.slice(0, half), ...edges.slice(half).reverse()];
    return `M${round.map(({ along, left }) => at(along - first, highest - left)).join('L')}Z`;
  }
  return `M${at(0, 0)}L${at(blank.length, 0)}L${at(blank.length, blank.width)}L${at(0, blank.width)}Z`;
}
