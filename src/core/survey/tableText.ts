/** A pasted table, cut into cells: lines kept by their number so that a message can name them. */
export interface TableText {
  /** `name = value` lines before the table. */
  readonly settings: readonly { readonly line: number; readonly name: string; readonly value: string }[];
  /** Rows of cells; the first may be a header. */
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/** Longest text and most lines looked at: far beyond any survey. */
export const longestTable = 400_000;
export const mostLines = 10_000;

/** What may part cells, the surest first. */
const delimiters = ['\t', ';', '|', ','] as const;

/** Cuts a text into settings and rows. Empty lines and what follows a # are left out; cells lose quotes around them. */
export function readTable(text: string): TableText {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .slice(0, mostLines)
    .map((raw, index) => ({ line: index + 1, text: raw.replace(/#.*/, '').trim() }))
    .filter((line) => line.text.replaceAll(/[\t;|,\s]/g, '') !== '');
  const settings: TableText['settings'][number][] = [];
  const table: typeof lines = [];
  for (const line of lines) {
    const setting = /^([a-z][a-z ]*?)\s*[=:]\s*([^=]+)$/i.exec(line.text);
    // `1:42` is a grade; a name has letters only. A table that has begun takes everything.
    if (setting && table.length === 0)
      settings.push({ line: line.line, name: words(setting[1]!), value: setting[2]!.trim() });
    else table.push(line);
  }
  const delimiter = delimiterOf(table.map((line) => line.text));
  const rows = table.map(({ line, text: row }) => ({ line, cells: row.split(delimiter).map(bare) }));
  return { settings, rows };
}

/** The delimiter that most lines hold; runs of spaces where none does. */
function delimiterOf(lines: readonly string[]): string | RegExp {
  for (const delimiter of delimiters) {
    const holding = lines.filter((line) => line.includes(delimiter)).length;
    if (holding > lines.length / 2) return delimiter;
  }
  return /\s{2,}|(?<=\S)\s+(?=[-+−]?\d)|\s+(?=[A-Za-z]{3,})/;
}

const bare = (cell: string): string =>
  cell
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .replaceAll('""', '"')
    .trim();

/** A name in small letters with single spaces. */
export const words = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[\s_]+/g, ' ')
    .trim();
