import { gaugeMm, type Scale } from './scales.ts';

/** Greatest cant, outer rail above inner, by scale, mm. Source: NEM 114 (2007). */
export const mostCantMm: Readonly<Record<Scale, number>> = {
  Z: 0.4,
  N: 0.6,
  TT: 0.8,
  H0: 1,
  S: 1.5,
  0: 2,
  I: 3,
  II: 4,
};

/** Greatest cant as a share of the gauge. Source: NEM 114 (2007); its table is this, rounded down. */
const mostShare = 1 / 15;

/** A gauge this near to one of the norm's is that one, mm. */
const sameGaugeMm = 0.01;

/** Greatest cant (m) on a track of the given gauge (m): as printed for the norm's own gauges, a fifteenth of any other. Source: NEM 114 (2007). */
export function mostCant(gauge: number): number {
  const scales = Object.keys(gaugeMm) as Scale[];
  const scale = scales.find((one) => Math.abs(gaugeMm[one] - gauge * 1000) < sameGaugeMm);
  return scale === undefined ? gauge * mostShare : mostCantMm[scale] / 1000;
}
