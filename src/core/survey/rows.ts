import { clamp } from '../math/index.ts';
import { feetOf } from './feet.ts';
import { type LineShape, type LineValue, lineAt } from './lineShape.ts';
import type { GradeReading, HeightReading, Place, Reading, SurveyInput } from './types.ts';

/** One reading, or one thing known beforehand, as a linear equation: observed = planned + heights·departures + others. */
export interface Row {
  /** Index of the reading; -1 for a zero error known to be small, -2 for a support known to be set closely. */
  readonly reading: number;
  readonly observed: number;
  /** What the plan alone would show. */
  readonly planned: number;
  /** Standard deviation, rounding included. */
  readonly deviation: number;
  /** Half the step it is rounded to. */
  readonly halfStep: number;
  /** One entry a support. */
  readonly heights: Float64Array;
  /** Zero errors and sight lines it depends on: index into the unknowns beside the heights, and how much. */
  readonly others: readonly (readonly [unknown: number, factor: number])[];
}

/** An unknown beside the heights: the zero error of an instrument, or the height of a sight line. */
export interface OtherUnknown {
  readonly kind: 'zero' | 'line';
  readonly id: string;
}

export interface RowSystem {
  readonly shape: LineShape;
  readonly rows: readonly Row[];
  readonly others: readonly OtherUnknown[];
}

/** The chainage of a place, m. */
export const chainageOf = (place: Place, supports: readonly number[]): number =>
  'support' in place ? supports[place.support] : place.chainage;

/**
 * The equations of all readings, then one for each zero error that is known to be small.
 * Throws RangeError, naming the reading, for one that has no place on the line or no instrument.
 */
export function rowSystem(input: SurveyInput, shape: LineShape): RowSystem {
  const others = otherUnknowns(input);
  const rows = input.readings.map((reading, index) => {
    try {
      return readingRow(input, shape, others, reading, index);
    } catch (error) {
      if (error instanceof RangeError) throw new RangeError(`${reading.name}: ${error.message}`, { cause: error });
      throw error;
    }
  });
  const known = others.flatMap((other, unknown): Row[] => {
    const instrument = input.instruments.find(({ id }) => id === other.id);
    if (other.kind === 'line' || instrument === undefined) return [];
    const heights = new Float64Array(input.supports.length);
    const { zero } = instrument;
    return [{ reading: -1, observed: 0, planned: 0, deviation: zero, halfStep: 0, heights, others: [[unknown, 1]] }];
  });
  return { shape, rows: [...rows, ...known], others };
}

function otherUnknowns({ instruments, readings }: SurveyInput): OtherUnknown[] {
  const used = new Set(readings.map((reading) => reading.instrument));
  const zeros = instruments.filter(({ id, zero }) => zero > 0 && used.has(id));
  const lines = new Set(readings.flatMap((one) => (one.kind === 'height' && one.line !== null ? [one.line] : [])));
  return [
    ...zeros.map(({ id }): OtherUnknown => ({ kind: 'zero', id })),
    ...[...lines].map((id): OtherUnknown => ({ kind: 'line', id })),
  ];
}

/** The equation of one reading. Throws RangeError when it has no place on the line, no instrument, or no error at all. */
export function readingRow(
  input: SurveyInput,
  shape: LineShape,
  others: readonly OtherUnknown[],
  reading: Reading,
  index: number,
): Row {
  const instrument = input.instruments.find(({ id }) => id === reading.instrument);
  if (instrument === undefined) throw new RangeError(`there is no instrument “${reading.instrument}”`);
  const deviation = Math.sqrt(instrument.deviation * instrument.deviation + (instrument.step * instrument.step) / 12);
  if (!(deviation > 0 && Number.isFinite(deviation))) {
    throw new RangeError(`instrument “${instrument.id}” needs an error or a step greater than nothing`);
  }
  const { observed, planned, weights } = equation(shape, reading);
  if (!Number.isFinite(observed + planned)) throw new RangeError('it holds a number that is none');
  const zero = others.findIndex((other) => other.kind === 'zero' && other.id === instrument.id);
  const line =
    reading.kind === 'height' && reading.line !== null
      ? others.findIndex((other) => other.kind === 'line' && other.id === reading.line)
      : -1;
  const face = reading.kind === 'grade' ? reading.face : 1;
  const linked: [number, number][] = [];
  if (zero >= 0) linked.push([zero, face]);
  if (line >= 0) linked.push([line, 1]);
  const halfStep = instrument.step / 2;
  return { reading: index, observed, planned, deviation, halfStep, heights: weights, others: linked };
}

interface Equation extends LineValue {
  readonly observed: number;
}

function equation(shape: LineShape, reading: Reading): Equation {
  switch (reading.kind) {
    case 'height':
      return { observed: reading.height, ...lineAt(shape, placeOnLine(shape, reading.at), 0) };
    case 'rise': {
      const from = lineAt(shape, placeOnLine(shape, reading.from), 0);
      const to = lineAt(shape, placeOnLine(shape, reading.to), 0);
      return { observed: reading.rise + reading.board, ...combine([1, to], [-1, from]) };
    }
    case 'grade': {
      const { from, to, chord } = gradeFeet(shape, reading);
      return {
        observed: reading.grade,
        ...combine([1 / chord, lineAt(shape, to, 0)], [-1 / chord, lineAt(shape, from, 0)]),
      };
    }
    case 'gap': {
      const at = placeOnLine(shape, reading.at);
      const { from, to } = feetOf(shape.plan, at, 'centre', baseOf(reading.base), lineAt(shape, at, 1).planned);
      const ends = [from, to].map((s) => [0.5, lineAt(shape, s, 0)] as const);
      return { observed: reading.gap, ...combine(...ends, [-1, lineAt(shape, at, 0)]) };
    }
  }
}

/** Feet of a level as placed. */
export function gradeFeet(shape: LineShape, reading: GradeReading) {
  const at = placeOnLine(shape, reading.at);
  return feetOf(shape.plan, at, reading.anchor, baseOf(reading.base), clamp(reading.grade, -1, 1));
}

function baseOf(base: number): number {
  if (!(base > 0 && Number.isFinite(base))) throw new RangeError('its base must be longer than nothing');
  return base;
}

function placeOnLine(shape: LineShape, place: Place): number {
  const chainage = chainageOf(place, shape.supports);
  if (chainage === undefined || !Number.isFinite(chainage)) {
    const which = 'support' in place ? `support ${place.support + 1}` : 'its chainage';
    throw new RangeError(`${which} is not on this track, which has ${shape.supports.length} supports`);
  }
  return chainage;
}

function combine(...parts: readonly (readonly [factor: number, value: LineValue])[]): LineValue {
  const weights = new Float64Array(parts[0][1].weights.length);
  let planned = 0;
  for (const [factor, value] of parts) {
    planned += factor * value.planned;
    for (let i = 0; i < weights.length; i++) weights[i] += factor * value.weights[i];
  }
  return { planned, weights };
}

/** Readings that stand on a sight line or the plan's datum, by index. */
export const heightReadings = (readings: readonly Reading[]): (readonly [number, HeightReading])[] =>
  readings.flatMap((reading, index) => (reading.kind === 'height' ? [[index, reading] as const] : []));
