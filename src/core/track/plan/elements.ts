import { TrackError } from '../problem.ts';
import type { PlanElement } from '../types.ts';

function refuseUnless(holds: boolean, sentence: string): void {
  if (!holds) throw new TrackError('bad-element', sentence);
}

/** A straight of plan `length`, m. Throws RangeError when the length is negative or not finite. */
export function straight(length: number): PlanElement {
  refuseUnless(length >= 0 && Number.isFinite(length), `A straight cannot be ${length} m long.`);
  return { kind: 'straight', length, startCurvature: 0, endCurvature: 0 };
}

/** A circular arc of `radius`, m, turning through `angle`, rad, left positive. Throws RangeError unless the radius is positive. */
export function arc(radius: number, angle: number): PlanElement {
  refuseUnless(
    radius > 0 && Number.isFinite(radius),
    `An arc cannot have a radius of ${radius} m: give a positive one.`,
  );
  refuseUnless(Number.isFinite(angle), `An arc cannot turn through ${angle} rad.`);
  const curvature = Math.sign(angle) / radius;
  return { kind: 'arc', length: radius * Math.abs(angle), startCurvature: curvature, endCurvature: curvature };
}

/** A helix in plan: an arc of `radius`, m, over any number of `turns`, left positive. The profile makes it climb. */
export function helix(radius: number, turns: number): PlanElement {
  return { ...arc(radius, turns * 2 * Math.PI), kind: 'helix' };
}

/** A clothoid of plan `length`, m, whose curvature runs linearly from `startCurvature` to `endCurvature`, 1/m, left positive. */
export function transition(length: number, startCurvature: number, endCurvature: number): PlanElement {
  refuseUnless(length >= 0 && Number.isFinite(length), `A transition cannot be ${length} m long.`);
  refuseUnless(
    Number.isFinite(startCurvature) && Number.isFinite(endCurvature),
    `A transition cannot run from curvature ${startCurvature} to ${endCurvature} 1/m.`,
  );
  return { kind: 'transition', length, startCurvature, endCurvature };
}
