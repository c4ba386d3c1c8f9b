import { type Candidate, type Family, patternColumn, readingsColumn, type SlipContext } from './candidate.ts';

/** One support off its planned height. */
export function wrongSupport({ input }: SlipContext): Family {
  const count = input.supports.length;
  const fixed = new Set(input.fixed);
  const candidates = input.supports.flatMap((_, support): Candidate[] => {
    if (fixed.has(support)) return [];
    const pattern = new Float64Array(count);
    pattern[support] = 1;
    return [{ kind: 'support', readings: [], support, at: 'line', pattern, column: patternColumn(pattern) }];
  });
  return { candidates, alternatives: count };
}

/** One reading that fits nothing: misread, miswritten, or the level stood on a crumb. */
export function outlier({ readings }: SlipContext): Family {
  const candidates = readings.map((_, index): Candidate => {
    const only = [index];
    return { kind: 'outlier', readings: only, support: -1, at: 'readings', column: readingsColumn(new Set(only)) };
  });
  return { candidates, alternatives: readings.length };
}
