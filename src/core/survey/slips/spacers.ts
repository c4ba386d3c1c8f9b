import { trackPoint } from '../../track/index.ts';
import { type Candidate, type Family, patternColumn, readingsColumn, type SlipContext } from './candidate.ts';

/** A rise within rounding of a whole number of turns is one, turns. */
const wholeTurn = 1e-6;

/** Every spacer off by the same: as read, in all rises; or as built in, one more error with every turn. */
export function spacers({ input, shape, readings }: SlipContext): Family {
  const candidates: Candidate[] = [];
  const rises = readings.flatMap((reading, index) => (reading.kind === 'rise' ? [index] : []));
  if (rises.length > 1) {
    const column = readingsColumn(new Set(rises));
    candidates.push({ kind: 'spacers', readings: rises, support: -1, at: 'readings', column });
  }
  const heading = (chainage: number): number => trackPoint(shape.plan, chainage).heading;
  const first = heading(input.supports[0]);
  const turns = Float64Array.from(input.supports, (s) =>
    Math.floor(Math.abs(heading(s) - first) / (2 * Math.PI) + wholeTurn),
  );
  if (turns.some((count) => count > 1)) {
    const built = { pattern: turns, column: patternColumn(turns) };
    candidates.push({ kind: 'spacers', readings: [], support: -1, at: 'line', ...built });
  }
  return { candidates, alternatives: Math.max(1, candidates.length) };
}

/** One spacer too thick or too thin: every support from one on stands off by the same. */
export function raisedFrom({ input }: SlipContext): Family {
  const count = input.supports.length;
  // From the second on, up to the last but one: the last alone is a wrong support like any other.
  const candidates = Array.from({ length: Math.max(0, count - 2) }, (_, i): Candidate => {
    const from = i + 1;
    const pattern = Float64Array.from({ length: count }, (__, k) => (k >= from ? 1 : 0));
    for (const fixed of input.fixed) pattern[fixed] = 0;
    return { kind: 'raised-from', readings: [], support: from, at: 'line', pattern, column: patternColumn(pattern) };
  });
  return { candidates, alternatives: Math.max(1, candidates.length) };
}
