import { type Amount, readAmount } from './amount.ts';
import { splitSign } from './spelling.ts';

/** A unit a builder may write. An amount times `times`, over `over`, is SI: two whole numbers lose least. */
export interface Unit {
  readonly shown: string;
  readonly times: number;
  readonly over: number;
}

/** Units by spelling. Lower-case spellings are found whatever the case; a spelling with capitals only exactly. */
export type Units = Readonly<Record<string, Unit>>;

/** Two units written one after the other, the first a whole number: `2 ft 1 1/2 in`, `1 lb 4 oz`. */
export interface Pair {
  readonly big: Unit;
  readonly small: Unit;
  readonly smallsInBig: number;
}

export interface MeasureRules {
  readonly units: Units;
  readonly pair?: Pair;
  /** What a number without a unit is in; without it such a number is refused. */
  readonly bare?: Unit | undefined;
}

export type Measure =
  | {
      readonly ok: true;
      readonly value: number;
      /** As written, in plain spelling. */
      readonly read: string;
      /** Of the first amount. */
      readonly unit: Unit;
    }
  | { readonly ok: false; readonly why: string };

interface Part {
  readonly text: string;
  readonly amount: Extract<Amount, { ok: true }>;
  readonly unit: Unit;
}

const partPattern = /^([\d.,](?:[\d.,/ -]*[\d.,])?) ?([^\d.,\s-](?:[^\d.,-]*[^\d.,\s-])?)?(-| - | )?/;

const toSi = (amount: number, unit: Unit): number => (amount * unit.times) / unit.over;

const nameUnits = (units: Units): string => [...new Set(Object.values(units).map((unit) => unit.shown))].join(', ');

export function findUnit(units: Units, spelling: string): Unit | undefined {
  if (Object.hasOwn(units, spelling)) return units[spelling];
  const lower = spelling.toLowerCase();
  return Object.hasOwn(units, lower) ? units[lower] : undefined;
}

/** Reads a signed amount with its unit, or a pair of them, from plain spelling. The value is SI. */
export function readMeasure(plain: string, rules: MeasureRules): Measure {
  if (plain === '') return { ok: false, why: 'nothing was written' };
  const { sign, rest } = splitSign(plain);
  const parts: Part[] = [];
  let left = rest;
  while (left !== '') {
    const found = partPattern.exec(left);
    if (!found)
      return { ok: false, why: parts.length ? `${left} is not understood` : 'it does not start with a number' };
    const [all, number, spelling, join] = found;
    const amount = readAmount(number!);
    if (!amount.ok) return amount;
    const unit = spelling === undefined ? rules.bare : findUnit(rules.units, spelling);
    if (!unit) {
      const problem = spelling === undefined ? `${number} has no unit` : `${spelling} is not a unit used here`;
      return { ok: false, why: `${problem}; the units are ${nameUnits(rules.units)}` };
    }
    if (spelling === undefined && (parts.length > 0 || all.length < left.length)) {
      return { ok: false, why: `${number} has no unit beside another that has one` };
    }
    left = left.slice(all.length);
    if (join && join !== ' ' && left === '') return { ok: false, why: 'it ends with a dash' };
    parts.push({ text: number!, amount, unit });
  }
  const minus = sign < 0 ? '−' : '';
  const written = minus + parts.map((part) => `${part.text} ${part.unit.shown}`).join(' ');
  if (parts.length === 1) {
    const [only] = parts;
    return { ok: true, value: sign * toSi(only!.amount.value, only!.unit), read: written, unit: only!.unit };
  }
  return readPair(parts, sign, written, rules.pair);
}

function readPair(parts: readonly Part[], sign: number, written: string, pair: Pair | undefined): Measure {
  const [first, second] = parts;
  if (!pair || parts.length > 2 || first?.unit !== pair.big || second?.unit !== pair.small) {
    const exception = pair ? `, except ${pair.big.shown} followed by ${pair.small.shown}` : '';
    return { ok: false, why: `it mixes units (${written}); one unit at a time${exception}` };
  }
  if (!first.amount.whole) return { ok: false, why: `before ${pair.small.shown} the ${pair.big.shown} must be whole` };
  if (second.amount.value >= pair.smallsInBig) {
    const most = `after ${pair.big.shown} there must be less than ${pair.smallsInBig} ${pair.small.shown}`;
    return { ok: false, why: `${most}, and ${second.text} is not` };
  }
  const smalls = first.amount.value * pair.smallsInBig + second.amount.value;
  return { ok: true, value: sign * toSi(smalls, pair.small), read: written, unit: pair.big };
}
