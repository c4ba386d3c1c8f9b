/** Ends of a scale. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** What some values are told apart from one by, as a share of the greatest: less is one value. */
const alike = 1e-6;

/** The span of some values with a share of it kept free at either end; one value alone stands in the middle. Null where there is none. */
export function spanOf(values: readonly (number | null)[], kept: number): Span | null {
  const known = values.flatMap((value) => (value === null ? [] : [value]));
  if (known.length === 0) return null;
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const greatest = Math.max(Math.abs(low), Math.abs(high));
  if (high - low <= alike * greatest || greatest === 0) {
    const by = greatest === 0 ? 1 : 0.1 * greatest;
    return { low: low - by, high: high + by };
  }
  const room = kept * (high - low);
  return { low: low - room, high: high + room };
}

/** The least of 1, 2 or 5 times a power of ten that is no less than so much. */
export function roundStep(least: number): number {
  let power = 1;
  while (power > least) power /= 10;
  while (power * 10 <= least) power *= 10;
  return [1, 2, 5, 10].map((times) => times * power).find((one) => one >= least * (1 - rounding)) ?? least;
}

/** What binary fractions of a round number are off by. */
const rounding = 1e-9;

/** Round values within a span, 1, 2 or 5 times a power of ten apart: at most so many and one. */
export function evenTicks({ low, high }: Span, most: number): number[] {
  const step = roundStep((high - low) / most);
  const first = Math.ceil(low / step - rounding);
  const last = Math.floor(high / step + rounding);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => Number(((first + k) * step).toPrecision(12)));
}
