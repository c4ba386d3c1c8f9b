import { gaussLegendre } from '../../math/index.ts';

/**
 * Displacement along a panel: a stretch whose curvature is linear in its length and that turns little.
 *
 * About the middle of a stretch of length 2h the heading is φ + κv + σv²/2; the odd part of the integrand drops out and
 *   displacement = e^{iφ} · 2h · ∫₀¹ cos(p·u) · e^{iqu²} du,  p = κh, q = σh²/2,
 * without the cancellation that the Fresnel form suffers when the sharpness σ is small. A six-point Gauss rule over [-1, 1]
 * first errs at u¹², by 3.7e-4 of that term's coefficient. Curvature times h within HALF_TURN_LIMIT all over the panel means
 * p + 2q within it too, so the coefficient is at most q⁶/6! and the error 1e-16 of the panel. All angles are then small
 * enough for short Taylor series in place of sines and cosines.
 */
export const HALF_TURN_LIMIT = 0.05;

const rule = gaussLegendre(6);
const [U0, U1, U2] = rule.nodes.subarray(3).map((u) => u * u);
const [W0, W1, W2] = rule.weights.subarray(3);

/** cos x by x² for |x| <= 0.05: the first term left out is 3e-20. Multiplied, not divided, because this is the hot loop. */
const cosine = (xx: number): number =>
  1 - xx * (1 / 2) * (1 - xx * (1 / 12) * (1 - xx * (1 / 30) * (1 - xx * (1 / 56))));

/** sin x / x by x² for |x| <= 0.05: the first term left out is 3e-21. */
const sineOverAngle = (xx: number): number =>
  1 - xx * (1 / 6) * (1 - xx * (1 / 20) * (1 - xx * (1 / 42) * (1 - xx * (1 / 72))));

/**
 * Writes into `out` the displacement over the first `length` of a panel that starts with `curvature` and has dκ/ds
 * `sharpness`, within the limit: x along the heading at the panel's start, y to its left.
 */
export function panelDisplacement(
  length: number,
  curvature: number,
  sharpness: number,
  out: { x: number; y: number },
): void {
  const h = length / 2;
  let ahead: number;
  let left: number;
  if (sharpness === 0) {
    // The chord of an arc.
    const p = curvature * h;
    ahead = length * sineOverAngle(p * p);
    left = 0;
  } else {
    const p = (curvature + sharpness * h) * h;
    const pp = p * p;
    const q = 0.5 * sharpness * h * h;
    const g0 = W0 * cosine(pp * U0);
    const g1 = W1 * cosine(pp * U1);
    const g2 = W2 * cosine(pp * U2);
    const q0 = q * U0;
    const q1 = q * U1;
    const q2 = q * U2;
    ahead = length * (g0 * cosine(q0 * q0) + g1 * cosine(q1 * q1) + g2 * cosine(q2 * q2));
    left =
      length * (g0 * q0 * sineOverAngle(q0 * q0) + g1 * q1 * sineOverAngle(q1 * q1) + g2 * q2 * sineOverAngle(q2 * q2));
  }
  // From the heading at the middle back to the heading at the start.
  const turn = h * (curvature + 0.5 * sharpness * h);
  const cos = cosine(turn * turn);
  const sin = turn * sineOverAngle(turn * turn);
  out.x = ahead * cos - left * sin;
  out.y = ahead * sin + left * cos;
}
