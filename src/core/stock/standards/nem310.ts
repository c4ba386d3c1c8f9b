/** Wheelset dimensions, mm, least and greatest: K over check face and flange, B back to back. */
export interface WheelsetMm {
  readonly check: readonly [number, number];
  readonly backToBack: readonly [number, number];
}

/** By gauge in mm. Source: NEM 310 (2009). */
export const wheelsetMm: Readonly<Record<6.5 | 9 | 12 | 16.5, WheelsetMm>> = {
  6.5: { check: [5.7, 5.9], backToBack: [5.25, 5.5] },
  9: { check: [7.9, 8.1], backToBack: [7.4, 7.6] },
  12: { check: [10.8, 11.0], backToBack: [10.2, 10.4] },
  16.5: { check: [15.1, 15.3], backToBack: [14.4, 14.6] },
};

/** Flange thickness T and depth D of H0 wheels, mm. Source: NEM 310 (2009). */
export const flangeH0Mm = { thickness: [0.7, 0.9], depth: [0.6, 1.2] } as const;
