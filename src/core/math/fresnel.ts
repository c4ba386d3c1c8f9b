import { cos, sin } from './elementary.ts';

/** The Fresnel integrals of one argument. */
export interface Fresnel {
  c: number;
  s: number;
}

/** Below this the power series is used: its largest term there is 11, so cancellation costs one digit. */
const SERIES_LIMIT = 1.6;

/** Beyond this both integrals are 1/2 to the last bit, because the swing about it is 1/(πx). */
const FLAT_LIMIT = 1e17;

/** 2^27 + 1: splits a double into two halves whose products are exact (Dekker 1971). */
const SPLITTER = 134217729;

/**
 * C(x) = ∫₀ˣ cos(πt²/2) dt and S(x) = ∫₀ˣ sin(πt²/2) dt for any real x, absolute error below 1e-14.
 *
 * Power series (Abramowitz & Stegun 7.3.11 and 7.3.13) for small |x|, otherwise the auxiliary functions by the
 * continued fraction of the complementary error function (DLMF 7.9.3) and 7.3.9, 7.3.10. Both are odd in x.
 */
export function fresnel(x: number, out: Fresnel = { c: 0, s: 0 }): Fresnel {
  const size = Math.abs(x);
  if (size < SERIES_LIMIT) powerSeries(size, out);
  else if (size < FLAT_LIMIT) fromAuxiliaries(size, out);
  else out.c = out.s = size >= FLAT_LIMIT ? 0.5 : Number.NaN;
  if (x < 0) {
    out.c = -out.c;
    out.s = -out.s;
  }
  return out;
}

/** Terms x·(iz)ⁿ / (n!·(2n+1)) with z = πx²/2: even n make C, odd n make S. */
function powerSeries(x: number, out: Fresnel): void {
  const z = (Math.PI / 2) * x * x;
  let c = x;
  let s = 0;
  let power = x;
  for (let n = 1; n < 60; n++) {
    power *= z / n;
    const term = power / (2 * n + 1);
    const signed = n % 4 < 2 ? term : -term;
    if (n % 2 === 0) c += signed;
    else s += signed;
    // Past the largest term (n > z) each term is smaller than the one before and the rest cannot add up to a bit.
    if (n > z && term < 1e-18 * x) break;
  }
  out.c = c;
  out.s = s;
}

/**
 * C + iS = (1+i)/2 - (g + if)·exp(iπx²/2), where g + if = x / (b₀ + a₁/(b₁ + a₂/(b₂ + …))), bₙ = 1 + 4n - iπx²,
 * aₙ = -(2n-1)·2n. Evaluated from the tail; the number of levels is what 1e-16 needs, found by experiment: it falls as
 * 1/x² because the tail of the fraction settles once 4n passes πx².
 */
function fromAuxiliaries(x: number, out: Fresnel): void {
  const imaginary = -Math.PI * x * x;
  const levels = Math.ceil(8 + 150 / (x * x));
  let re = 1 + 4 * levels;
  let im = imaginary;
  for (let n = levels; n >= 1; n--) {
    const scale = (-(2 * n - 1) * 2 * n) / (re * re + im * im);
    re = 4 * n - 3 + scale * re;
    im = imaginary - scale * im;
  }
  const norm = x / (re * re + im * im);
  const g = norm * re;
  const f = -norm * im;
  const phase = (Math.PI / 2) * squareModuloFour(x);
  const cosine = cos(phase);
  const sine = sin(phase);
  out.c = 0.5 + f * sine - g * cosine;
  out.s = 0.5 - f * cosine - g * sine;
}

/** x² modulo 4 with the rounding error of the square kept: for large x the plain square has lost the phase. */
function squareModuloFour(x: number): number {
  const square = x * x;
  const carried = SPLITTER * x;
  const high = carried - (carried - x);
  const low = x - high;
  const error = low * low - (square - high * high - 2 * high * low);
  return (square % 4) + (error % 4);
}
