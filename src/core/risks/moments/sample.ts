import type { Governing, Sample, ValuePart } from '../types.ts';

/** A sample with nothing in it yet. */
export const newSample = (): Sample => ({ value: Number.NaN, limit: Number.NaN, margin: Number.NaN, governing: null });

/** Marks that a risk has nothing to say of this subject at this moment. */
export function sayNothing(out: Sample): void {
  out.value = Number.NaN;
  out.limit = Number.NaN;
  out.margin = Number.NaN;
  out.governing = null;
}

/** Writes a sample whose margin is simply what is left between value and limit. */
export function saySpare(out: Sample, value: number, limit: number, governing: Governing): void {
  out.value = value;
  out.limit = limit;
  out.margin = limit - value;
  out.governing = governing;
}

/**
 * Margin [least, greatest] when every tolerance adds up one way and the other, from the `tolerance` part; null without
 * one. The greatest margin is the whole limit: a tolerance can bring two heads level, not better than level.
 */
export function toleranceRange(sample: Sample, parts: readonly ValuePart[]): readonly [number, number] | null {
  const tolerance = parts.find((part) => part.label === 'tolerance');
  if (tolerance === undefined) return null;
  return [sample.margin - tolerance.value, Math.min(sample.margin + tolerance.value, sample.limit)];
}
