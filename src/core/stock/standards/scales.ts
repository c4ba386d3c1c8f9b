/** The European norms' scales, by the name they print. */
export type Scale = 'Z' | 'N' | 'TT' | 'H0' | 'S' | '0' | 'I' | 'II';

/**
 * Track gauge by scale, mm: the eight gauges that the norms' tables run over.
 * Source: NEM 113 (2016) and NEM 114 (2007), table heads.
 */
export const gaugeMm: Readonly<Record<Scale, number>> = {
  Z: 6.5,
  N: 9,
  TT: 12,
  H0: 16.5,
  S: 22.5,
  0: 32,
  I: 45,
  II: 64,
};

/** Gauge limits of American track, mm. Source: NMRA S-3.2, standard scale trackwork. */
export const gaugeLimitsMm: Readonly<Record<'HO' | 'S' | 'O', readonly [least: number, greatest: number]>> = {
  HO: [16.5, 17.1],
  S: [22.42, 22.99],
  O: [31.8, 32.6],
};

/** Curve radii of British 00 set track, innermost first, mm. Source: a builder's published measurements, 2007; common practice. */
export const setTrackRadii00Mm: readonly number[] = [371, 438, 505, 572];
