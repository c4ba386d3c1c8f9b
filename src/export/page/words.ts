import type { Show } from '../../core/findings/index.ts';
import { formatGrade, formatLength, formatMass, formatNumber } from '../../core/units/index.ts';

/** A length as the person reads lengths, m; `digits` of millimetres. */
export const length = (metres: number, { lengthUnit }: Show, digits = 0): string =>
  lengthUnit === 'mm' ? formatLength(metres, { digits }) : formatLength(metres, { unit: 'in', digits: digits + 2 });

/** A place along a track, m. */
export const chainage = (metres: number, { lengthUnit }: Show): string =>
  lengthUnit === 'mm'
    ? formatLength(metres, { unit: 'm', digits: 2 })
    : formatLength(metres, { unit: 'ft', fraction: 8 });

/** A grade in per cent, as 1 in n and as an angle: clubs argue in all three. */
export function gradeForms(grade: number): string {
  const steep = Math.abs(grade);
  if (steep < level) return 'level';
  const degrees = formatNumber((Math.atan(steep) * 180) / Math.PI, { digits: 2 });
  return `${formatGrade(steep, { form: 'percent' })} · ${formatGrade(steep, { form: 'one-in' })} · ${degrees}°`;
}

/** A grade in the form the person reads grades in. */
export const grade = (ratio: number, { gradeForm }: Show): string =>
  Math.abs(ratio) < level ? 'level' : formatGrade(Math.abs(ratio), { form: gradeForm });

/** Flatter than this is level: 0.01 mm in a metre. */
const level = 1e-5;

export const grams = (kilograms: number): string => formatMass(kilograms, { unit: 'g', digits: 0 });

/** `1 van`, `3 vans`: with the noun as it is given. */
export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;
