import { formatGrade, formatLength, formatMass, formatNumber, formatSpeed, thinSpace } from '../core/units/index.ts';
import { radiusText } from '../state/index.ts';
import type { SessionState } from '../state/types.ts';
import { useSession } from './context.tsx';

/** How numbers are wanted, as the header's switches say. */
export type Show = Pick<SessionState, 'lengthUnit' | 'gradeForm'>;

export function useShow(): Show {
  const lengthUnit = useSession((state) => state.lengthUnit);
  const gradeForm = useSession((state) => state.gradeForm);
  return { lengthUnit, gradeForm };
}

/** A quantity ready to set: figure and unit of the chosen form, and the other form whole. */
export interface Shown {
  readonly shown: readonly [figure: string, unit: string];
  readonly other: string;
}

function apart(text: string): readonly [string, string] {
  const at = text.lastIndexOf(thinSpace);
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + thinSpace.length)];
}

const inBoth = (mm: string, inch: string, show: Show): Shown =>
  show.lengthUnit === 'mm' ? { shown: apart(mm), other: inch } : { shown: apart(inch), other: mm };

/** A length in m: mm and inches. */
export const lengthShown = (metres: number, show: Show): Shown =>
  inBoth(formatLength(metres), formatLength(metres, { unit: 'in' }), show);

/** A length of metres and more: m and feet. */
export const distanceShown = (metres: number, show: Show): Shown =>
  inBoth(formatLength(metres, { unit: 'm', digits: 2 }), formatLength(metres, { unit: 'ft', fraction: 2 }), show);

/** Grams and ounces. */
export const massShown = (kilograms: number, show: Show): Shown =>
  inBoth(formatMass(kilograms, { digits: 0 }), formatMass(kilograms, { unit: 'oz', digits: 1 }), show);

/** "1 in n" and per cent with degrees. */
export function gradeShown(grade: number, show: Show): Shown {
  const oneIn = formatGrade(grade, { form: 'one-in' });
  const percent = formatGrade(grade, { form: 'percent' });
  const degrees = formatGrade(grade, { form: 'degree' });
  return show.gradeForm === 'one-in'
    ? { shown: [oneIn, ''], other: oneIn === 'level' ? '' : `${percent} · ${degrees}` }
    : { shown: apart(percent), other: oneIn === 'level' ? '' : `${oneIn} · ${degrees}` };
}

/** A radius in mm and inches, or in m and feet, after the letter R. */
export function radiusShown(radius: number, show: Show): Shown {
  const inForm = (lengthUnit: Show['lengthUnit']) => radiusText(radius, { lengthUnit });
  return inBoth(inForm('mm'), inForm('in'), show);
}

/** "0.19 m/s" or "7.5 in/s" and, with the scale's ratio, the speed of the original in km/h or mph. */
export function speedWords(metresPerSecond: number, ratio: number | undefined, show: Show): string {
  const metric = show.lengthUnit === 'mm';
  const own = formatSpeed(metresPerSecond, metric ? { digits: 2 } : { unit: 'in/s', digits: 1 });
  if (ratio === undefined) return own;
  return `${own} · ${formatSpeed(metresPerSecond, { unit: metric ? 'km/h' : 'mph', scale: ratio, digits: 0 })}`;
}

/** A share as a percentage. */
export const percentWords = (share: number, digits = 0): string =>
  `${formatNumber(share * 100, { digits })}${thinSpace}%`;

/** A count with its noun. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
