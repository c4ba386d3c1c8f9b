import type { Reading } from '../../../core/units/index.ts';

/** Reads a plain number, with or without its unit behind it. */
export function readPlain(text: string, unit: string): Reading {
  const plain = text.trim().replace(',', '.').replace('\u2212', '-').replace(unit, '').trim();
  const value = plain === '' ? Number.NaN : Number(plain);
  if (Number.isFinite(value)) return { ok: true, value, read: '' };
  return { ok: false, message: `“${text.trim().slice(0, 40)}” is no number.` };
}
