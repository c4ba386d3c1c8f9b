import type { Scale } from './scales.ts';

/** Least mass of a vehicle, g per mm of length over buffers. Source: NEM 302 (2015). */
export const leastMassGPerMm: Readonly<Record<Scale, number>> = {
  Z: 0.12,
  N: 0.17,
  TT: 0.25,
  H0: 0.4,
  S: 0.6,
  0: 1.0,
  I: 2.0,
  II: 4.0,
};

/** Least mass (kg) of a vehicle of the given length over buffers (m): g/mm is kg/m. Source: NEM 302 (2015). */
export const leastMass = (scale: Scale, lengthOverBuffers: number): number =>
  leastMassGPerMm[scale] * lengthOverBuffers;
