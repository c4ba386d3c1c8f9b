import { asin, atan2, cos, hypot, sin, tan } from '../../core/math/index.ts';
import { type Affine, keepsCircles } from './affine.ts';
import { chordErrorMm } from './limits.ts';
import type { DrawnPoint } from './types.ts';

/** Most chords of one curve. */
const mostChords = 2000;

type Place = readonly [x: number, y: number];

interface Control {
  readonly of: 'C' | 'Q';
  readonly place: Place;
}

/** Numbers that follow a letter of a path. */
const counts: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 };

/** The lines of the `d` of an SVG path, mapped to mm; `problem` says where reading had to end. As drawn so far is kept, as the standard wants. */
export function pathLines(d: string, map: Affine): { readonly lines: DrawnPoint[][]; readonly problem?: string } {
  const scanner = scan(d);
  const lines: DrawnPoint[][] = [];
  let line: DrawnPoint[] = [];
  let at: Place = [0, 0];
  let start: Place = at;
  // The last control point of a curve and its kind, for the smooth ones.
  let control: Control | null = null;
  const mapped = ([x, y]: Place): Place => [map[0] * x + map[2] * y + map[4], map[1] * x + map[3] * y + map[5]];
  const put = (to: Place): void => {
    const [xMm, yMm] = mapped(to);
    line.push({ xMm, yMm });
    at = to;
  };
  const finish = (): void => {
    if (line.length > 1) lines.push(line);
    line = [];
  };
  const begin = (): void => {
    if (line.length === 0) put(at);
  };
  const bend = (a: Place, b: Place, to: Place): void => {
    const from = at;
    const curve = [from, a, b, to].map(mapped);
    const second = Math.max(
      ...[0, 1].map((i) => {
        const [p, q, r] = [curve[i], curve[i + 1], curve[i + 2]];
        return hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1]);
      }),
    );
    // A chord over 1/n of the parameter is off by at most |second derivative|/8n².
    const chords = Math.min(mostChords, Math.max(1, Math.ceil(Math.sqrt((6 * second) / (8 * chordErrorMm)))));
    for (let i = 1; i < chords; i++) {
      const t = i / chords;
      const u = 1 - t;
      const mix = (k: 0 | 1): number =>
        u * u * u * from[k] + 3 * u * u * t * a[k] + 3 * u * t * t * b[k] + t * t * t * to[k];
      put([mix(0), mix(1)]);
    }
    put(to);
  };
  for (let letter = scanner.letter(); letter !== null; ) {
    const upper = letter.toUpperCase();
    const needed = counts[upper];
    if (needed === undefined) return { lines: ended(), problem: `a letter ${letter} that paths do not have` };
    if (lines.length === 0 && line.length === 0 && upper !== 'M')
      return { lines: ended(), problem: 'a path that does not begin with M' };
    const n = scanner.numbers(needed, upper === 'A');
    if (n === null) return { lines: ended(), problem: `a letter ${letter} without its ${needed} numbers` };
    const base: Place = letter === upper ? [0, 0] : at;
    const place = (i: number): Place => [base[0] + n[i], base[1] + n[i + 1]];
    const mirrored = (of: 'C' | 'Q'): Place =>
      control?.of === of ? [2 * at[0] - control.place[0], 2 * at[1] - control.place[1]] : at;
    if (upper === 'M') {
      finish();
      put(place(0));
      start = at;
    } else begin();
    let next: Control | null = null;
    if (upper === 'L') put(place(0));
    else if (upper === 'H') put([base[0] + n[0], at[1]]);
    else if (upper === 'V') put([at[0], base[1] + n[0]]);
    else if (upper === 'C' || upper === 'S') {
      const [first, i] = upper === 'C' ? [place(0), 2] : [mirrored('C'), 0];
      next = { of: 'C', place: place(i) };
      bend(first, place(i), place(i + 2));
    } else if (upper === 'Q' || upper === 'T') {
      const [handle, to] = upper === 'Q' ? [place(0), place(2)] : [mirrored('Q'), place(0)];
      next = { of: 'Q', place: handle };
      const third = (from: Place): Place => [
        from[0] + (2 * (handle[0] - from[0])) / 3,
        from[1] + (2 * (handle[1] - from[1])) / 3,
      ];
      bend(third(at), third(to), to);
    } else if (upper === 'A') {
      const to = place(5);
      for (const step of arcSteps(at, to, n, map)) {
        if (step.bulge !== 0) line[line.length - 1] = { ...line[line.length - 1], bulge: step.bulge };
        put(step.to);
      }
    } else if (upper === 'Z') {
      if (hypot(at[0] - start[0], at[1] - start[1]) > 0) put(start);
      finish();
      at = start;
    }
    control = next;
    // Numbers without a letter repeat the last one; after a move they draw.
    letter =
      scanner.letter() ??
      (scanner.more() && upper !== 'Z' ? (letter === 'M' ? 'L' : letter === 'm' ? 'l' : letter) : null);
  }
  const rest = scanner.rest();
  return rest === '' ? { lines: ended() } : { lines: ended(), problem: `"${rest.slice(0, 30)}" in a path` };

  function ended(): DrawnPoint[][] {
    finish();
    return lines;
  }
}

