import { cos, sin, tan } from '../math/index.ts';

/** A piece of a ring between two radial cuts, and the boards it can be sawn from. Lengths in m, angles in rad. */
export interface RingSector {
  readonly inner: number;
  readonly outer: number;
  readonly angle: number;
  /** From cut to cut, straight, along the inner and the outer edge. */
  readonly innerChord: number;
  readonly outerChord: number;
  /** What each end is cut off square, seen from the chord: half the angle. */
  readonly mitre: number;
  /** The least rectangle it comes out of. */
  readonly blank: { readonly length: number; readonly width: number };
  /** A board with straight sides instead, mitred alike, that holds all of it: lengths of its two sides. As wide as the blank. */
  readonly straightSided: { readonly innerSide: number; readonly outerSide: number };
}

/** A sector of a ring of `radius` at the middle of a strip of `width`, m, through `angle`, rad, up to half a ring. Throws RangeError for anything else. */
export function ringSector(radius: number, width: number, angle: number): RingSector {
  const [inner, outer] = [radius - width / 2, radius + width / 2];
  if (!(width > 0) || !(inner > 0)) throw new RangeError(`A strip ${width} m wide makes no ring of ${radius} m.`);
  if (!(angle > 0) || angle > Math.PI) throw new RangeError(`A sector through ${angle} rad is not cut from one board.`);
  const half = angle / 2;
  return {
    inner,
    outer,
    angle,
    innerChord: 2 * inner * sin(half),
    outerChord: 2 * outer * sin(half),
    mitre: half,
    blank: { length: 2 * outer * sin(half), width: outer - inner * cos(half) },
    straightSided: { innerSide: 2 * inner * sin(half), outerSide: 2 * outer * tan(half) },
  };
}

/** How far apart alike sectors lie one behind the other on a board, with a saw's `kerf` between them, m: the inner ends of one touch the outer edge of the next. */
export function nestedPitch({ inner, outer, angle }: RingSector, kerf: number): number {
  const half = angle / 2;
  const edge = inner * sin(half);
  return Math.sqrt((outer + kerf) * (outer + kerf) - edge * edge) - inner * cos(half);
}
