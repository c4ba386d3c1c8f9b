import { type GradeForm, type LengthUnit, parseGrade, parseLength } from '../units/index.ts';
import { usualInstruments } from './instruments.ts';
import { type ColumnKind, headWords, type ReadingColumn, readHead, readingKind } from './readingColumns.ts';
import { longestTable, readTable } from './tableText.ts';
import type { CrossReading, Instrument, Place, Reading, ReadingKind } from './types.ts';

/** Something that a person has to mend in a pasted table. */
export interface TextProblem {
  /** From 1; 0 for the text as a whole. */
  readonly line: number;
  readonly message: string;
}

export interface ReadingsText {
  readonly readings: readonly Reading[];
  readonly crosses: readonly CrossReading[];
  readonly instruments: readonly Instrument[];
  readonly problems: readonly TextProblem[];
}

/** Thrown within one line; its message goes to the person. */
class LineProblem extends Error {}

type Kind = ReadingKind;

/** Names of instruments in settings: `level step = 0.1°`. */
const toolOf: Readonly<Record<string, Kind>> = {
  level: 'grade',
  grade: 'grade',
  line: 'height',
  laser: 'height',
  height: 'height',
  spacer: 'rise',
  spacers: 'rise',
  straightedge: 'gap',
  gap: 'gap',
  cross: 'cross',
  'cross-level': 'cross',
};

const errorOf: Readonly<Record<string, 'deviation' | 'step' | 'zero'>> = {
  error: 'deviation',
  sd: 'deviation',
  deviation: 'deviation',
  step: 'step',
  resolution: 'step',
  zero: 'zero',
};

/** What settings lay down for all rows. */
interface Common {
  base: number | null;
  anchor: 'centre' | 'start';
  board: number;
  line: string | null;
  instruments: Record<Kind, Instrument>;
}

/**
 * Reads a pasted or exported table of readings, one line for each place. Cells are parted by tabs, semicolons, commas or runs of
 * spaces; the first line names the columns (`support; grade %; turned %; height mm`), in any order and any mix. Lines
 * `name = value` before it set base, anchor, line, board, and error, step or zero of level, line, spacer, straightedge and cross.
 * What cannot be read is told by line, and everything else is read all the same.
 */
export function parseReadings(text: string): ReadingsText {
  if (text.length > longestTable) {
    const message = `The text is ${text.length} characters long; a table of readings has at most ${longestTable}.`;
    return { readings: [], crosses: [], instruments: [], problems: [{ line: 0, message }] };
  }
  const problems: TextProblem[] = [];
  const { settings, rows } = readTable(text);
  const common: Common = { base: null, anchor: 'centre', board: 0, line: null, instruments: { ...usualInstruments } };
  const attempt = (line: number, work: () => void): void => {
    try {
      work();
    } catch (error) {
      if (!(error instanceof LineProblem)) throw error;
      problems.push({ line, message: error.message });
    }
  };
  for (const { line, name, value } of settings) attempt(line, () => set(common, name, value));
  const readings: Reading[] = [];
  const crosses: CrossReading[] = [];
  const header = rows[0] === undefined ? null : headerOf(rows[0].cells);
  if (header === 'unknown') {
    const message = `“${rows[0].cells.join(' | ')}” names no columns. Use ${headWords}, with units in brackets.`;
    return { readings, crosses, instruments: [], problems: [...problems, { line: rows[0].line, message }] };
  }
  const columns = header ?? plainColumns;
  for (const { line, cells } of header === null ? rows : rows.slice(1)) {
    attempt(line, () => {
      const row = rowReadings(columns, cells, line, common);
      readings.push(...row.readings);
      crosses.push(...row.crosses);
    });
  }
  if (readings.length + crosses.length === 0 && problems.length === 0) {
    const message =
      'There are no readings. Write a line such as “support; grade %; height mm”, and one line for each place below it.';
    problems.push({ line: 0, message });
  }
  const used = new Set([...readings, ...crosses].map((reading) => reading.instrument));
  return {
    readings,
    crosses,
    instruments: Object.values(common.instruments).filter(({ id }) => used.has(id)),
    problems,
  };
}

