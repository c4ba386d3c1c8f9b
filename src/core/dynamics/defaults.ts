import type { ForceModel, RunOptions } from './types.ts';

/**
 * Force constants that belong to no vehicle. Each row: value, plausible range, where it comes from.
 *
 * - gravity 9.80665 m/s²: standard value (CGPM 1901).
 * - curveFriction 0.20 (0.10 to 0.30): sliding of steel on nickel silver; adhesion trials on tilting tracks give 0.20 to
 *   0.30, wheels that are not clean less.
 * - curveFactor 1 (0.4 to 2): no two measurements of curve drag at model scale agree, see docs/mechanics/forces.md.
 * - flangeFriction 0.15 (0.05 to 0.30): friction coefficient times sliding ratio at the flange; an assumption.
 */
export const defaultForceModel: ForceModel = {
  gravity: 9.80665,
  curveFriction: 0.2,
  curveFactor: 1,
  flangeFriction: 0.15,
};

/** A millisecond resolves the stiffest usual coupling (about 17 ms a swing) and the method is stable at any step. */
export const defaultRunOptions: RunOptions = {
  step: 0.001,
  frameInterval: 0.02,
  forces: defaultForceModel,
  stallPatience: 1,
};
