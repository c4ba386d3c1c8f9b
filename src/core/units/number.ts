/** Stands before a unit. */
export const thinSpace = '\u2009';

export interface NumberStyle {
  /** Decimals. */
  readonly digits: number;
  /** Leave out zeros at the end of the decimals. */
  readonly trim?: boolean;
  /** A plus before what is above zero. */
  readonly signed?: boolean;
}

/** Writes a number with a true minus and never a minus zero. Not finite: an en dash. */
export function formatNumber(value: number, style: NumberStyle): string {
  if (!Number.isFinite(value)) return '–';
  let digits = Math.abs(value).toFixed(style.digits);
  if (style.trim && digits.includes('.')) digits = digits.replace(/\.?0+$/, '');
  if (Number(digits) === 0) return digits;
  if (value < 0) return `−${digits}`;
  return style.signed ? `+${digits}` : digits;
}
