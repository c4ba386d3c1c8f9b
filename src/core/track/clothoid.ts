import { gaussLegendre } from '../math/index.ts';

/**
 * Displacement along a curve whose curvature is linear in its length, without the cancellation that the Fresnel form
 * suffers when the sharpness is small.
 *
 * About the middle of a panel of length 2h the heading is φ + κv + σv²/2; the odd part of the integrand drops out and
 *   displacement = e^{iφ} · 2h · ∫₀¹ cos(p·u) · e^{iqu²} du,  p = κh, q = σh²/2.
 * A six-point Gauss rule over [-1, 1] first errs at u¹², by 3.7e-4 of that term's coefficient. Curvature times h within
 * HALF_TURN_LIMIT all over the panel means p + 2q within it too, so the coefficient is at most q⁶/6! and the error 1e-16 of
 * the panel. The angles are then small enough for short Taylor series in place of library cosines.
 */
export const HALF_TURN_LIMIT = 0.05;

const rule = gaussLegendre(6);
const [U0, U1, U2] = rule.nodes.subarray(3).map((u) => u * u);
const [W0, W1, W2] = rule.weights.subarray(3);

/** cos x by x² for |x| <= 0.05: the first term left out is 3e-20. Multiplied, not divided, because this is the hot loop. */
const cosine = (xx: number): number =>
  1 - xx * (1 / 2) * (1 - xx * (1 / 12) * (1 - xx * (1 / 30) * (1 - xx * (1 / 56))));

/** sin x / x by x² for |x| <= 0.025: the first term left out is 4e-19. */
const sineOverAngle = (xx: number): number => 1 - xx * (1 / 6) * (1 - xx * (1 / 20) * (1 - xx * (1 / 42)));

/**
 * Writes into `out` the displacement over a panel of `length` 2h, with curvature `middle` at its middle and dκ/ds `sharpness`
 * within the limit: x along the heading at the panel's middle, y to its left.
 */
export function panelDisplacement(
  length: number,
  middle: number,
  sharpness: number,
  out: { x: number; y: number },
): void {
  const h = length / 2;
  const pp = middle * middle * h * h;
  const q = 0.5 * sharpness * h * h;
  const g0 = W0 * cosine(pp * U0);
  const g1 = W1 * cosine(pp * U1);
  const g2 = W2 * cosine(pp * U2);
  const q0 = q * U0;
  const q1 = q * U1;
  const q2 = q * U2;
  out.x = length * (g0 * cosine(q0 * q0) + g1 * cosine(q1 * q1) + g2 * cosine(q2 * q2));
  out.y =
    length * (g0 * q0 * sineOverAngle(q0 * q0) + g1 * q1 * sineOverAngle(q1 * q1) + g2 * q2 * sineOverAngle(q2 * q2));
}
