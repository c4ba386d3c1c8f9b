import { DrawingWriter } from './drawingWriter.ts';
import { unitsMm } from './lengthUnits.ts';
import type { Drawing, DrawnPoint } from './types.ts';

/**
 * A table of points: x, y and, if wanted, z in columns, one point a row, parted by comma, semicolon, tab or spaces. A first row may name the columns, with units
 * ("x mm", "y (in)", "z_m"); without, the columns are x, y, z in mm. Rows that start with # are passed over, and an empty row starts another line.
 */
export function readCsv(text: string): Drawing {
  const writer = new DrawingWriter();
  const rows = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const first = rows.find((row) => row.trim() !== '' && !row.startsWith('#')) ?? '';
  const delimiter = delimiterOf(first);
  // Where semicolons or tabs part the columns, a comma is a decimal one.
  const decimalComma = delimiter === ';' || delimiter === '\t';
  const cells = (row: string): string[] =>
    delimiter === ' '
      ? row.trim().split(/[ \t]+/)
      : row.split(delimiter).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
  const numberOf = (cell: string): number => numberIn(decimalComma ? cell.replace(',', '.') : cell);
  let columns: readonly Column[] | null = null;
  let line: DrawnPoint[] = [];
  rows.forEach((row, index) => {
    if (row.startsWith('#')) return;
    if (row.trim() === '') {
      writer.add(line);
      line = [];
      return;
    }
    const found = cells(row);
    if (columns === null) {
      columns = namedColumns(found);
      if (columns !== null) return;
      columns = plainColumns;
      writer.assume('The table does not name its units: taken as mm.');
    }
    const [xMm, yMm, zMm] = columns.map((column) => {
      const cell = column.index < found.length ? found[column.index] : '';
      return cell === '' && column.mayMiss ? undefined : numberOf(cell) * column.mm;
    });
    const numbers = [xMm, yMm, zMm].filter((one) => one !== undefined);
    if (xMm === undefined || yMm === undefined || !numbers.every(Number.isFinite)) {
      writer.wrong(index + 1, `"${row.slice(0, 60)}" is not two or three numbers`);
      return;
    }
    line.push(zMm === undefined ? { xMm, yMm } : { xMm, yMm, zMm });
  });
  writer.add(line);
  return writer.drawing();
}

interface Column {
  readonly index: number;
  readonly mm: number;
  readonly mayMiss: boolean;
}

const plainColumns: readonly Column[] = [0, 1, 2].map((index) => ({ index, mm: 1, mayMiss: index === 2 }));

const delimiterOf = (row: string): string => [';', '\t', ','].find((one) => row.includes(one)) ?? ' ';

/** Longer cells are neither numbers nor names of columns. */
const longestCell = 60;

const numberIn = (cell: string): number =>
  cell.length <= longestCell && /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell) ? Number(cell) : Number.NaN;

/** The columns that a first row names; null when it names no x and y. */
function namedColumns(cells: readonly string[]): readonly Column[] | null {
  const columns: (Column | undefined)[] = ['x', 'y', 'z'].map((name) => {
    const index = cells.findIndex((cell) => cell.length <= longestCell && nameOf(cell) === name);
    return index < 0 ? undefined : { index, mm: unitOf(cells[index]), mayMiss: name === 'z' };
  });
  const [x, y, z] = columns;
  return x === undefined || y === undefined ? null : z === undefined ? [x, y] : [x, y, z];
}

const nameOf = (cell: string): string => /^([a-z])(?![a-z])/i.exec(cell)?.[1].toLowerCase() ?? '';

function unitOf(cell: string): number {
  const unit = /[^a-z]([a-z]+)[^a-z]*$/i.exec(cell)?.[1].toLowerCase() ?? 'mm';
  return Object.hasOwn(unitsMm, unit) ? unitsMm[unit] : 1;
}
