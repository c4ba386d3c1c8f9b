/**
 * The force of one coupling joint, averaged over a time step.
 *
 * The joint is free within its slack. Beyond it a spring and a damper act side by side, but contact can only push in
 * buff and only pull in draft: where the damper would reverse the force, the force is zero and contact has ended. Over
 * a step the extension runs linearly, e(t) = e0 + r·t, so the average of the force is known in closed form, touch and
 * release inside the step included. That makes the average an exact energy balance (F̄·Δe is the change of stored
 * energy plus what the damper took) and a continuous, never-decreasing function of the rate r, which is what lets the
 * chain solver find its one solution. Derivation: docs/mechanics/couplers.md.
 */
export interface JointLaw {
  /** N/m in draft and in buff. */
  readonly draftStiffness: number;
  readonly buffStiffness: number;
  /** N·s/m */
  readonly damping: number;
  /** Stretch from the free length at which draft begins, and shortening at which buff begins, m, both ≥ 0. */
  readonly draftPlay: number;
  readonly buffPlay: number;
}

/** Force averaged over the step, N, and its derivative with respect to the rate, N·s/m. */
export interface AveragedForce {
  force: number;
  slope: number;
}

/**
 * Average force of a joint over a step in which its extension runs from `e0` at rate `r`, draft positive.
 *
 * @param e0 extension from the free length at the start of the step, m
 * @param r rate of extension, m/s, constant over the step
 * @param h step, s
 */
export function averagedForce(law: JointLaw, e0: number, r: number, h: number, out: AveragedForce): AveragedForce {
  const beyondDraft = e0 - law.draftPlay;
  const beyondBuff = -e0 - law.buffPlay;
  oneSided(law.draftStiffness, law.damping, beyondDraft, r, h, out);
  const draft = out.force;
  const draftSlope = out.slope;
  oneSided(law.buffStiffness, law.damping, beyondBuff, -r, h, out);
  out.force = draft - out.force;
  out.slope = draftSlope + out.slope;
  return out;
}

/** One side alone: penetration x0 growing at rate u, contact force never negative. Slope is d(force)/du. */
function oneSided(k: number, c: number, x0: number, u: number, h: number, out: AveragedForce): void {
  const x1 = x0 + u * h;
  if (x0 >= 0) {
    const f0 = k * x0 + c * u;
    const f1 = k * x1 + c * u;
    if (f0 >= 0 && f1 >= 0) {
      out.force = 0.5 * (f0 + f1);
      out.slope = 0.5 * k * h + c;
    } else if (f0 > 0) {
      // Unloading to zero within the step: the triangle under f0, which falls at k·|u|.
      const fall = -k * u * h;
      out.force = (0.5 * f0 * f0) / fall;
      out.slope = (f0 * c) / fall - out.force / u;
    } else {
      out.force = 0;
      out.slope = 0;
    }
  } else if (x1 > 0) {
    // Touch within the step: in contact for the share x1/(u·h) of it.
    // Written so that no product of small numbers stands below a line: rates of 1e-300 m/s must not divide by zero.
    const share = x1 / (x1 - x0);
    out.force = share * (c * u + 0.5 * k * x1);
    out.slope = (1 - share) * (c + (0.5 * k * x1) / u) + share * (c + 0.5 * k * h);
  } else {
    out.force = 0;
    out.slope = 0;
  }
}

/** Energy stored in a joint at extension `e`, J. */
export function storedEnergy(law: JointLaw, e: number): number {
  const draft = e - law.draftPlay;
  if (draft > 0) return 0.5 * law.draftStiffness * draft * draft;
  const buff = -e - law.buffPlay;
  return buff > 0 ? 0.5 * law.buffStiffness * buff * buff : 0;
}
