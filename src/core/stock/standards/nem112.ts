/** Spacing of straight tracks, H0, mm: on the line and in stations. Source: a club's print of the NEM 112 table. */
export const straightSpacingH0Mm = { line: 46, station: 52 } as const;

/** Spacing of straight tracks, N, mm. Source: an N-gauge planning page quoting NEM 112. */
export const straightSpacingNMm = { line: 25, station: 28 } as const;

/** Overhang allowed for and spacing of curved tracks for long coaches, H0, mm. Source: a club's print of the NEM 112 table. */
export const curvedSpacingH0Mm: readonly {
  readonly radiusMm: number;
  readonly overhangMm: number;
  readonly spacingMm: number;
}[] = [
  { radiusMm: 400, overhangMm: 14, spacingMm: 64 },
  { radiusMm: 450, overhangMm: 12, spacingMm: 61 },
  { radiusMm: 500, overhangMm: 11, spacingMm: 59 },
  { radiusMm: 600, overhangMm: 9, spacingMm: 55 },
  { radiusMm: 700, overhangMm: 7, spacingMm: 52 },
  { radiusMm: 800, overhangMm: 6, spacingMm: 50 },
  { radiusMm: 900, overhangMm: 5, spacingMm: 48 },
  { radiusMm: 1000, overhangMm: 4, spacingMm: 47 },
  { radiusMm: 1100, overhangMm: 4, spacingMm: 46 },
];

/** Metres times 1000 may fall short of a printed radius by rounding, mm. */
const rounding = 1e-9;

/**
 * Spacing (m) of parallel curved tracks in H0 on a given radius (m): the row of the next smaller radius printed, which errs
 * to the wide side; the straight line's from the last row on. Null below the table. Source: NEM 112.
 */
export function trackSpacingH0(radius: number): number | null {
  const row = curvedSpacingH0Mm.filter((r) => r.radiusMm <= radius * 1000 + rounding).at(-1);
  return row === undefined ? null : row.spacingMm / 1000;
}
