import { turnsText } from '../../../core/survey/index.ts';
import type { ShimStep } from '../../../core/survey/types.ts';
import { formatGrade, formatLength, formatNumber } from '../../../core/units/index.ts';
import { placeWords } from '../../../state/index.ts';
import {
  isByLevel,
  type ReadingKind,
  readingValue,
  type SceneReading,
  type Stop,
  unitOf,
} from '../../../state/survey/index.ts';
import type { Show } from '../../show.ts';

/** What a kind of reading is taken with, and what it reads. */
export const toolWords: Readonly<Record<ReadingKind, { readonly tool: string; readonly reads: string }>> = {
  grade: { tool: 'Level', reads: 'grade' },
  height: { tool: 'Laser or rule', reads: 'height' },
  rise: { tool: 'Spacer', reads: 'spacer' },
  gap: { tool: 'Straightedge', reads: 'gap' },
  cross: { tool: 'Level across the rails', reads: 'cross-level' },
};

/** `support 6`, `between 6 and 7`, `support 6 to 15`. */
export function stopWords({ support, beside }: Stop): string {
  const [first, second] = beside.map((one) => one + 1);
  if (second === undefined) return `support ${first}`;
  return support === null ? `between ${first} and ${second}` : `support ${first} to ${second}`;
}

/** Where a reading of a scene was taken. */
export function whereWords(reading: SceneReading, show: Show): string {
  if (reading.kind === 'rise') return `${reading.fromSupport} to ${reading.toSupport}`;
  if (reading.support !== undefined) return `support ${reading.support}`;
  return placeWords((reading.atMm ?? 0) / 1000, show);
}

/** What was read, with its unit. */
export function valueWords(reading: SceneReading, show: Show): string {
  const value = readingValue(reading);
  if (!isByLevel(reading.kind)) return millimetres(value, show, 1);
  return formatGrade(value, { form: unitOf(reading), digits: 2 });
}

/** A small length in mm or thousandths of an inch. */
export function millimetres(value: number, show: Show, digits = 2, signed = false): string {
  if (!Number.isFinite(value)) return '–';
  return formatLength(
    value,
    show.lengthUnit === 'mm' ? { unit: 'mm', digits, signed } : { unit: 'in', digits: digits + 1, signed },
  );
}

/** The figure of it alone. */
export function millimetreFigure(value: number, show: Show, digits = 2, signed = false): string {
  if (!Number.isFinite(value)) return '–';
  return show.lengthUnit === 'mm'
    ? formatNumber(value * 1000, { digits, signed })
    : formatNumber(value / 0.0254, { digits: digits + 1, signed });
}

/** `1, 25` as supports from 0; null where it is no list of numbers from 1 to `count`. */
export function readSupports(text: string, count: number): number[] | null {
  const parts = text.split(/[\s,;]+/).filter((part) => part !== '');
  const numbers = parts.map(Number);
  if (numbers.some((number) => !Number.isInteger(number) || number < 1 || number > count)) return null;
  return [...new Set(numbers)].sort((a, b) => a - b).map((number) => number - 1);
}

/** `2 1/4 turns down`, `1 × 0.5 mm and 2 × 1 mm`. */
export function workWords({ turns, pieces, change }: ShimStep, show: Show): string {
  if (turns === null)
    return pieces.map(({ thickness, count }) => `${count} × ${millimetres(thickness, show, 1)}`).join(' and ');
  return `${turnsText(Math.abs(turns))} ${change > 0 ? 'up' : 'down'}`;
}

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
