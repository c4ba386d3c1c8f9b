import type { Scale } from './scales.ts';

/** Where buffers sit, mm: between centres, centre above rail top, and the norm's least distance u. */
export interface BufferPlaceMm {
  readonly spacing: number;
  readonly height: number;
  readonly uMin: number;
}

/** Buffer places by scale, mm. Source: NEM 303 (2015). */
export const bufferPlaceMm: Readonly<Record<Exclude<Scale, 'II'>, BufferPlaceMm>> = {
  Z: { spacing: 8.0, height: 5.0, uMin: 3.8 },
  N: { spacing: 11.0, height: 6.7, uMin: 5.2 },
  TT: { spacing: 14.5, height: 8.9, uMin: 6.9 },
  H0: { spacing: 20.0, height: 12.2, uMin: 9.6 },
  S: { spacing: 27.5, height: 16.5, uMin: 13.1 },
  0: { spacing: 39.5, height: 23.6, uMin: 18.5 },
  I: { spacing: 54.5, height: 33.0, uMin: 26.0 },
};

/** How far H0 buffers may be off their place either way, mm. Source: NEM 303 (2015). */
export const bufferToleranceH0Mm = { spacing: 0.2, height: 0.5 } as const;

/**
 * Full-size buffer heads, mm: widths of round and of flat-topped heads, of older ones on vehicles up to 14.5 m and beyond, height of the
 * flat-topped, radius of the dish. Source: NEM 303 (2015).
 */
export const prototypeHeadMm = {
  roundWidths: [450, 550],
  flatToppedWidths: [550, 650],
  flatToppedHeights: [340, 360],
  olderWidthsTo14500: [340, 370],
  olderWidths: [450, 500],
  dishRadius: 1500,
} as const;