/** Without a header: which support, and what was read there, with its unit. */
const plainColumns: readonly ReadingColumn[] = (['support', 'reading', 'note'] as const).map((kind) => ({
  kind,
  length: undefined,
  grade: undefined,
}));

/** Null when the first line holds numbers and so is a reading; 'unknown' when it holds words nobody knows. */
function headerOf(cells: readonly string[]): (ReadingColumn | null)[] | 'unknown' | null {
  const heads = cells.map(readHead);
  if (heads.some((head) => head !== null)) return heads;
  return /^\d/.test(cells[0] ?? '') ? null : 'unknown';
}

function set(common: Common, name: string, value: string): void {
  if (name === 'base') common.base = length(value, undefined);
  else if (name === 'board' || name === 'deck') common.board = length(value, undefined);
  else if (name === 'line' || name === 'laser line') common.line = value;
  else if (name === 'anchor') {
    if (!/^(start|centre|center|middle)$/i.test(value)) {
      throw new LineProblem(`“${value}”: write start (the place is under the first foot) or centre.`);
    }
    common.anchor = /^start$/i.test(value) ? 'start' : 'centre';
  } else {
    const [tool, what] = name.split(' ');
    const kind = toolOf[tool ?? ''];
    const error = errorOf[what ?? ''];
    if (kind === undefined || error === undefined) {
      throw new LineProblem(
        `“${name}” is not a setting. Write base, anchor, line, board, or error, step or zero of level, line, spacer, straightedge or cross, like level step = 0.1 %.`,
      );
    }
    const amount = Math.abs(kind === 'grade' || kind === 'cross' ? grade(value, undefined) : length(value, undefined));
    common.instruments[kind] = { ...common.instruments[kind], [error]: amount };
  }
}

function rowReadings(
  columns: readonly (ReadingColumn | null)[],
  cells: readonly string[],
  line: number,
  common: Common,
): Pick<ReadingsText, 'readings' | 'crosses'> {
  if (cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== '')) {
    throw new LineProblem(
      `It has ${cells.length} cells and the header names ${columns.length}. Where numbers have a decimal comma, part cells by semicolons.`,
    );
  }
  const cell = (kind: ColumnKind): { text: string; column: ReadingColumn } | null => {
    const at = columns.findIndex((column, i) => column?.kind === kind && (cells[i] ?? '') !== '');
    return at < 0 ? null : { text: cells[at]!, column: columns[at]! };
  };
  const place = placeOf(cell('support'), cell('chainage'));
  const measured = (kind: ColumnKind) => {
    const own = cell(kind);
    if (own !== null) return own;
    const reading = cell('reading');
    if (reading === null) return null;
    const named = cell('kind');
    const meant = named === null ? kindByUnit(reading.text, reading.column) : readingKind(named.text);
    if (meant === null)
      throw new LineProblem(`“${named?.text}” is no kind of reading. Write grade, height, drop, spacer, gap or cross.`);
    return meant === kind ? reading : null;
  };
  const named = `line ${line}`;
  const baseCell = cell('base');
  const base = baseCell === null ? common.base : length(baseCell.text, baseCell.column.length);
  const needBase = (): number => {
    if (base === null)
      throw new LineProblem(
        'A grade or a gap needs the length it was taken over. Add a column base, or a line base = 300 mm.',
      );
    return base;
  };
  const found: Reading[] = [];
  for (const [kind, face] of [
    ['grade', 1],
    ['turned', -1],
  ] as const) {
    const one = face === 1 ? measured('grade') : cell('turned');
    if (one === null) continue;
    const value = grade(one.text, one.column.grade);
    const unit = unitOf(one);
    const { id: instrument } = common.instruments.grade;
    const name = kind === 'turned' ? `${named} turned` : named;
    found.push({
      kind: 'grade',
      name,
      instrument,
      at: place,
      anchor: common.anchor,
      base: needBase(),
      grade: value,
      unit,
      face,
    });
  }
  const height = measured('height');
  const drop = measured('drop');
  const line_ = cell('line')?.text ?? common.line;
  const { id: liner } = common.instruments.height;
  if (height !== null) {
    const value = length(height.text, height.column.length);
    found.push({ kind: 'height', name: named, instrument: liner, at: place, height: value, line: line_ });
  }
  if (drop !== null) {
    const value = -length(drop.text, drop.column.length);
    found.push({ kind: 'height', name: named, instrument: liner, at: place, height: value, line: line_ ?? 'line' });
  }
  const spacer = measured('spacer');
  if (spacer !== null) found.push(spacerReading(spacer, cell('from'), place, named, common));
  const gap = measured('gap');
  if (gap !== null) {
    const value = length(gap.text, gap.column.length);
    found.push({
      kind: 'gap',
      name: named,
      instrument: common.instruments.gap.id,
      at: place,
      base: needBase(),
      gap: value,
    });
  }
  const crosses: CrossReading[] = [];
  const cross = measured('cross');
  if (cross !== null) {
    const { id: instrument } = common.instruments.cross;
    const slope = grade(cross.text, cross.column.grade);
    crosses.push({ name: named, instrument, at: place, slope, unit: unitOf(cross) });
  }
  if (found.length + crosses.length === 0)
    throw new LineProblem('Nothing is read here: every cell for a grade, height, drop, spacer, gap or cross is empty.');
  return { readings: found, crosses };
}

