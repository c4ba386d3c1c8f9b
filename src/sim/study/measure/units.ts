import { parseForce, parseGrade, parseLength, parseSpeed, type Reading } from '../../../core/units/index.ts';

/** What kinds of amounts measures are. */
export type MeasureUnit = 'length' | 'grade' | 'force' | 'speed' | 'time' | 'work' | 'area';

interface UnitForm {
  /** What ends the name of a field. */
  readonly suffix: string;
  readonly shown: string;
  /** SI for one of it. */
  readonly si: number;
  /** Reads a builder's words, in SI; plain numbers are in this unit. */
  readonly read?: (text: string) => Reading;
}

/** The unit of each kind as reports, files and limits have it. */
export const measureUnits = {
  length: { suffix: 'Mm', shown: 'mm', si: 1e-3, read: (text) => parseLength(text, { unit: 'mm' }) },
  grade: { suffix: 'Percent', shown: '%', si: 1e-2, read: (text) => parseGrade(text, { bare: 'percent' }) },
  force: { suffix: 'N', shown: 'N', si: 1, read: (text) => parseForce(text, { unit: 'N' }) },
  speed: { suffix: 'MPerS', shown: 'm/s', si: 1, read: (text) => parseSpeed(text, { unit: 'm/s' }) },
  time: { suffix: 'S', shown: 's', si: 1 },
  work: { suffix: 'J', shown: 'J', si: 1 },
  area: { suffix: 'M2', shown: 'm²', si: 1 },
} as const satisfies Readonly<Record<MeasureUnit, UnitForm>>;

export type AmountReading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string };

/** An amount in SI as a person writes it: plain in the unit of its kind, with that unit behind it, or in any other that a builder says. */
export function readAmount(text: string, unit: MeasureUnit): AmountReading {
  const { shown, si, read }: UnitForm = measureUnits[unit];
  const bare = text.trim().endsWith(shown) ? text.trim().slice(0, -shown.length).trim() : text.trim();
  const plain = bare === '' ? Number.NaN : Number(bare);
  if (Number.isFinite(plain)) return { ok: true, value: plain * si };
  if (read === undefined) return { ok: false, message: `“${text}” is no number of ${shown}.` };
  const reading = read(text);
  return reading.ok ? { ok: true, value: reading.value } : { ok: false, message: reading.message };
}
