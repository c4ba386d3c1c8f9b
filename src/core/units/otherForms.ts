import { formatAngle } from './angle.ts';
import { formatForce } from './force.ts';
import { formatGrade } from './grade.ts';
import { formatLength } from './length.ts';
import { formatMass } from './mass.ts';
import { formatSpeed } from './speed.ts';

export type QuantityKind = 'length' | 'grade' | 'mass' | 'force' | 'angle' | 'speed';

export interface OtherFormsOptions {
  /** The unit or form the field itself shows, which is then left out: `mm`, `percent`, `gf`, … */
  readonly shown?: string;
  /** N of the scale 1:N, for scale speeds. */
  readonly scale?: number;
}

type Form = readonly [unit: string, write: (value: number, scale: number | undefined) => string];

const forms: Readonly<Record<QuantityKind, readonly Form[]>> = {
  length: [
    ['mm', (value) => formatLength(value, { unit: 'mm' })],
    ['in', (value) => formatLength(value, { unit: 'in' })],
    ['ft', (value) => formatLength(value, { unit: 'ft' })],
  ],
  grade: [
    ['one-in', (value) => formatGrade(value, { form: 'one-in' })],
    ['percent', (value) => formatGrade(value, { form: 'percent' })],
    ['permille', (value) => formatGrade(value, { form: 'permille' })],
    ['degree', (value) => formatGrade(value, { form: 'degree' })],
  ],
  mass: [
    ['g', (value) => formatMass(value, { unit: 'g' })],
    ['oz', (value) => formatMass(value, { unit: 'oz' })],
  ],
  force: [
    ['N', (value) => formatForce(value, { unit: 'N' })],
    ['gf', (value) => formatForce(value, { unit: 'gf' })],
    ['ozf', (value) => formatForce(value, { unit: 'ozf' })],
  ],
  angle: [
    ['degree', (value) => formatAngle(value, { unit: 'degree' })],
    ['turn', (value) => formatAngle(value, { unit: 'turn' })],
    ['radian', (value) => formatAngle(value, { unit: 'radian' })],
  ],
  speed: [
    ['m/s', (value) => formatSpeed(value, { unit: 'm/s' })],
    ['mm/s', (value) => formatSpeed(value, { unit: 'mm/s' })],
    ['km/h', (value, scale) => (scale === undefined ? '' : formatSpeed(value, { unit: 'km/h', scale }))],
    ['mph', (value, scale) => (scale === undefined ? '' : formatSpeed(value, { unit: 'mph', scale }))],
  ],
};

/** The other ways to write an SI value, for the margin of its field; forms that read the same appear once. */
export function otherForms(value: number, kind: QuantityKind, options: OtherFormsOptions = {}): string[] {
  if (!Number.isFinite(value)) return [];
  const all = forms[kind].map(([unit, write]) => ({ unit, text: write(value, options.scale) }));
  const own = all.find((form) => form.unit === options.shown)?.text;
  const others = all.filter((form) => form.unit !== options.shown && form.text !== own && form.text !== '');
  return [...new Set(others.map((form) => form.text))];
}
