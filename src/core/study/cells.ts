/** A place in the plane of two quantities. */
export type Place = readonly [across: number, up: number];

/** A straight piece of a border; what is inside lies to its left. */
export type Piece = readonly [from: Place, to: Place];

/** An even or uneven grid, of whose corners it is known whether they are inside: null, not known. */
export interface CornerGrid {
  readonly across: readonly number[];
  readonly up: readonly number[];
  readonly inside: (i: number, k: number) => boolean | null;
  /** Where the border runs through the side from one corner to the next, of which one is inside; the same whichever comes first. */
  readonly border: (a: readonly [number, number], b: readonly [number, number]) => Place | null;
  /** Of a cell that is inside at two corners across from each other only: whether these hang together. They stay apart when left out. */
  readonly joins?: (i: number, k: number) => boolean;
}

/** Corners of a cell, counterclockwise from the low one. */
const corners = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

/** Where a border runs through the grid: marching squares, each piece from side to side of one cell. */
export function cutCells({ across, up, inside, border, joins }: CornerGrid): Piece[] {
  const pieces: Piece[] = [];
  for (let k = 0; k + 1 < up.length; k++) {
    for (let i = 0; i + 1 < across.length; i++) {
      const at = corners.map(([right, high]) => [i + right, k + high] as const);
      const is = at.map((corner) => inside(...corner));
      if (is.includes(null)) continue;
      // Counterclockwise round the cell, where it goes in and where it comes out.
      const cuts = at.flatMap((corner, n) => {
        const next = (n + 1) % corners.length;
        if (is[n] === is[next]) return [];
        const place = border(corner, at[next]);
        return place === null ? [] : [{ place, enters: is[next] === true }];
      });
      const ahead = cuts.length === corners.length && joins?.(i, k) === true ? 1 : cuts.length - 1;
      cuts.forEach(({ place, enters }, n) => {
        if (!enters) pieces.push([place, cuts[(n + ahead) % cuts.length].place]);
      });
    }
  }
  return pieces;
}

/**
 * Where the inside reaches the edge of the grid and nothing is known beyond, in pieces of single sides. Together with the pieces of `cutCells` they go
 * all round it.
 */
export function brinkOf({ across, up, inside, border }: CornerGrid): Piece[] {
  const [right, top] = [across.length - 1, up.length - 1];
  const round = [
    ...across.map((_, i) => [i, 0] as const),
    ...up.slice(1).map((_, k) => [right, k + 1] as const),
    ...across.slice(1).map((_, i) => [right - 1 - i, top] as const),
    ...up.slice(1).map((_, k) => [0, top - 1 - k] as const),
  ];
  const place = ([i, k]: readonly [number, number]): Place => [across[i], up[k]];
  return round.slice(1).flatMap((next, n): Piece[] => {
    const here = round[n];
    const [a, b] = [inside(...here), inside(...next)];
    if (a === null || b === null || (!a && !b)) return [];
    if (a && b) return [[place(here), place(next)]];
    const middle = border(here, next);
    if (middle === null) return [];
    return a ? [[place(here), middle]] : [[middle, place(next)]];
  });
}

/** Pieces that end where others begin, joined to lines as long as they come; one that closes begins and ends at the same place. */
export function joinedLines(pieces: readonly Piece[]): Place[][] {
  const key = (place: Place): string => place.join();
  const open = new Map<string, Piece[]>();
  for (const piece of pieces) open.set(key(piece[0]), [...(open.get(key(piece[0])) ?? []), piece]);
  const ends = new Set(pieces.map(([, to]) => key(to)));
  const take = (at: Place): Piece | undefined => open.get(key(at))?.shift();
  const follow = (first: Piece): Place[] => {
    const line: Place[] = [...first];
    for (let next = take(first[1]); next !== undefined; next = take(next[1])) line.push(next[1]);
    return line;
  };
  // Lines that begin somewhere before those that go round.
  const starts = [...pieces.filter(([from]) => !ends.has(key(from))), ...pieces];
  return starts.flatMap(([from]) => {
    const first = take(from);
    return first === undefined ? [] : [follow(first)];
  });
}
