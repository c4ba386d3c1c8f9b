import type { Vec3 } from '../../core/math/vec3.ts';

/**
 * How the stage is looked at: the eye swings about a target. `height` is how much of the room the picture shows from top to bottom
 * at the target's distance (m), so that zooming and changing the lens are two things.
 */
export interface Look {
  readonly target: Vec3;
  /** From the target to the eye in plan, rad counter-clockwise from east. */
  readonly azimuth: number;
  /** From the target up to the eye, rad. */
  readonly elevation: number;
  readonly height: number;
  /** Vertical angle of view, rad. */
  readonly field: number;
}

/** The eye's distance from the target, m. */
export const eyeDistance = (look: Look): number => look.height / 2 / Math.tan(look.field / 2);

/** Where the eye is, m. */
export function eyeOf(look: Look): Vec3 {
  const far = eyeDistance(look);
  const level = far * Math.cos(look.elevation);
  return [
    look.target[0] + level * Math.cos(look.azimuth),
    look.target[1] + level * Math.sin(look.azimuth),
    look.target[2] + far * Math.sin(look.elevation),
  ];
}

/** Unit vectors to the right and up in the picture, in the room. Near the zenith up stays the azimuth's far side. */
export function pictureAxes(look: Look): { readonly right: Vec3; readonly up: Vec3 } {
  const sin = Math.sin(look.elevation);
  const cos = Math.cos(look.elevation);
  const a = Math.cos(look.azimuth);
  const b = Math.sin(look.azimuth);
  return { right: [-b, a, 0], up: [-sin * a, -sin * b, cos] };
}

/** The look from an eye to a target, both in the room, m. */
export function lookBetween(eye: Vec3, target: Vec3, field: number): Look {
  const x = eye[0] - target[0];
  const y = eye[1] - target[1];
  const z = eye[2] - target[2];
  const far = Math.hypot(x, y, z);
  return {
    target,
    azimuth: Math.atan2(y, x),
    elevation: Math.atan2(z, Math.hypot(x, y)),
    height: 2 * far * Math.tan(field / 2),
    field,
  };
}

/** `angle` turned by whole turns until it lies within half a turn of `near`. */
export function nearestTurn(angle: number, near: number): number {
  return angle - 2 * Math.PI * Math.round((angle - near) / (2 * Math.PI));
}

/** A look part of the way from one to another: along one path, the size of the picture changing by equal ratios. */
export function between(a: Look, b: Look, share: number): Look {
  const mix = (from: number, to: number): number => from + (to - from) * share;
  return {
    target: [mix(a.target[0], b.target[0]), mix(a.target[1], b.target[1]), mix(a.target[2], b.target[2])],
    azimuth: mix(a.azimuth, nearestTurn(b.azimuth, a.azimuth)),
    elevation: mix(a.elevation, b.elevation),
    height: Math.exp(mix(Math.log(a.height), Math.log(b.height))),
    field: mix(a.field, b.field),
  };
}

/** Slow start, slow end: 0 to 1 for 0 to 1. */
export const easeInOut = (t: number): number => (t < 0.5 ? 4 * t * t * t : 1 - (-2 * t + 2) ** 3 / 2);
export const easeOut = (t: number): number => 1 - (1 - t) ** 3;
