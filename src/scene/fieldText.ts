import { parseGrade, parseLength, parseMass, type Reading } from '../core/units/index.ts';
import type { Address } from './address.ts';

/** A unit that ends the names of fields: how it is written, and how a builder's words become a number in it. */
interface FieldUnit {
  readonly suffix: string;
  readonly shown: string;
  readonly read?: (text: string) => Reading;
  /** SI for one of it. */
  readonly si?: number;
}

/** Longer endings before shorter ones that they contain. */
const units: readonly FieldUnit[] = [
  { suffix: 'PercentPerMPerS', shown: '% per m/s' },
  { suffix: 'MmPerS', shown: 'mm/s' },
  { suffix: 'NPerMm', shown: 'N/mm' },
  { suffix: 'NsPerM', shown: 'N·s/m' },
  { suffix: 'Percent', shown: '%', read: parseGrade, si: 1e-2 },
  { suffix: 'Mm', shown: 'mm', read: parseLength, si: 1e-3 },
  { suffix: 'Deg', shown: '°' },
  { suffix: 'G', shown: 'g', read: parseMass, si: 1e-3 },
  { suffix: 'N', shown: 'N' },
  { suffix: 'S', shown: 's' },
];

const lastKey = (at: Address): string => at.split('/').at(-1) ?? at;

const unitOf = (at: Address): FieldUnit | undefined => {
  const key = lastKey(at);
  // A capital that ends a name is a unit only after the small letters of the name: "massG", not "offG" of nothing.
  return units.find(({ suffix }) => key.length > suffix.length && key.endsWith(suffix));
};

/** The unit of a field by its name, as it is written; nothing for a plain number. */
export const fieldUnit = (at: Address): string => unitOf(at)?.shown ?? '';

/** What a field is called in words, by its name: "length" for lengthMm, "vertical curve length" for verticalCurveLengthMm. */
export function fieldName(at: Address): string {
  const key = lastKey(at);
  const bare = key.slice(0, key.length - (unitOf(at)?.suffix.length ?? 0));
  const words = bare.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return spoken[words] ?? words;
}

/** Names that a file can have short because it stands in its place. */
const spoken: Readonly<Record<string, string>> = {
  at: 'place',
  by: 'off by',
  off: 'off by',
  every: 'distance apart',
  first: 'first at',
  count: 'how many',
  plus: 'further on by',
  x: 'place east',
  y: 'place north',
};

export type FieldReading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string };

/**
 * The number for a field: plain, in the unit that ends the field's name, or in the words of a builder (`24in`, `1 in 42`, `5oz`).
 */
export function readField(at: Address, text: string): FieldReading {
  const plain = text.trim() === '' ? Number.NaN : Number(text);
  if (Number.isFinite(plain)) return { ok: true, value: plain };
  const { read, si = 1 } = unitOf(at) ?? {};
  if (read === undefined) return { ok: false, message: `“${text}” is no number.` };
  const reading = read(text);
  if (!reading.ok) return reading;
  // To a billionth of the unit, so that an inch is 25.4 mm and not its binary neighbour.
  return { ok: true, value: Math.round((reading.value / si) * 1e9) / 1e9 };
}
