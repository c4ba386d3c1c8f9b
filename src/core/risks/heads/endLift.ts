import { atan, tan } from '../../math/index.ts';
import type { End } from '../../stock/index.ts';
import type { Coupling, Vehicle } from '../../stock/types.ts';
import { standardGravity } from '../../units/index.ts';

/**
 * Upward force (N) on a head pushed with `buff` (N, horizontal) against a mate whose contact face leans: F·tan(β - φ), and
 * none while the lean β is within the friction angle φ. Source: balance on an inclined contact about to slide, as in
 * the full-size rule that a centre coupler lifts its vehicle once N·sin β - μ·N·cos β exceeds the weight on it.
 */
export function contactLift(buff: number, faceTilt: number, faceFriction: number): number {
  return Math.max(0, buff * tan(faceTilt - atan(faceFriction)));
}

/**
 * Upward force (N) on a head pushed with `buff` (N) when its mate's motion drags it up along the leaning face: F·tan(β + φ), the bound of what friction can add; without end where lean
 * and friction angle together reach upright. Source: the same balance with the friction turned round.
 */
export function draggedLift(buff: number, faceTilt: number, faceFriction: number): number {
  const steepness = faceTilt + atan(faceFriction);
  return steepness >= Math.PI / 2 ? Number.POSITIVE_INFINITY : buff * tan(steepness);
}

/** Lean (rad) and friction of a pair of faces: the steeper lean and the slipperier face, as neither half knows its mate. */
export function contactFaces(a: Coupling, b: Coupling): { readonly tilt: number; readonly friction: number } {
  return { tilt: Math.max(a.faceTilt, b.faceTilt), friction: Math.min(a.faceFriction, b.faceFriction) };
}

/**
 * Upward force at the head (N) that takes an end's running points off the rail: the vehicle's weight about its far running point,
 * over the head's distance from there.
 */
export function endHold(vehicle: Vehicle, end: End): number {
  const front = end === 'front';
  const { pivotSpacing: spacing, massAhead, mass } = vehicle;
  const { coupling } = front ? vehicle.front : vehicle.rear;
  const overhang = front ? vehicle.frontOverhang : vehicle.rearOverhang;
  const massArm = spacing / 2 + (front ? massAhead : -massAhead);
  const headArm = spacing + overhang - coupling.pivotInset + coupling.reach;
  return (mass * standardGravity * massArm) / headArm;
}
