/** Coarse pitches of ISO 261 (general-purpose metric threads, first choice), m. */
export const coarsePitches = {
  M4: 0.0007,
  M5: 0.0008,
  M6: 0.001,
  M8: 0.00125,
  M10: 0.0015,
  M12: 0.00175,
} as const;

export type Thread = keyof typeof coarsePitches;
