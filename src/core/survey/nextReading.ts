import { whiteSystem } from './estimate.ts';
import type { Account } from './explain.ts';
import { knownHeight } from './knownHeight.ts';
import { factorise, solveFactors } from './leastSquares.ts';
import type { LineShape } from './lineShape.ts';
import { gradeFeet, type Row, type RowSystem, readingRow } from './rows.ts';
import type { GradeReading, Reading, ReadingAdvice, SurveyInput } from './types.ts';

/** What is known of any support before reading, standard deviation, m: little, but enough to compare readings by. */
const vagueHeight = 0.01;

interface Functional {
  readonly decides: ReadingAdvice['decides'];
  readonly about: number;
  readonly weights: Float64Array;
}

/**
 * The one further reading that would tell most: of all heights at a support and all grades centred at one (with the instruments
 * in use), that which leaves the least variance of what is least decided (c-optimal design). Least decided is a support that
 * one reading alone speaks against; else the change of grade at a support that is known worst. Null without supports between ends.
 */
export function nextReading(input: SurveyInput, system: RowSystem, account: Account): ReadingAdvice | null {
  const count = input.supports.length;
  const vague = input.supports.map((_, i) => knownHeight(count, i, 0, input.fixed.includes(i) ? 1e-7 : vagueHeight));
  const white = whiteSystem([...account.kept, ...vague], count, system.others.length);
  const { covariance } = solveFactors(factorise(white));
  const product = (a: Float64Array, b: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < a.length; i++) {
      if (a[i] === 0) continue;
      for (let j = 0; j < b.length; j++) sum += a[i] * covariance[i * white.columns + j] * b[j];
    }
    return sum;
  };
  const question = leastDecided(input, account, white.columns, product);
  if (question === null) return null;
  const before = product(question.weights, question.weights);
  let best: ReadingAdvice | null = null;
  let most = 0;
  for (const reading of candidates(input)) {
    const row = rowOf(input, system, reading);
    if (row === null) continue;
    const sees = new Float64Array(white.columns);
    sees.set(row.heights);
    for (const [unknown, factor] of row.others) sees[count + unknown] += factor;
    const shared = product(question.weights, sees);
    const fall = (shared * shared) / (row.deviation * row.deviation + product(sees, sees));
    if (fall <= most) continue;
    most = fall;
    const { kind, support, instrument, base } = reading;
    const deviations = { before: Math.sqrt(before), after: Math.sqrt(Math.max(0, before - fall)) };
    best = { kind, support, instrument, base, decides: question.decides, about: question.about, ...deviations };
  }
  return best;
}

function leastDecided(
  { supports }: SurveyInput,
  { explanation }: Account,
  columns: number,
  product: (a: Float64Array, b: Float64Array) => number,
): Functional | null {
  const doubtful = explanation.supports.find(({ rival }) => rival !== null);
  if (doubtful !== undefined) {
    const weights = new Float64Array(columns);
    weights[doubtful.support] = 1;
    return { decides: 'departure', about: doubtful.support, weights };
  }
  let worst: Functional | null = null;
  let most = 0;
  for (let i = 1; i + 1 < supports.length; i++) {
    const weights = new Float64Array(columns);
    weights[i - 1] = 1 / (supports[i] - supports[i - 1]);
    weights[i + 1] = 1 / (supports[i + 1] - supports[i]);
    weights[i] = -weights[i - 1] - weights[i + 1];
    const variance = product(weights, weights);
    if (variance <= most) continue;
    most = variance;
    worst = { decides: 'kink', about: i, weights };
  }
  return worst;
}

interface PossibleReading extends Pick<ReadingAdvice, 'kind' | 'support' | 'instrument' | 'base'> {
  readonly line: string | null;
}

/** A height at every support and a grade about every support, with each instrument that was used so, on its commonest base. */
function candidates({ supports, readings }: SurveyInput): PossibleReading[] {
  const heights = new Map<string, string | null>();
  const bases = new Map<string, number[]>();
  for (const reading of readings) {
    if (reading.kind === 'height' && !heights.has(reading.instrument)) heights.set(reading.instrument, reading.line);
    if (reading.kind === 'grade')
      bases.set(reading.instrument, [...(bases.get(reading.instrument) ?? []), reading.base]);
  }
  return supports.flatMap((_, support) => [
    ...[...heights].map(
      ([instrument, line]): PossibleReading => ({ kind: 'height', support, instrument, base: 0, line }),
    ),
    ...[...bases].map(([instrument, all]): PossibleReading => {
      const base = [...all].sort((a, b) => a - b)[all.length >> 1];
      return { kind: 'grade', support, instrument, base, line: null };
    }),
  ]);
}

/** Whether both feet stand between the outermost supports: beyond, the strip is not that of the survey. */
function onLine({ supports }: SurveyInput, shape: LineShape, reading: GradeReading): boolean {
  const { from, to } = gradeFeet(shape, reading);
  return from >= supports[0] && to <= supports[supports.length - 1];
}

function rowOf(input: SurveyInput, { shape, others }: RowSystem, possible: PossibleReading): Row | null {
  const { support, instrument, base, line } = possible;
  const common = { name: '', instrument, at: { support } };
  const grade: GradeReading = { ...common, kind: 'grade', anchor: 'centre', base, grade: 0, unit: 'percent', face: 1 };
  const reading: Reading = possible.kind === 'grade' ? grade : { ...common, kind: 'height', height: 0, line };
  try {
    if (reading.kind === 'grade' && !onLine(input, shape, reading)) return null;
    return readingRow(input, shape, others, reading, -1);
  } catch (error) {
    // No room for the base there.
    if (error instanceof RangeError) return null;
    throw error;
  }
}
