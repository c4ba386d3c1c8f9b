import { type FieldLimits, fieldLimits, type Json, readAt, withAt } from '../../scene/index.ts';
import type { NumberRow, StockNumber } from './types.ts';

/** Without the dust of binary fractions that a way through SI leaves behind. */
const dusted = (value: number): number => Math.round(value * 1e6) / 1e6;

/**
 * The numbers of a part of a scene (`file`, its list called `list` in the format) as a person sees them: what is given, and what the
 * solver takes where nothing is. `solve` makes of a file what the solver takes.
 */
export function readNumbers<F extends object, T>(
  list: 'stock' | 'couplings',
  file: F,
  rows: readonly NumberRow<T>[],
  solve: (file: F) => T,
): StockNumber[] {
  const solved = solve(file);
  return rows.map(({ field, label, step, of }) => {
    const given = readAt(file, field) !== undefined;
    const limits: FieldLimits = fieldLimits(`${list}/*/${field}`);
    return {
      field,
      label,
      step,
      value: dusted(of(solved)),
      usual: given ? usualOf(file, field, of, solve) : dusted(of(solved)),
      given,
      ...limits,
    };
  });
}

/** What a field would be were it not given; null where a file without it is none. */
function usualOf<F extends object, T>(
  file: F,
  field: string,
  of: (solved: T) => number,
  solve: (file: F) => T,
): number | null {
  if (required.has(field)) return null;
  return dusted(of(solve(withAt<F>(file, field, undefined as Json | undefined))));
}

/** Fields that one vehicle or the other has to have. */
const required = new Set(['lengthMm', 'overBuffersMm', 'wheelbaseMm', 'bogies/centresMm', 'bogies/wheelbaseMm']);
