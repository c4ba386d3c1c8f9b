import type { GradeForm, LengthUnit } from '../units/index.ts';
import { words } from './tableText.ts';

/** What a column of a table of readings holds. */
export type ColumnKind =
  | 'support'
  | 'chainage'
  | 'from'
  | 'base'
  | 'line'
  | 'kind'
  | 'reading'
  | 'grade'
  | 'turned'
  | 'height'
  | 'drop'
  | 'spacer'
  | 'gap'
  | 'cross'
  | 'note';

export interface ReadingColumn {
  readonly kind: ColumnKind;
  readonly length: LengthUnit | undefined;
  readonly grade: GradeForm | undefined;
}

/** Header words by what they head. The first of a list is the one that messages name. */
const heads: readonly (readonly [ColumnKind, readonly string[]])[] = [
  ['support', ['support', 'supports', 'rod', 'nut', 'post', 'riser', 'pier', 'number', 'no', 'nr']],
  ['chainage', ['chainage', 'station', 'at', 'place', 'position', 'distance']],
  ['from', ['from', 'from support', 'below', 'lower support']],
  ['base', ['base', 'length', 'over', 'level length']],
  ['line', ['line', 'laser line', 'setup', 'water level']],
  ['kind', ['kind', 'what', 'type']],
  ['reading', ['reading', 'value', 'read']],
  ['grade', ['grade', 'gradient', 'slope', 'level', 'incline']],
  ['turned', ['turned', 'reversed', 'second face', 'face 2', 'turned round']],
  ['height', ['height', 'rail top', 'elevation']],
  ['drop', ['drop', 'below line', 'down from line', 'staff']],
  ['spacer', ['spacer', 'rise', 'step up', 'thickness']],
  ['gap', ['gap', 'straightedge', 'hollow']],
  ['cross', ['cross', 'cross level', 'crosslevel', 'across', 'cant']],
  ['note', ['note', 'notes', 'remark', 'remarks', 'comment']],
];

/** Header words that messages name. */
export const headWords = heads.map(([, names]) => names[0]).join(', ');

const lengthUnits: Readonly<Record<string, LengthUnit>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  ft: 'ft',
};

const gradeForms: Readonly<Record<string, GradeForm>> = {
  '%': 'percent',
  percent: 'percent',
  'per cent': 'percent',
  '‰': 'permille',
  'mm/m': 'permille',
  '°': 'degree',
  deg: 'degree',
  degrees: 'degree',
  '1 in n': 'one-in',
};

/** Reads one head such as `grade (%)`, `chainage mm`, `Base [in]`; null when no word of it is known. */
export function readHead(cell: string): ReadingColumn | null {
  const text = words(cell.replaceAll(/[()[\]{},]/g, ' '));
  for (const [kind, names] of heads) {
    for (const name of names) {
      if (text !== name && !text.startsWith(`${name} `)) continue;
      const unit = text.slice(name.length).trim();
      if (unit !== '' && !(unit in lengthUnits) && !(unit in gradeForms)) continue;
      return { kind, length: lengthUnits[unit], grade: gradeForms[unit] };
    }
  }
  return null;
}

/** The kinds of reading that a `kind` column may name. */
export function readingKind(cell: string): ColumnKind | null {
  const head = readHead(cell);
  return head !== null && ['grade', 'height', 'drop', 'spacer', 'gap', 'cross'].includes(head.kind) ? head.kind : null;
}
