import { kilogramsPerPound, standardGravity } from './constants.ts';
import { type MeasureRules, readMeasure, type Unit } from './measure.ts';
import { formatNumber, thinSpace } from './number.ts';
import { accept, type Bounds, type Kind, longestText, type Reading, refuse } from './reading.ts';
import { plainSpelling } from './spelling.ts';

export type ForceUnit = 'gf' | 'N' | 'ozf' | 'lbf';

const newton: Unit = { shown: 'N', times: 1, over: 1 };
const millinewton: Unit = { shown: 'mN', times: 1, over: 1000 };
const gf: Unit = { shown: 'gf', times: standardGravity, over: 1000 };
const kgf: Unit = { shown: 'kgf', times: standardGravity, over: 1 };
const ozf: Unit = { shown: 'ozf', times: kilogramsPerPound * standardGravity, over: 16 };
const lbf: Unit = { shown: 'lbf', times: kilogramsPerPound * standardGravity, over: 1 };

const unitOf: Readonly<Record<ForceUnit, Unit>> = { gf, N: newton, ozf, lbf };

/** In a field for a force the weight of `90 g` is meant: builders read pulls off a scale that says grams. */
const rules: MeasureRules = {
  units: {
    gf,
    g: gf,
    gram: gf,
    grams: gf,
    n: newton,
    newton,
    newtons: newton,
    mN: millinewton,
    kgf,
    kg: kgf,
    ozf,
    oz: ozf,
    lbf,
    lb: lbf,
    lbs: lbf,
  },
};

const kind: Kind = { called: 'a force', examples: '90 gf, 0.9 N or 3.2 ozf' };

export interface ForceOptions extends Bounds {
  /** What a number without a unit is in; without it such a number is refused. */
  readonly unit?: ForceUnit;
}

/** Reads a force such as `90gf`, `0.9N`, `3.2ozf`; `90 g` is taken as the weight of 90 g. The value is in N. */
export function parseForce(text: string, options: ForceOptions = {}): Reading {
  if (text.length > longestText) return refuse(text, 'it is too long for one force', kind);
  const bare = options.unit === undefined ? undefined : unitOf[options.unit];
  const measure = readMeasure(plainSpelling(text), { ...rules, bare });
  if (!measure.ok) return refuse(text, measure.why, kind);
  const inNewtons = measure.unit === newton || measure.unit === millinewton;
  const other = formatForce(measure.value, { unit: inNewtons ? 'gf' : 'N' });
  const show = (value: number) => formatForce(value, { unit: inNewtons ? 'N' : 'gf' });
  return accept(text, { value: measure.value, written: measure.read, other }, options, kind, show);
}

export interface ForceStyle {
  /** Default N. */
  readonly unit?: ForceUnit;
  /** Decimals. Default: up to 3 for N and lbf, up to 1 for gf, up to 2 for ozf. */
  readonly digits?: number;
  /** A plus before what is above zero, for draft against buff. */
  readonly signed?: boolean;
}

/** Writes a force given in N: `0.883 N`, `90 gf`, `3.17 ozf`. */
export function formatForce(newtons: number, style: ForceStyle = {}): string {
  const unit = style.unit ?? 'N';
  const { times, over } = unitOf[unit];
  const usual = { N: 3, gf: 1, ozf: 2, lbf: 3 }[unit];
  const number = formatNumber((newtons * over) / times, {
    digits: style.digits ?? usual,
    trim: style.digits === undefined,
    signed: style.signed ?? false,
  });
  return number === '–' ? number : number + thinSpace + unit;
}
