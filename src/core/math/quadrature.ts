import { cos } from './elementary.ts';

/** Abscissae on [-1, 1] in rising order, and their weights. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * The Gauss-Legendre rule of `n` points, exact for polynomials up to degree 2n - 1.
 *
 * Nodes are the roots of the Legendre polynomial by Newton from the cosine estimate (Abramowitz & Stegun 22.16.6), weights
 * 2/((1-x²)·Pₙ′²) (25.4.29). Throws RangeError unless n is a whole number from 1.
 */
export function gaussLegendre(n: number): QuadratureRule {
  if (!Number.isInteger(n) || n < 1)
    throw new RangeError(`A quadrature rule needs a whole number of points, not ${n}.`);
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < Math.ceil(n / 2); i++) {
    let x = 2 * i + 1 === n ? 0 : cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 0;
    // Newton from this estimate doubles its digits each time; six steps reach rounding for every n.
    for (let step = 0; step < 6; step++) {
      let before = 1;
      let value = x;
      for (let k = 2; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      slope = (n * (x * value - before)) / (x * x - 1);
      if (2 * i + 1 !== n) x -= value / slope;
    }
    nodes[i] = -x;
    nodes[n - 1 - i] = x;
    weights[i] = weights[n - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

/** ∫ f over [low, high] by one application of `rule`. */
export function integrate(f: (x: number) => number, low: number, high: number, rule: QuadratureRule): number {
  const half = (high - low) / 2;
  const middle = (high + low) / 2;
  let sum = 0;
  for (let i = 0; i < rule.nodes.length; i++) sum += rule.weights[i] * f(middle + half * rule.nodes[i]);
  return half * sum;
}
