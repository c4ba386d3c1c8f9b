/** `value` held within [low, high]; NaN stays NaN. */
export const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(value, high));
