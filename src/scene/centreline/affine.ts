import { cos, sin, tan } from '../../core/math/index.ts';

/** A plane map (x, y) -> (a·x + c·y + e, b·x + d·y + f), in the order that drawings write it. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const identity: Affine = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function composed(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** How far a map may be from keeping angles and still draw circles as circles, as a share. */
const SIMILARITY = 1e-9;

/** Whether a map keeps circles: 1, or -1 when it also mirrors; 0 when it makes ellipses of them. */
export function keepsCircles([a, b, c, d]: Affine): -1 | 0 | 1 {
  const size = Math.abs(a) + Math.abs(b) + Math.abs(c) + Math.abs(d);
  if (Math.abs(a - d) + Math.abs(b + c) < SIMILARITY * size) return 1;
  return Math.abs(a + d) + Math.abs(b - c) < SIMILARITY * size ? -1 : 0;
}

/** The map of a `transform` attribute; null when it cannot be read. */
export function affineOf(text: string): Affine | null {
  let map = identity;
  let rest = text.trim();
  while (rest !== '') {
    const found = /^([a-zA-Z]{1,12})\s{0,99}\(([^()]{0,400})\)[\s,]*/.exec(rest);
    const one =
      found &&
      mapOf(
        found[1],
        found[2]
          .trim()
          .split(/[\s,]+/)
          .map(Number),
      );
    if (!found || !one?.every(Number.isFinite)) return null;
    map = composed(map, one);
    rest = rest.slice(found[0].length);
  }
  return map;
}

function mapOf(name: string, n: readonly number[]): Affine | null {
  const angle = (n[0] * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return n.length === 6 ? [n[0], n[1], n[2], n[3], n[4], n[5]] : null;
    case 'translate':
      return [1, 0, 0, 1, n[0], n[1] ?? 0];
    case 'scale':
      return [n[0], 0, 0, n[1] ?? n[0], 0, 0];
    case 'rotate': {
      const turn: Affine = [cos(angle), sin(angle), -sin(angle), cos(angle), 0, 0];
      return n.length < 3 ? turn : composed(composed([1, 0, 0, 1, n[1], n[2]], turn), [1, 0, 0, 1, -n[1], -n[2]]);
    }
    case 'skewX':
      return [1, 0, tan(angle), 1, 0, 0];
    case 'skewY':
      return [1, tan(angle), 0, 1, 0, 0];
    default:
      return null;
  }
}
