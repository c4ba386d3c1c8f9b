import { type MeasureRules, readMeasure, type Unit } from './measure.ts';
import { formatNumber, thinSpace } from './number.ts';
import { accept, type Bounds, type Kind, longestText, type Reading, refuse } from './reading.ts';
import { plainSpelling } from './spelling.ts';

export type AngleUnit = 'degree' | 'turn' | 'radian';

const degree: Unit = { shown: '°', times: Math.PI, over: 180 };
const turn: Unit = { shown: 'turns', times: 2 * Math.PI, over: 1 };
const radian: Unit = { shown: 'rad', times: 1, over: 1 };

const unitOf: Readonly<Record<AngleUnit, Unit>> = { degree, turn, radian };

const rules: MeasureRules = {
  units: {
    '°': degree,
    deg: degree,
    degs: degree,
    degree,
    degrees: degree,
    turn,
    turns: turn,
    rad: radian,
    radian,
    radians: radian,
  },
};

const kind: Kind = { called: 'an angle', examples: '22.5°, 90 deg, 1 1/2 turns or 0.39 rad' };

export interface AngleOptions extends Bounds {
  /** What a number without a unit is in. Default degree. */
  readonly unit?: AngleUnit;
}

/** Reads an angle such as `22.5°`, `90 deg`, `1 1/2 turns` or `0.39 rad`. The value is in rad, not wrapped. */
export function parseAngle(text: string, options: AngleOptions = {}): Reading {
  if (text.length > longestText) return refuse(text, 'it is too long for one angle', kind);
  const measure = readMeasure(plainSpelling(text), { ...rules, bare: unitOf[options.unit ?? 'degree'] });
  if (!measure.ok) return refuse(text, measure.why, kind);
  const inDegrees = measure.unit === degree;
  const written = measure.read.replace(' °', '°').replace(/^(−?1) turns$/, '$1 turn');
  const other = formatAngle(measure.value, { unit: inDegrees ? 'radian' : 'degree' });
  const show = (value: number) => formatAngle(value);
  return accept(text, { value: measure.value, written, other }, options, kind, show);
}

export interface AngleStyle {
  /** Default degree. */
  readonly unit?: AngleUnit;
  /** Decimals. Default: up to 2 for degrees, up to 3 for turns, up to 4 for rad. */
  readonly digits?: number;
}

/** Writes an angle given in rad: `22.5°`, `1.5 turns`, `0.3927 rad`. */
export function formatAngle(radians: number, style: AngleStyle = {}): string {
  const unit = style.unit ?? 'degree';
  const { times, over } = unitOf[unit];
  const usual = { degree: 2, turn: 3, radian: 4 }[unit];
  const number = formatNumber((radians * over) / times, {
    digits: style.digits ?? usual,
    trim: style.digits === undefined,
  });
  if (number === '–') return number;
  if (unit === 'degree') return `${number}°`;
  const word = unit === 'radian' ? 'rad' : number === '1' || number === '−1' ? 'turn' : 'turns';
  return number + thinSpace + word;
}