const unitOf = ({ text, column }: NonNullable<Cell>): CrossReading['unit'] =>
  column.grade === 'degree' || /°|deg/i.test(text) ? 'degree' : 'percent';

type Cell = { readonly text: string; readonly column: ReadingColumn } | null;

function spacerReading(spacer: NonNullable<Cell>, from: Cell, to: Place, name: string, common: Common): Reading {
  if (!('support' in to)) throw new LineProblem('A spacer stands at a support: give its number.');
  const lower = from === null ? to.support - 1 : supportNumber(from.text);
  if (lower < 0)
    throw new LineProblem('Below support 1 there is none: say in a column from which support it is measured.');
  const rise = length(spacer.text, spacer.column.length);
  const { id: instrument } = common.instruments.rise;
  return { kind: 'rise', name, instrument, from: { support: lower }, to, rise, board: common.board };
}

function placeOf(support: Cell, chainage: Cell): Place {
  if (support !== null) return { support: supportNumber(support.text) };
  if (chainage !== null) return { chainage: length(chainage.text, chainage.column.length) };
  throw new LineProblem('It names no place: give a support or a chainage.');
}

function supportNumber(text: string): number {
  const digits = /^(?:[a-z]+\.? ?)?(\d{1,4})$/i.exec(text);
  const number = digits === null ? 0 : Number(digits[1]);
  if (number < 1) throw new LineProblem(`“${text}” is no support. Supports are counted 1, 2, 3, … along the track.`);
  return number - 1;
}

function kindByUnit(text: string, column: ReadingColumn): ColumnKind {
  return column.grade !== undefined || /%|‰|°|deg|cent|\d ?(in|:) ?\d/i.test(text) ? 'grade' : 'height';
}

function length(text: string, unit: LengthUnit | undefined): number {
  const read = parseLength(text, unit === undefined ? {} : { unit });
  if (!read.ok) throw new LineProblem(read.message);
  return read.value;
}

function grade(text: string, bare: GradeForm | undefined): number {
  const read = parseGrade(text, bare === undefined ? {} : { bare });
  if (!read.ok) throw new LineProblem(read.message);
  return read.value;
}
