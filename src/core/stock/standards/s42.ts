import type { Scale } from './scales.ts';

/** Wheelset limits, mm: K over check face and flange, B back to back, N width of tyre, D depth of flange. */
export interface WheelLimitsMm {
  readonly checkMost: number;
  readonly backToBackLeast: number;
  readonly tyreLeast: number;
  readonly flangeDepthMost: number;
}

/** By scale; H0 is that standard's HO. Source: NMRA S-4.2. */
export const wheelLimitsMm: Readonly<Record<Exclude<Scale, 'I' | 'II'>, WheelLimitsMm>> = {
  Z: { checkMost: 5.99, backToBackLeast: 5.54, tyreLeast: 1.35, flangeDepthMost: 0.51 },
  N: { checkMost: 8.2, backToBackLeast: 7.54, tyreLeast: 1.8, flangeDepthMost: 0.56 },
  TT: { checkMost: 11.1, backToBackLeast: 10.3, tyreLeast: 1.96, flangeDepthMost: 0.66 },
  H0: { checkMost: 15.4, backToBackLeast: 14.4, tyreLeast: 2.74, flangeDepthMost: 0.71 },
  S: { checkMost: 21.31, backToBackLeast: 20.32, tyreLeast: 2.74, flangeDepthMost: 0.76 },
  0: { checkMost: 29.9, backToBackLeast: 28.4, tyreLeast: 4.37, flangeDepthMost: 1.19 },
};
