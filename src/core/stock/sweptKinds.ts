import type { Vehicle } from './types.ts';

/** One of every kind of vehicle that sweeps otherwise than the others. */
export function sweptKinds(vehicles: readonly Vehicle[]): Vehicle[] {
  const kinds = new Map<string, Vehicle>();
  for (const vehicle of vehicles) {
    const { pivotSpacing, frontOverhang, rearOverhang, bodyWidth } = vehicle;
    kinds.set([pivotSpacing, frontOverhang, rearOverhang, bodyWidth].join(' '), vehicle);
  }
  return [...kinds.values()];
}
