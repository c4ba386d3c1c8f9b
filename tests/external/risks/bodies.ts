/** Bodies on a line drawn out in plan by plain arithmetic, mm. Nothing of the program's own geometry is in here. */

export type Point = readonly [x: number, y: number];
export interface Bend {
  readonly length: number;
  readonly curvature: number;
}

/** A place on straights and arcs laid end to end from the origin along x, mm. */
export function pointOn(bends: readonly Bend[], s: number): Point {
  let [x, y, heading, left] = [0, 0, 0, s];
  for (const [i, { length, curvature }] of bends.entries()) {
    const go = i + 1 === bends.length ? left : Math.min(left, length);
    if (curvature === 0) {
      x += go * Math.cos(heading);
      y += go * Math.sin(heading);
    } else {
      x += (Math.sin(heading + curvature * go) - Math.sin(heading)) / curvature;
      y += (Math.cos(heading) - Math.cos(heading + curvature * go)) / curvature;
    }
    heading += curvature * go;
    left -= go;
    if (left <= 0) break;
  }
  return [x, y];
}

export const apart = ([a, b]: Point, [c, d]: Point): number => Math.hypot(a - c, b - d);

export function bisect(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === f(b) > 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

export interface Body {
  readonly rear: Point;
  readonly ahead: Point;
}

export const along = ({ rear, ahead }: Body, a: number, far: number): Point => [
  rear[0] + ahead[0] * (a / 2 + far),
  rear[1] + ahead[1] * (a / 2 + far),
];

/** A body of pivots `a` apart with its front pivot at s. */
export function bodyAt(bends: readonly Bend[], s: number, a: number): Body {
  const front = pointOn(bends, s);
  const back = bisect((away) => apart(front, pointOn(bends, s - away)) - a, a * 0.9, a * 1.2);
  const rear = pointOn(bends, s - back);
  return { rear, ahead: [(front[0] - rear[0]) / a, (front[1] - rear[1]) / a] };
}

/** Two like bodies whose coupling pivots, `pin` from the middle of each, stand `between` apart; the front pivot of the leading one at s. */
export function pairAt(bends: readonly Bend[], s: number, a: number, pin: number, between: number) {
  const leading = bodyAt(bends, s, a);
  const from = along(leading, a, -pin);
  const back = bisect(
    (away) => apart(from, along(bodyAt(bends, s - away, a), a, pin)) - between,
    2 * pin + between * 0.8,
    2 * pin + between * 1.3,
  );
  const trailing = bodyAt(bends, s - back, a);
  return { leading, trailing, from, to: along(trailing, a, pin) };
}

export const angle = ([x, y]: Point): number => Math.atan2(y, x);
