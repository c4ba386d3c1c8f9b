import { hypot } from './elementary.ts';

/** A point or direction in the room: x east, y north, z up, metres. */
export type Vec3 = [x: number, y: number, z: number];

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const distance = (a: Vec3, b: Vec3): number => hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** `base + k * direction`. */
export const along = (base: Vec3, direction: Vec3, k: number): Vec3 => [
  base[0] + k * direction[0],
  base[1] + k * direction[1],
  base[2] + k * direction[2],
];
