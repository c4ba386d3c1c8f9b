import {
  formatLength,
  formatNumber,
  parseAngle,
  parseGrade,
  parseLength,
  type Reading,
  thinSpace,
} from '../core/units/index.ts';
import { gradeShown, lengthShown, type Show, type Shown } from './show.ts';

const perMm = 1e-3;
const perDegree = Math.PI / 180;

/** A reading in the unit of a field instead of SI, without the dust of binary fractions. */
const inUnit = (reading: Reading, si: number): Reading =>
  reading.ok ? { ...reading, value: Math.round((reading.value / si) * 1e9) / 1e9 } : reading;

/** Reads a length as a builder says it, in mm; a bare number is in the unit that the header shows. */
export const readMm = (text: string, { lengthUnit }: Show): Reading =>
  inUnit(parseLength(text, { unit: lengthUnit }), perMm);

/** Reads an angle in degrees; a bare number is in degrees. */
export const readDegrees = (text: string): Reading => inUnit(parseAngle(text), perDegree);

/** Reads an angle in turns; a bare number is in turns. */
export const readTurns = (text: string): Reading => inUnit(parseAngle(text, { unit: 'turn' }), 2 * Math.PI);

/**
 * Reads a grade in per cent. Said without a direction it keeps the one it has (`falls`); a bare number is in the form that the header
 * shows.
 */
export function readPercent(text: string, { gradeForm }: Show, falls: boolean): Reading {
  const reading = inUnit(parseGrade(text, { bare: gradeForm }), 1e-2);
  const directed = /^\s*[-+−]|\b(up|down|rising|falling)\b/i.test(text);
  return reading.ok && !directed && falls ? { ...reading, value: -reading.value } : reading;
}

/** A length given in mm. */
export const mmShown = (mm: number, show: Show): Shown => lengthShown(mm * perMm, show);

/** A departure given in mm, with its sign. */
export function offShown(mm: number, show: Show): Shown['shown'] {
  const style = show.lengthUnit === 'mm' ? ({} as const) : ({ unit: 'in', digits: 3 } as const);
  const [figure, unit = ''] = formatLength(mm * perMm, { signed: true, ...style }).split(thinSpace);
  return [figure, unit];
}

/** A grade given in per cent, without its direction. */
export const percentShown = (percent: number, show: Show): Shown => gradeShown(Math.abs(percent) / 100, show);

export const degreesShown = (degrees: number): Shown => ({
  shown: [`${formatNumber(degrees, { digits: 2, trim: true })}°`, ''],
  other: '',
});

/** Turns of a helix, with the degrees they are. */
export const turnsShown = (turns: number): Shown => ({
  shown: [formatNumber(turns, { digits: 3, trim: true }), ''],
  other: `${formatNumber(turns * 360, { digits: 0 })}°`,
});
