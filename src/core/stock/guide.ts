import type { Coupling } from './types.ts';

/**
 * How far (m) a coupling's head is led out of its body by its guide at a swing of the shank (rad, either way); 0 without a
 * guide. With t the share of the full swing it is `lengthening·t²·(3 - 2t)`: flat on the straight, where the shank must centre, and flat at the
 * end of the slot. The curve is this project's choice; published slots differ and none was found with figures.
 */
export function guideLengthening({ guide }: Coupling, swing: number): number {
  if (guide === undefined) return 0;
  const t = Math.min(Math.abs(swing) / guide.fullSwing, 1);
  return guide.lengthening * t * t * (3 - 2 * t);
}
