import { readingRow } from '../rows.ts';
import type { Place, Reading } from '../types.ts';
import { type Candidate, type Family, fitsWell, type SlipContext } from './candidate.ts';

/** Taken one support further on or back than written: one reading, or all of them (counting from 0 instead of 1). */
export function shifted({ input, shape, others, readings, rows, normalised }: SlipContext): Family {
  const last = input.supports.length - 1;
  const candidates: Candidate[] = [];
  const movable = readings.flatMap((reading, index) => (moved(reading, 0, last) === null ? [] : [index]));
  const candidate = (indices: readonly number[], by: 1 | -1): void => {
    const instead = new Map<number, (typeof rows)[number]>();
    for (const index of indices) {
      const other = moved(readings[index], by, last);
      if (other === null) return;
      try {
        const row = readingRow(input, shape, others, other, index);
        // What else was put right about the reading stays so.
        instead.set(index, { ...row, observed: rows[index].observed, deviation: rows[index].deviation });
      } catch (error) {
        // No room for the base at the next support: then it was not read there.
        if (error instanceof RangeError) return;
        throw error;
      }
    }
    candidates.push({ kind: 'shifted', readings: indices, support: -1, at: 'readings', instead, amount: by });
  };
  for (const by of [1, -1] as const) {
    for (const index of movable) if (Math.abs(normalised[index]) > fitsWell) candidate([index], by);
    if (movable.length > 1) candidate(movable, by);
  }
  return { candidates, alternatives: 2 * movable.length + 2 };
}

/** The reading at the support `by` further on; null when it is not placed by supports or there is no such support. */
function moved(reading: Reading, by: number, last: number): Reading | null {
  const next = (place: Place): Place | null => {
    if (!('support' in place)) return null;
    const support = place.support + by;
    return support < 0 || support > last ? null : { support };
  };
  if (reading.kind === 'rise') {
    const from = next(reading.from);
    const to = next(reading.to);
    return from === null || to === null ? null : { ...reading, from, to };
  }
  const at = next(reading.at);
  return at === null ? null : { ...reading, at };
}
