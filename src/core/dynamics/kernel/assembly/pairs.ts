/*
 * Arithmetic on two numbers side by side. Each operation is the one IEEE 754 fixes, so a lane's result has the same bits
 * as if it were computed alone, on every machine.
 */

export function both(x: f64): v128 {
  return f64x2.splat(x);
}

export function two(x: f64, y: f64): v128 {
  return f64x2.replace_lane(f64x2.splat(x), 1, y);
}

export function add(a: v128, b: v128): v128 {
  return f64x2.add(a, b);
}

export function sub(a: v128, b: v128): v128 {
  return f64x2.sub(a, b);
}

export function mul(a: v128, b: v128): v128 {
  return f64x2.mul(a, b);
}

export function div(a: v128, b: v128): v128 {
  return f64x2.div(a, b);
}

export function abs(a: v128): v128 {
  return f64x2.abs(a);
}

export function larger(a: v128, b: v128): v128 {
  return f64x2.pmax(a, b);
}

export function smaller(a: v128, b: v128): v128 {
  return f64x2.pmin(a, b);
}

/** All bits set in the lanes where a < b. */
export function below(a: v128, b: v128): v128 {
  return f64x2.lt(a, b);
}

export function either(a: v128, b: v128): v128 {
  return v128.or(a, b);
}

/** Bits of a that are not in b; bits that are in one of them only. */
export function without(a: v128, b: v128): v128 {
  return v128.andnot(a, b);
}

export function unlike(a: v128, b: v128): v128 {
  return v128.xor(a, b);
}

/** `a` in the lanes of the mask, 0 elsewhere. */
export function where(mask: v128, a: v128): v128 {
  return v128.and(a, mask);
}

/** `a` with its sign turned where `b` is negative; `sign` has the sign bits set. */
export function turnedBy(a: v128, b: v128, sign: v128): v128 {
  return v128.xor(a, v128.and(b, sign));
}

/** The lanes changed over, both signs turned: what one half of the train is to the other. */
export function mirrored(a: v128): v128 {
  return f64x2.neg(swapped(a));
}

export function swapped(a: v128): v128 {
  return v128.shuffle<f64>(a, a, 1, 0);
}

/** First lanes of a and b, and second lanes. */
export function firsts(a: v128, b: v128): v128 {
  return v128.shuffle<f64>(a, b, 0, 2);
}

export function seconds(a: v128, b: v128): v128 {
  return v128.shuffle<f64>(a, b, 1, 3);
}

export function sum(a: v128): f64 {
  return f64x2.extract_lane(a, 0) + f64x2.extract_lane(a, 1);
}

/** From a to b by the share t. */
export function between(a: v128, b: v128, t: v128): v128 {
  return add(a, mul(sub(b, a), t));
}
