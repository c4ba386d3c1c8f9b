/**
 * Elementary functions built from + - × ÷ and √ alone.
 *
 * The language leaves the last bits of Math.sin and its kin to the engine, and engines differ: between Node 20 and a
 * current Chromium they do. IEEE 754 fixes the five operations used here, so a run is the same bit for bit wherever it
 * is solved. Accuracy is about 1 unit in the last place (2 for the inverse functions), checked against Math.
 */

/** π/2 in three parts of 33, 33 and 53 bits, so that n·π/2 can be taken off exactly for |n| < 2^20. */
const HALF_PI_HIGH = 1.5707963267341256;
const HALF_PI_MIDDLE = 6.077100506303966e-11;
const HALF_PI_LOW = 2.0222662487959506e-21;
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

/** Coefficients of sin and cos by falling power of x², Taylor: the first left out is below 1e-17 at π/4. */
function sineNear(x: number): number {
  const q = x * x;
  const tail =
    -1 / 6 +
    q *
      (1 / 120 +
        q *
          (-1 / 5040 +
            q *
              (1 / 362880 +
                q * (-1 / 39916800 + q * (1 / 6227020800 + q * (-1 / 1307674368000 + q / 355687428096000))))));
  return x + x * q * tail;
}

function cosineNear(x: number): number {
  const q = x * x;
  const tail =
    1 / 24 +
    q *
      (-1 / 720 +
        q *
          (1 / 40320 +
            q *
              (-1 / 3628800 +
                q * (1 / 479001600 + q * (-1 / 87178291200 + q * (1 / 20922789888000 - q / 6402373705728000))))));
  // 1 - q/2 rounded, and what that rounding lost.
  const half = 0.5 * q;
  const lead = 1 - half;
  return lead + (1 - lead - half + q * q * tail);
}

/** Sine and cosine of the same angle, by quarter turn: `turn` 0 gives the sine, 1 the cosine. */
function circular(x: number, turn: number): number {
  const n = Math.round(x * (2 / Math.PI));
  const r = x - n * HALF_PI_HIGH - n * HALF_PI_MIDDLE - n * HALF_PI_LOW;
  switch ((n + turn) & 3) {
    case 0:
      return sineNear(r);
    case 1:
      return cosineNear(r);
    case 2:
      return -sineNear(r);
    default:
      return -cosineNear(r);
  }
}

/** Sine of x rad, |x| below a million. */
export const sin = (x: number): number => circular(x, 0);

/** Cosine of x rad, |x| below a million. */
export const cos = (x: number): number => circular(x, 1);

export const tan = (x: number): number => sin(x) / cos(x);

/** Area tangent by its series, for |t| ≤ 0.2. */
function areaTangentNear(t: number): number {
  const q = t * t;
  let sum = 0;
  for (let k = 25; k >= 3; k -= 2) sum = q * (1 / k + sum);
  return t + t * sum;
}

/** Arc tangent, rad in (-π/2, π/2). */
export function atan(x: number): number {
  if (x > 1) return 0.5 * Math.PI - atan(1 / x);
  if (x < -1) return -0.5 * Math.PI - atan(1 / x);
  // Twice halved, the angle is at most π/16: tan(a/2) = tan a/(1 + √(1 + tan² a)).
  const half = x / (1 + Math.sqrt(1 + x * x));
  const t = half / (1 + Math.sqrt(1 + half * half));
  const q = t * t;
  let sum = 0;
  for (let k = 25; k >= 3; k -= 2) sum = -q * (1 / k + sum);
  return 4 * (t + t * sum);
}

/** Angle of the direction (x, y), rad in (-π, π]. */
export function atan2(y: number, x: number): number {
  if (x > 0) return atan(y / x);
  if (x < 0) return atan(y / x) + (y >= 0 ? Math.PI : -Math.PI);
  return y === 0 ? 0 : y > 0 ? 0.5 * Math.PI : -0.5 * Math.PI;
}

/** Arc sine of x in [-1, 1], rad. */
export const asin = (x: number): number => atan2(x, Math.sqrt((1 - x) * (1 + x)));

const bits = new DataView(new ArrayBuffer(8));

/** 2 to the power n, exact, for n from -1022 to 1023. */
function powerOfTwo(n: number): number {
  bits.setUint32(0, (n + 1023) << 20);
  bits.setUint32(4, 0);
  return bits.getFloat64(0);
}

/** Natural logarithm of a normal number x > 0. */
export function log(x: number): number {
  bits.setFloat64(0, x);
  let n = ((bits.getUint32(0) >>> 20) & 0x7ff) - 1023;
  let m = x / powerOfTwo(n);
  if (m > Math.SQRT2) {
    m *= 0.5;
    n++;
  }
  return n * LN2_HIGH + (n * LN2_LOW + 2 * areaTangentNear((m - 1) / (m + 1)));
}

/** Area sine, the inverse of sinh; exact near 0. */
export function asinh(x: number): number {
  const t = x / (1 + Math.sqrt(1 + x * x));
  return Math.abs(t) <= 0.2 ? 2 * areaTangentNear(t) : Math.sign(x) * log(Math.abs(x) + Math.sqrt(1 + x * x));
}

/** Length of the vector (x, y, z). */
export const hypot = (x: number, y: number, z = 0): number => Math.sqrt(x * x + y * y + z * z);

/** x². The power operator is left out of the core: engines may hand it to a library of their own. */
export const square = (x: number): number => x * x;
