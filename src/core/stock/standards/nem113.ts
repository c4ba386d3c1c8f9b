import { gaugeMm, type Scale } from './scales.ts';

/** Shift f between straight and arc that an easement of fixed shift makes, by scale, mm. Source: NEM 113 (2016). */
export const easementShiftMm: Readonly<Record<Scale, number>> = {
  Z: 3,
  N: 4,
  TT: 6,
  H0: 9,
  S: 13,
  0: 18,
  I: 25,
  II: 36,
};

/** Length (m) of the easement of fixed shift into a curve of the given radius (m): √(24 f R). Source: NEM 113 (2016). */
export const easementLength = (scale: Scale, radius: number): number =>
  Math.sqrt((24 * easementShiftMm[scale] * radius) / 1000);

/** Radius (m) above which the norm asks for no easement: 60 gauges. Source: NEM 113 (2016). */
export const radiusWithoutEasement = (scale: Scale): number => (60 * gaugeMm[scale]) / 1000;
