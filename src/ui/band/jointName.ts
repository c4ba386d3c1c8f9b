import type { Train } from '../../core/stock/types.ts';

/** Joints are counted from 1 at the leading end, as a builder would. */
export function jointName(train: Train, joint: number): string {
  return `${joint + 1} ${train.vehicles[joint].name}–${train.vehicles[joint + 1].name}`;
}
