import { AveragedForce, averagedSide, springEnergy } from './contactSide.ts';

export { AveragedForce };

/** A second, as a rule stiffer, stage of a joint's spring. */
export interface SpringStage {
  /** Penetration beyond the play from which it acts, m, ≥ 0. */
  readonly from: number;
  /** N/m from there on. */
  readonly stiffness: number;
}

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
  /** Second stage of the spring in draft and in buff; absent: one stage all the way. */
  readonly draftSecond?: SpringStage;
  readonly buffSecond?: SpringStage;
  /** Couples again when its faces push each other after it has let go. */
  readonly recouples?: boolean;
}

/**
 * Average force of a joint over a step in which its extension runs from `e0` at rate `r`, draft positive.
 *
 * @param e0 extension from the free length at the start of the step, m
 * @param r rate of extension, m/s, constant over the step
 * @param h step, s
 */
export function averagedForce(law: JointLaw, e0: number, r: number, h: number, out: AveragedForce): AveragedForce {
  const { draftStiffness, buffStiffness, damping, draftPlay, buffPlay, draftSecond, buffSecond } = law;
  averagedSide(
    draftStiffness,
    draftSecond?.from ?? Number.POSITIVE_INFINITY,
    draftSecond?.stiffness ?? draftStiffness,
    damping,
    e0 - draftPlay,
    r,
    h,
    out,
  );
  const draft = out.force;
  const draftSlope = out.slope;
  averagedSide(
    buffStiffness,
    buffSecond?.from ?? Number.POSITIVE_INFINITY,
    buffSecond?.stiffness ?? buffStiffness,
    damping,
    -e0 - buffPlay,
    -r,
    h,
    out,
  );
  out.force = draft - out.force;
  out.slope = draftSlope + out.slope;
  return out;
}

/** Energy stored in a joint at extension `e`, J. */
export function storedEnergy(law: JointLaw, e: number): number {
  const { draftStiffness, buffStiffness, draftPlay, buffPlay, draftSecond, buffSecond } = law;
  const none = Number.POSITIVE_INFINITY;
  return (
    springEnergy(draftStiffness, draftSecond?.from ?? none, draftSecond?.stiffness ?? 0, e - draftPlay) +
    springEnergy(buffStiffness, buffSecond?.from ?? none, buffSecond?.stiffness ?? 0, -e - buffPlay)
  );
}
