/** A number without the dust of binary fractions: to a billionth, which is a few nanometres even for turns of a helix. */
export const tidy = (value: number): number => Math.round(value * 1e9) / 1e9;

/** A length in words, mm: no more digits than a rule shows. */
export const mmText = (mm: number): string => `${Math.round(mm * 10) / 10} mm`;
