/** Lettering in the middle of a stretch, px: `width` wide about `x`, within `from` and `to`. */
export interface InStretch {
  readonly x: number;
  readonly width: number;
  readonly from: number;
  readonly to: number;
}

/** Between lettering and a line beside it, px. */
const clear = 4;

/** Where the middle of lettering goes so that a line at `line` does not cross it: as near to its own place as the stretch allows; null where it has no room. */
export function asideOf({ x, width, from, to }: InStretch, line: number): number | null {
  const reach = width / 2 + clear;
  if (Number.isNaN(line) || Math.abs(line - x) >= reach) return x;
  const places = [line - reach, line + reach].filter((at) => at - width / 2 >= from && at + width / 2 <= to);
  return places.sort((a, b) => Math.abs(a - x) - Math.abs(b - x))[0] ?? null;
}
