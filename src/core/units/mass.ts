import { kilogramsPerPound } from './constants.ts';
import { type MeasureRules, readMeasure, type Unit } from './measure.ts';
import { formatNumber, thinSpace } from './number.ts';
import { accept, type Bounds, type Kind, longestText, type Reading, refuse } from './reading.ts';
import { plainSpelling } from './spelling.ts';

export type MassUnit = 'g' | 'kg' | 'oz' | 'lb';

const g: Unit = { shown: 'g', times: 1, over: 1000 };
const kg: Unit = { shown: 'kg', times: 1, over: 1 };
const oz: Unit = { shown: 'oz', times: kilogramsPerPound, over: 16 };
const lb: Unit = { shown: 'lb', times: kilogramsPerPound, over: 1 };

const unitOf: Readonly<Record<MassUnit, Unit>> = { g, kg, oz, lb };

const rules: MeasureRules = {
  units: {
    g,
    gram: g,
    grams: g,
    gramme: g,
    grammes: g,
    kg,
    kilo: kg,
    kilos: kg,
    kilogram: kg,
    kilograms: kg,
    oz,
    ounce: oz,
    ounces: oz,
    lb,
    lbs: lb,
    pound: lb,
    pounds: lb,
  },
  pair: { big: lb, small: oz, smallsInBig: 16 },
};

const kind: Kind = { called: 'a mass', examples: '150 g, 0.3 kg, 5 oz, 2 lb or 1 lb 4 oz' };

export interface MassOptions extends Bounds {
  /** What a number without a unit is in. Default g. */
  readonly unit?: MassUnit;
}

/** Reads a mass such as `150g`, `0.3 kg`, `5oz` or `1 lb 4 oz`. The value is in kg and never negative. */
export function parseMass(text: string, options: MassOptions = {}): Reading {
  if (text.length > longestText) return refuse(text, 'it is too long for one mass', kind);
  const measure = readMeasure(plainSpelling(text), { ...rules, bare: unitOf[options.unit ?? 'g'] });
  if (!measure.ok) return refuse(text, measure.why, kind);
  if (measure.value < 0) return refuse(text, 'a mass cannot be negative', kind);
  const metric = measure.unit === g || measure.unit === kg;
  const other = formatMass(measure.value, { unit: metric ? 'oz' : 'g' });
  const show = (value: number) => formatMass(value, { unit: metric ? 'g' : 'oz' });
  return accept(text, { value: measure.value, written: measure.read, other }, options, kind, show);
}

export interface MassStyle {
  /** Default g. */
  readonly unit?: MassUnit;
  /** Decimals. Default: up to 1 for g, up to 2 for oz, up to 3 for kg and lb. */
  readonly digits?: number;
}

/** Writes a mass given in kg: `150 g`, `5.29 oz`. */
export function formatMass(kilograms: number, style: MassStyle = {}): string {
  const unit = style.unit ?? 'g';
  const { times, over } = unitOf[unit];
  const usual = { g: 1, kg: 3, oz: 2, lb: 3 }[unit];
  const number = formatNumber((kilograms * over) / times, {
    digits: style.digits ?? usual,
    trim: style.digits === undefined,
  });
  return number === '–' ? number : number + thinSpace + unit;
}
