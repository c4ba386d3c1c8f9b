/** Coach groups by body length and distance between bogie centres. */
export type CoachGroup = 'A' | 'B' | 'C';

/** Longest prototype of each group, m: body and bogie centres. Source: NEM 103 (2016). */
export const prototypeCoach: Readonly<Record<CoachGroup, { readonly body: number; readonly bogieCentres: number }>> = {
  A: { body: 20.0, bogieCentres: 14.0 },
  B: { body: 24.2, bogieCentres: 17.2 },
  C: { body: 27.2, bogieCentres: 19.5 },
};

/** Longest model body of each group, mm. Source: NEM 103 (2016). */
export const modelBodyMm: Readonly<Record<'N' | 'TT' | 'H0' | '0', Readonly<Record<CoachGroup, number>>>> = {
  N: { A: 125, B: 151, C: 170 },
  TT: { A: 167, B: 202, C: 227 },
  H0: { A: 230, B: 278, C: 313 },
  0: { A: 460, B: 556, C: 625 },
};

/**
 * Widening E of the structure gauge to each side in curves, H0, mm, by radius in mm. Null where the norm allows no such coach.
 * Source: NEM 103 (2016). It is less than the geometric throw by 1 to 2.5 mm, which the gauge's own play takes up.
 */
export const wideningH0Mm: readonly {
  readonly radiusMm: number;
  readonly A: number;
  readonly B: number;
  readonly C: number | null;
}[] = [
  { radiusMm: 400, A: 7, B: 11, C: null },
  { radiusMm: 450, A: 6, B: 9, C: 12 },
  { radiusMm: 500, A: 5, B: 8, C: 11 },
  { radiusMm: 550, A: 4, B: 7, C: 10 },
  { radiusMm: 600, A: 4, B: 6, C: 9 },
  { radiusMm: 700, A: 3, B: 5, C: 7 },
  { radiusMm: 800, A: 3, B: 4, C: 6 },
  { radiusMm: 900, A: 2, B: 3, C: 5 },
  { radiusMm: 1000, A: 2, B: 3, C: 4 },
  { radiusMm: 1200, A: 1, B: 2, C: 3 },
  { radiusMm: 1400, A: 1, B: 2, C: 2 },
  { radiusMm: 1600, A: 0, B: 1, C: 2 },
  { radiusMm: 1800, A: 0, B: 1, C: 1 },
  { radiusMm: 2000, A: 0, B: 0, C: 1 },
  { radiusMm: 2500, A: 0, B: 0, C: 0 },
];

/**
 * Widening (m) for a coach group on a curve of the given radius (m) in H0: the row of the next smaller radius printed, which
 * errs to the wide side. Null below the table or where the norm allows no such coach. Source: NEM 103 (2016).
 */
export function wideningH0(radius: number, group: CoachGroup): number | null {
  const row = wideningH0Mm.filter((r) => r.radiusMm <= radius * 1000 + rounding).at(-1);
  const widening = row?.[group];
  return widening === undefined || widening === null ? null : widening / 1000;
}

/** Metres times 1000 may fall short of a printed radius by rounding, mm. */
const rounding = 1e-9;