/** Reads letters and numbers of a path one after another; flags of arcs are single digits. */
function scan(d: string) {
  let i = 0;
  const skip = (): void => {
    while (i < d.length && ' \t\r\n\f,'.includes(d[i])) i++;
  };
  const number = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
  const one = (flag: boolean): number | null => {
    skip();
    if (flag) return d[i] === '0' || d[i] === '1' ? Number(d[i++]) : null;
    number.lastIndex = i;
    const found = number.exec(d);
    if (found === null || !Number.isFinite(Number(found[0]))) return null;
    i = number.lastIndex;
    return Number(found[0]);
  };
  return {
    letter(): string | null {
      skip();
      return i < d.length && /[a-zA-Z]/.test(d[i]) ? d[i++] : null;
    },
    numbers(count: number, arc: boolean): number[] | null {
      const found: number[] = [];
      for (let k = 0; k < count; k++) {
        const next = one(arc && (k === 3 || k === 4));
        if (next === null) return null;
        found.push(next);
      }
      return found;
    },
    more(): boolean {
      skip();
      return i < d.length && /[\d+.-]/.test(d[i]);
    },
    rest: (): string => d.slice(i).trim(),
  };
}

interface ArcStep {
  readonly to: Place;
  /** As in `DrawnPoint`; 0 for a chord. */
  readonly bulge: number;
}

/**
 * An elliptical arc as the standard (SVG 2, appendix B.2) means it: circles that stay circles in two exact arcs, others in chords. The plane is
 * turned and pressed so that the ellipse has radius 1; radii too small to span the chord grow until they do.
 */
function arcSteps(from: Place, to: Place, n: readonly number[], map: Affine): ArcStep[] {
  const [rx, ry] = [Math.abs(n[0]), Math.abs(n[1])];
  if (rx === 0 || ry === 0 || hypot(to[0] - from[0], to[1] - from[1]) === 0) return [{ to, bulge: 0 }];
  const tilt = (n[2] * Math.PI) / 180;
  const [c, s] = [cos(tilt), sin(tilt)];
  const press = ([x, y]: Place): Place => [(c * x + s * y) / rx, (c * y - s * x) / ry];
  const [p, q] = [press(from), press(to)];
  const chord = hypot(q[0] - p[0], q[1] - p[1]);
  const radius = Math.max(1, chord / 2);
  const half = asin(Math.min(1, chord / (2 * radius)));
  const turn = (n[3] === 1 ? 2 * Math.PI - 2 * half : 2 * half) * (n[4] === 1 ? 1 : -1);
  // The centre is left of the chord where an arc of less than half a turn goes left.
  const side = (n[3] === 1) === (n[4] === 1) ? -1 : 1;
  const height = (side * Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4))) / chord;
  const centre: Place = [(p[0] + q[0]) / 2 - height * (q[1] - p[1]), (p[1] + q[1]) / 2 + height * (q[0] - p[0])];
  const first = atan2(p[1] - centre[1], p[0] - centre[0]);
  const placeAt = (share: number): Place => {
    if (share === 1) return to;
    const angle = first + share * turn;
    const x = (centre[0] + radius * cos(angle)) * rx;
    const y = (centre[1] + radius * sin(angle)) * ry;
    return [c * x - s * y, s * x + c * y];
  };
  const keeps = rx === ry ? keepsCircles(map) : 0;
  if (keeps !== 0) {
    const bulge = keeps * tan(turn / 8);
    return [0.5, 1].map((share) => ({ to: placeAt(share), bulge }));
  }
  const size = radius * Math.max(rx, ry) * hypot(hypot(map[0], map[1]), hypot(map[2], map[3]));
  const chords = Math.min(mostChords, Math.max(1, Math.ceil(Math.abs(turn) * Math.sqrt(size / (8 * chordErrorMm)))));
  return Array.from({ length: chords }, (_, i) => ({ to: placeAt((i + 1) / chords), bulge: 0 }));
}
