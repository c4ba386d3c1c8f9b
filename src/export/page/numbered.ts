/** A number that stands beside what it marks. */
export interface Numbered {
  readonly number: number;
  /** What is marked, and where its number stands, in units of the drawing. */
  readonly at: readonly [x: number, y: number];
  readonly label: readonly [x: number, y: number];
}

/** Across the circle that a number stands in, and the least way between two, in units of the drawing. */
export const circle = 18;
const apart = circle + 4;

/** Stands numbers in a row at a height, over what they mark as far as there is room, none over another. `places` in order of x. */
export function inRow(places: readonly Pick<Numbered, 'number' | 'at'>[], y: number, width: number): Numbered[] {
  const xs = places.map(({ at: [x] }) => x);
  // Each is pushed on by the one before; then all are pushed back from the far edge.
  for (let i = 1; i < xs.length; i++) xs[i] = Math.max(xs[i], xs[i - 1] + apart);
  let most = width - circle / 2;
  for (let i = xs.length - 1; i >= 0; i--) {
    xs[i] = Math.min(xs[i], most);
    most = xs[i] - apart;
  }
  return places.map((place, i) => ({ ...place, label: [xs[i], y] }));
}

/** Ways a number is looked a place for around what it marks. */
const ways = 16;
const tries = 14;

/** Stands numbers around what they mark, each the nearest to it that is clear of the line, of the edge and of the others. */
export function around(
  places: readonly Pick<Numbered, 'number' | 'at'>[],
  line: readonly (readonly [number, number])[],
  [width, height]: readonly [number, number],
): Numbered[] {
  const stood: Numbered[] = [];
  const clear = (x: number, y: number, of: readonly [number, number], by: number): boolean =>
    Math.hypot(x - of[0], y - of[1]) >= by;
  for (const place of places) {
    let best: readonly [number, number] = place.at;
    search: for (let ring = 1; ring <= tries; ring++) {
      const reach = ring * circle * 0.75;
      for (let way = 0; way < ways; way++) {
        const turn = (2 * Math.PI * (way + 0.5)) / ways;
        const [x, y] = [place.at[0] + reach * Math.cos(turn), place.at[1] + reach * Math.sin(turn)];
        const inside = x > circle && y > circle && x < width - circle && y < height - circle;
        if (!inside || stood.some(({ label }) => !clear(x, y, label, apart))) continue;
        if (line.some((one) => !clear(x, y, one, circle * 0.8))) continue;
        best = [x, y];
        break search;
      }
    }
    stood.push({ ...place, label: best });
  }
  return stood;
}
