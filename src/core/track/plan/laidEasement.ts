import { gaussLegendre, integrate } from '../../math/index.ts';
import type { PlanElement } from '../types.ts';
import { transition } from './elements.ts';

/**
 * Easements that are not clothoids. `cubic`: the cubic parabola y = x³/6RX of drawings. `lath`: a strip held along the straight and pushed aside at its
 * far end, so that its bending moment grows with the distance x along the straight (the rectangular elastica of James Bernoulli).
 */
export type LaidEasement = 'cubic' | 'lath';

const rule = gaussLegendre(6);

/**
 * An easement of `length`, m, measured along the straight, from a straight towards `radius`, m, to the left, as a chain of clothoids: curvature and
 * length are exact at the ends of every piece, and linear between where the curve's are nearly so.
 *
 * With u = x²/2RX the cubic has tan θ = u and κ = (x/RX)·cos³θ, the lath sin θ = u and κ = x/RX: so the cubic never gets as tight as the radius.
 * Throws RangeError unless both are positive, there is at least one piece and the lath turns through less than a right angle.
 */
export function laidEasement(kind: LaidEasement, length: number, radius: number, pieces = 32): PlanElement[] {
  if (!(radius > 0 && length > 0 && length < 2 * radius) || !(Number.isInteger(pieces) && pieces >= 1)) {
    throw new RangeError(`A ${kind} of ${length} m cannot ease into a radius of ${radius} m in ${pieces} pieces.`);
  }
  const slope = (x: number): number => (x * x) / (2 * radius * length);
  const cosine = (x: number): number => {
    const u = slope(x);
    return kind === 'cubic' ? 1 / Math.sqrt(1 + u * u) : Math.sqrt(1 - u * u);
  };
  const curvature = (x: number): number => {
    const c = cosine(x);
    return (x / (radius * length)) * (kind === 'cubic' ? c * c * c : 1);
  };
  return Array.from({ length: pieces }, (_, k) => {
    const [from, to] = [(k * length) / pieces, ((k + 1) * length) / pieces];
    const run = integrate((x) => 1 / cosine(x), from, to, rule);
    return transition(run, curvature(from), curvature(to));
  });
}
