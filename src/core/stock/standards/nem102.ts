import type { Scale } from './scales.ts';

/** Dimensions of the structure gauge on straight track, mm: B lengths across, H lengths above rail top. */
export interface StructureGaugeMm {
  readonly bl1: number;
  readonly bl2: number;
  readonly bl3: number;
  readonly hl1: number;
  readonly hl2: number;
  readonly hl3: number;
  /** Clear height without overhead wire. */
  readonly hl4: number;
  readonly bl4: number;
  readonly bl5: number;
  /** Lowest wire, single wire; a catenary's own depth comes on top. */
  readonly hl5: number;
}

/** Rows run BL1 BL2 BL3 HL1 HL2 HL3 HL4 BL4 BL5 HL5 as the norm prints them. */
const row = (...v: readonly [number, number, number, number, number, number, number, number, number, number]) => ({
  bl1: v[0],
  bl2: v[1],
  bl3: v[2],
  hl1: v[3],
  hl2: v[4],
  hl3: v[5],
  hl4: v[6],
  bl4: v[7],
  bl5: v[8],
  hl5: v[9],
});

/** Structure gauge on straight track, mm. Source: NEM 102 (2017). */
export const structureGaugeMm: Readonly<Record<Exclude<Scale, 'II'>, StructureGaugeMm>> = {
  Z: row(20, 14, 18, 4.5, 6, 18, 24, 16, 13, 27),
  N: row(27, 18, 25, 6, 8, 25, 33, 22, 18, 37),
  TT: row(36, 24, 32, 8, 10, 33, 43, 28, 22, 48),
  H0: row(48, 32, 42, 11, 14, 45, 59, 38, 30, 65),
  S: row(66, 44, 57, 15, 19, 60, 78, 50, 38, 87),
  0: row(94, 63, 82, 21, 27, 85, 109, 68, 52, 120),
  I: row(130, 87, 114, 30, 38, 118, 150, 93, 71, 165),
};

/** Clear height (m) from rail top to whatever is above, with or without an overhead wire. Source: NEM 102 (2017). */
export const clearHeight = (scale: Exclude<Scale, 'II'>, wire: boolean): number =>
  (wire ? structureGaugeMm[scale].hl5 : structureGaugeMm[scale].hl4) / 1000;
