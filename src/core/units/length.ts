import { metresPerInch } from './constants.ts';
import { type MeasureRules, readMeasure, type Unit } from './measure.ts';
import { formatNumber, thinSpace } from './number.ts';
import { accept, type Bounds, type Kind, longestText, type Reading, refuse } from './reading.ts';
import { plainSpelling } from './spelling.ts';

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

const mm: Unit = { shown: 'mm', times: 1, over: 1000 };
const cm: Unit = { shown: 'cm', times: 1, over: 100 };
const m: Unit = { shown: 'm', times: 1, over: 1 };
const inch: Unit = { shown: 'in', times: 254, over: 10_000 };
const foot: Unit = { shown: 'ft', times: 3048, over: 10_000 };

const unitOf: Readonly<Record<LengthUnit, Unit>> = { mm, cm, m, in: inch, ft: foot };

export const lengthRules: MeasureRules = {
  units: {
    mm,
    millimetre: mm,
    millimetres: mm,
    millimeter: mm,
    millimeters: mm,
    cm,
    centimetre: cm,
    centimetres: cm,
    centimeter: cm,
    centimeters: cm,
    m,
    metre: m,
    metres: m,
    meter: m,
    meters: m,
    in: inch,
    ins: inch,
    inch,
    inches: inch,
    '"': inch,
    ft: foot,
    foot,
    feet: foot,
    "'": foot,
  },
  pair: { big: foot, small: inch, smallsInBig: 12 },
};

const kind: Kind = { called: 'a length', examples: `610 mm, 61 cm, 0.61 m, 24", 1 1/2 in or 2' 1 1/2"` };

export interface LengthOptions extends Bounds {
  /** What a number without a unit is in. Default mm. */
  readonly unit?: LengthUnit;
}

/** Reads a length such as `24in`, `24"`, `610`, `2' 1 1/2"`, `0.6m` or `61 cm`. The value is in m. */
export function parseLength(text: string, options: LengthOptions = {}): Reading {
  if (text.length > longestText) return refuse(text, 'it is too long for one length', kind);
  const measure = readMeasure(plainSpelling(text), { ...lengthRules, bare: unitOf[options.unit ?? 'mm'] });
  if (!measure.ok) return refuse(text, measure.why, kind);
  const inInches = measure.unit === inch || measure.unit === foot;
  const other = formatLength(measure.value, { unit: inInches ? 'mm' : 'in' });
  const show = (value: number) => formatLength(value, { unit: inInches ? 'in' : 'mm' });
  return accept(text, { value: measure.value, written: measure.read, other }, options, kind, show);
}

export interface LengthStyle {
  /** Default mm. */
  readonly unit?: LengthUnit;
  /** Decimals. Default: up to 1 for mm, up to 2 for cm, up to 3 for m; inches and feet are then shown as a fraction. */
  readonly digits?: number;
  /** Parts of an inch that fractions are rounded to. Default 16, and thousandths below a quarter of an inch. */
  readonly fraction?: 2 | 4 | 8 | 16 | 32 | 64;
  /** A plus before what is above zero, for departures. */
  readonly signed?: boolean;
}

/** Below a quarter of an inch a sixteenth is too coarse, and modellers write thousandths. In thousandths. */
const smallestFraction = 250;

/** Writes a length given in m: `609.6 mm`, `11 13/16″`, `2′ 1 1/2″` (unit ft), `0.118 in`. Not finite: an en dash. */
export function formatLength(metres: number, style: LengthStyle = {}): string {
  const unit = style.unit ?? 'mm';
  if (!Number.isFinite(metres)) return '–';
  const signed = style.signed === undefined ? {} : { signed: style.signed };
  if ((unit === 'in' || unit === 'ft') && style.digits === undefined) {
    const steps = Math.round(Math.abs(metres) / (0.001 * metresPerInch));
    if (style.fraction === undefined && steps > 0 && steps < smallestFraction) {
      return formatLength(metres, { ...style, unit: 'in', digits: 3 });
    }
    return inchFraction(metres, style.fraction ?? 16, unit === 'ft', style.signed ?? false);
  }
  const { times, over } = unitOf[unit];
  const usual = { mm: 1, cm: 2, m: 3, in: 3, ft: 3 }[unit];
  const number = formatNumber((metres * over) / times, {
    digits: style.digits ?? usual,
    trim: style.digits === undefined,
    ...signed,
  });
  return number + thinSpace + unit;
}

function inchFraction(metres: number, parts: number, withFeet: boolean, signed: boolean): string {
  const total = Math.round((Math.abs(metres) * parts * inch.over) / inch.times);
  const sign = total === 0 ? '' : metres < 0 ? '−' : signed ? '+' : '';
  const wholeInches = Math.floor(total / parts);
  let top = total % parts;
  let bottom = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const feet = withFeet ? Math.floor(wholeInches / 12) : 0;
  const inches = wholeInches - 12 * feet;
  const fraction = top > 0 ? `${top}/${bottom}` : '';
  const inchText =
    inches > 0 && fraction ? `${inches} ${fraction}` : inches > 0 || !fraction ? String(inches) : fraction;
  const feetText = feet > 0 ? `${feet}′` : '';
  if (feetText && inches === 0 && !fraction) return sign + feetText;
  return `${sign}${feetText}${feetText ? ' ' : ''}${inchText}″`;
}
