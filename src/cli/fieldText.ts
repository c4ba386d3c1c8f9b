import { type Address, readField } from '../scene/index.ts';
import { BadInput } from './exitCodes.ts';

/** The number for a field, as `readField` reads it. Throws BadInput with what was read and what is allowed. */
export function fieldNumber(at: Address, text: string): number {
  const reading = readField(at, text);
  if (!reading.ok) throw new BadInput(`${at}: ${reading.message}`);
  return reading.value;
}

/** `ADDRESS=VALUE` taken apart; the value stays text. */
export function assignment(option: string, text: string): { readonly at: Address; readonly value: string } {
  const cut = text.indexOf('=');
  if (cut <= 0) throw new BadInput(`--${option} wants ADDRESS=VALUE, not "${text}".`);
  return { at: text.slice(0, cut).trim(), value: text.slice(cut + 1).trim() };
}

/** `ADDRESS=FROM..TO` or `ADDRESS=FROM..TO..STEP` taken apart. */
export function steppedRange(
  option: string,
  text: string,
): { readonly at: Address; readonly from: number; readonly to: number; readonly step?: number } {
  const { at, value } = assignment(option, text);
  const parts = value.split('..');
  if (parts.length !== 3) return rangeOf(option, text);
  const [from, to, step] = parts.map((part) => fieldNumber(at, part));
  return { at, from, to, step };
}

/** `ADDRESS=FROM..TO` taken apart. */
export function rangeOf(
  option: string,
  text: string,
): { readonly at: Address; readonly from: number; readonly to: number } {
  const { at, value } = assignment(option, text);
  const ends = value.split('..');
  if (ends.length !== 2) {
    throw new BadInput(
      `--${option} wants ADDRESS=FROM..TO, for example tracks/gill-line/alignment/mouth/lengthMm=100..450.`,
    );
  }
  return { at, from: fieldNumber(at, ends[0]), to: fieldNumber(at, ends[1]) };
}
