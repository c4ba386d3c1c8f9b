import type { Probe } from '../types.ts';
import { type Measure, type MeasureId, measureById } from './measures.ts';

/** What a person asks of a measure: no more, or no less, than so much; SI. */
export interface MeasureLimit {
  readonly measure: MeasureId;
  readonly bound: 'most' | 'least';
  readonly amount: number;
}

/** The side of a measure that a limit is usually put on: the worse one. */
export const usualBound = ({ better }: Measure): MeasureLimit['bound'] => (better === 'less' ? 'most' : 'least');

/** Beyond a limit by less than this share of it is on it: what binary fractions of 1.6 m and 1600 mm differ by. */
const rounding = 1e-9;

/** Whether a railway keeps a limit; one that has nothing to say of the measure does. */
export function keepsLimit(probe: Probe, { measure, bound, amount }: MeasureLimit): boolean {
  const value = measureById(measure).value(probe);
  if (value === null) return true;
  const spare = bound === 'most' ? amount - value : value - amount;
  return spare >= -rounding * Math.abs(amount);
}

/** The limits that a railway misses. */
export const missedLimits = (probe: Probe, limits: readonly MeasureLimit[]): readonly MeasureLimit[] =>
  limits.filter((limit) => !keepsLimit(probe, limit));
