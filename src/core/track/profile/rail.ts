import { asinh, gaussLegendre, hypot } from '../../math/index.ts';
import { locate } from '../bucket.ts';
import type { HeightPieces, PreparedProfile, Track } from '../types.ts';

/**
 * The grade may change by this much within one application of the eight-point rule: √(1+g²) is then analytic in an
 * ellipse whose half-axes sum to 8 half-widths, so the rule errs by less than 1e-14 of the length.
 */
const GRADE_CHANGE_PER_RULE = 0.5;

const rule = gaussLegendre(8);

/**
 * Newton stops after a step of this share of the piece. Its error is then the square of that share times the change of
 * grade over the piece, below rounding.
 */
const LAST_STEP = 1e-9;

/** Halving alone would be done in this many steps. */
const MOST_STEPS = 60;

/** Rail distance, ∫√(1+g²)ds in m, over the first `t` of piece `k`. */
function railWithin(pieces: HeightPieces, k: number, t: number): number {
  const b = pieces.b[k];
  const c2 = 2 * pieces.c[k];
  const d3 = 3 * pieces.d[k];
  const e4 = 4 * pieces.e[k];
  if (c2 === 0 && d3 === 0 && e4 === 0) return t * Math.sqrt(1 + b * b);
  const change = Math.abs(t) * (Math.abs(c2) + Math.abs(t * d3) + Math.abs(t * t * e4));
  if (d3 === 0 && e4 === 0 && change > GRADE_CHANGE_PER_RULE) return (railOfGrade(b + c2 * t) - railOfGrade(b)) / c2;
  const parts = Math.max(1, Math.ceil(change / GRADE_CHANGE_PER_RULE));
  const half = t / parts / 2;
  let sum = 0;
  for (let part = 0; part < parts; part++) {
    const middle = (2 * part + 1) * half;
    for (let i = 0; i < 8; i++) {
      const u = middle + half * rule.nodes[i];
      const g = b + u * (c2 + u * (d3 + u * e4));
      sum += rule.weights[i] * Math.sqrt(1 + g * g);
    }
  }
  return half * sum;
}

/** ∫₀ᵍ √(1+q²) dq, the length of a parabola by its slope (times its d²z/ds²). */
const railOfGrade = (g: number): number => (g * Math.sqrt(1 + g * g) + asinh(g)) / 2;

/** Rail distance from the start of the track to each piece and, last, to `length`. */
export function railStarts(pieces: HeightPieces, length: number): Float64Array {
  const n = pieces.startChainage.length;
  const starts = new Float64Array(n + 1);
  for (let k = 0; k < n; k++) {
    const end = k + 1 < n ? pieces.startChainage[k + 1] : length;
    starts[k + 1] = starts[k] + railWithin(pieces, k, end - pieces.startChainage[k]);
  }
  return starts;
}

/** The grade of `profile` at `chainage`, inside the track. */
function gradeAt(profile: PreparedProfile, chainage: number): number {
  const k = locate(profile.bucket, profile.startChainage, chainage);
  const t = chainage - profile.startChainage[k];
  return profile.b[k] + t * (2 * profile.c[k] + t * (3 * profile.d[k] + t * 4 * profile.e[k]));
}

/**
 * Rail distance, m: the length along the rail in space from the start of the track to chainage `s`, negative before it.
 * rail(s) = ∫₀ˢ √(1+g²) ds, to 1e-12 of the distance.
 */
export function railAt(track: Track, s: number): number {
  const { profile, length } = track;
  if (s < 0) return s * hypot(1, gradeAt(profile, 0));
  if (s > length) return track.railLength + (s - length) * hypot(1, gradeAt(profile, length));
  const k = locate(profile.bucket, profile.startChainage, s);
  return profile.startRail[k] + railWithin(profile, k, s - profile.startChainage[k]);
}

/**
 * The chainage, m, at rail distance `rail`, m: the inverse of `railAt` to rounding.
 *
 * Newton in the one piece that holds it, halving where a step would leave the bracket; two or three steps on any real track.
 */
export function chainageAtRail(track: Track, rail: number): number {
  const { profile, length } = track;
  if (rail < 0) return rail / hypot(1, gradeAt(profile, 0));
  if (rail >= track.railLength) return length + (rail - track.railLength) / hypot(1, gradeAt(profile, length));
  const k = locate(profile.railBucket, profile.startRail, rail);
  const start = profile.startChainage[k];
  const target = rail - profile.startRail[k];
  const c2 = 2 * profile.c[k];
  const d3 = 3 * profile.d[k];
  const e4 = 4 * profile.e[k];
  const whole = (k + 1 < profile.startChainage.length ? profile.startChainage[k + 1] : length) - start;
  let low = 0;
  let high = whole;
  let t = Math.min(target / hypot(1, profile.b[k]), whole);
  for (let i = 0; i < MOST_STEPS; i++) {
    const g = profile.b[k] + t * (c2 + t * (d3 + t * e4));
    const short = target - railWithin(profile, k, t);
    if (short > 0) low = t;
    else high = t;
    const step = short / Math.sqrt(1 + g * g);
    const next = t + step >= low && t + step <= high ? t + step : (low + high) / 2;
    const done = Math.abs(next - t) <= LAST_STEP * whole;
    t = next;
    if (done) break;
  }
  return start + t;
}
