import { z } from 'zod';
import { formatNumber } from '../../core/units/index.ts';
import {
  type Measure,
  type MeasureLimit,
  measureById,
  measures,
  measureUnits,
  type Probe,
  readAmount,
} from '../../sim/study/index.ts';
import { BadInput } from '../exitCodes.ts';
import { number } from '../reportFields.ts';

/** Name of a measure's field in reports: the unit ends it. */
export const measureField = ({ field, unit }: Measure): string => `${field}${measureUnits[unit].suffix}`;

/** The fields of all measures; what has nothing to say, or no bound, is left out. */
export const measureShape = Object.fromEntries(
  measures.map((one) => [
    measureField(one),
    z.exactOptional(number(`${one.about}, ${measureUnits[one.unit].shown}; ${one.better} is better.`)),
  ]),
) as object;

export const measureColumns: readonly string[] = measures.map(measureField);

/** What a railway comes to by every measure, in the units of the fields. */
export const measureFields = (probe: Probe): object =>
  Object.fromEntries(
    measures.flatMap((one) => {
      const value = one.value(probe);
      return value === null || !Number.isFinite(value) ? [] : [[measureField(one), value / measureUnits[one.unit].si]];
    }),
  );

/** A limit as reports have it. */
export const limitShape = z.strictObject({
  measure: z.string().meta({ description: 'The word of the measure, as --limit takes it.' }),
  bound: z.enum(['most', 'least']),
  amount: z.number().meta({ description: 'In the unit that ends the name of the measure’s field.' }),
});

export const limitFields = ({ measure, bound, amount }: MeasureLimit): z.infer<typeof limitShape> => ({
  measure,
  bound,
  amount: amount / measureUnits[measureById(measure).unit].si,
});

/** The measure that a word names. */
export function measureOf(word: string): Measure {
  const found = measures.find(({ id }) => id === word);
  if (found !== undefined) return found;
  throw new BadInput(`There is no measure "${word}". There are: ${measures.map(({ id }) => id).join(', ')}.`);
}

/** `WORD<=AMOUNT` or `WORD>=AMOUNT` as a limit. */
export function limitOf(text: string): MeasureLimit {
  const [, word, sign, written] = /^\s*([a-z-]+)\s*(<=|>=|≤|≥)\s*(.+)$/.exec(text) ?? [];
  if (word === undefined) {
    throw new BadInput(
      `--limit wants MEASURE<=AMOUNT or MEASURE>=AMOUNT, for example "room-depth<=1600mm", not "${text}".`,
    );
  }
  const { id, unit } = measureOf(word);
  const amount = readAmount(written, unit);
  if (!amount.ok) throw new BadInput(`--limit ${word}: ${amount.message}`);
  return { measure: id, bound: sign === '<=' || sign === '≤' ? 'most' : 'least', amount: amount.value };
}

/** Digits behind the point that a builder can use. */
const digits = { length: 1, grade: 2, force: 3, speed: 3, time: 1, work: 3, area: 3 } as const;

const amountText = ({ unit }: Measure, value: number): string => {
  const { shown, si } = measureUnits[unit];
  return `${formatNumber(value / si, { digits: digits[unit] })} ${shown}`;
};

/** "greatest draft 0.421 N" */
export function measureText(measure: Measure, probe: Probe): string {
  const value = measure.value(probe);
  const told = value === null || !Number.isFinite(value) ? 'nothing to say' : amountText(measure, value);
  return `${measure.title.toLowerCase()} ${told}`;
}

/** "room, depth 1720.0 mm, more than 1600.0 mm" */
export function missText(limit: MeasureLimit, probe: Probe): string {
  const measure = measureById(limit.measure);
  return `${measureText(measure, probe)}, ${limit.bound === 'most' ? 'more' : 'less'} than ${amountText(measure, limit.amount)}`;
}
