import { type Affine, affineOf, composed, identity } from './affine.ts';
import { DrawingWriter } from './drawingWriter.ts';
import { unitsMm } from './lengthUnits.ts';
import { drawingLimits } from './limits.ts';
import { pathLines } from './pathData.ts';
import { CentrelineError, type Drawing } from './types.ts';

/** What is drawn elsewhere, or not at all. */
const notDrawn = new Set(['defs', 'symbol', 'clippath', 'mask', 'pattern', 'marker']);

/** A CSS pixel, mm. Source: CSS Values and Units, 96 to the inch. */
const pixelMm = 25.4 / 96;

/**
 * The paths, lines and polylines of an SVG file, with the transforms of their groups; x to the east, y to the north. A unit is what width and viewBox make of it, or a
 * pixel of 1/96 inch. Only these elements are read; scripts, styles and links are passed over. Throws CentrelineError when it is no such file.
 */
export function readSvg(text: string): Drawing {
  const writer = new DrawingWriter();
  const maps: Affine[] = [];
  const names: string[] = [];
  let hidden = 0;
  let seen = false;
  for (const tag of tagsOf(text)) {
    if (tag.closes) {
      if (names[names.length - 1] !== tag.name) continue;
      names.pop();
      maps.pop();
      if (notDrawn.has(tag.name)) hidden--;
      continue;
    }
    if (names.length >= drawingLimits.depth)
      throw new CentrelineError(`More than ${drawingLimits.depth} groups within each other.`);
    const outer = maps[maps.length - 1] ?? identity;
    const own = affineOf(tag.attributes.get('transform') ?? '');
    if (own === null) writer.wrong(tag.line, 'a transform that cannot be read');
    let map = composed(outer, own ?? identity);
    if (tag.name === 'svg') {
      if (!seen) map = pageMap(tag, writer);
      seen = true;
    }
    const d = dataOf(tag);
    if (d !== null && hidden === 0 && seen) {
      const { lines, problem } = pathLines(d, map);
      for (const line of lines) {
        if (line.every(({ xMm, yMm, bulge = 0 }) => [xMm, yMm, bulge].every(Number.isFinite))) writer.add(line);
        else writer.wrong(tag.line, 'numbers beyond bounds');
      }
      if (problem !== undefined) writer.wrong(tag.line, problem);
    }
    if (tag.empty) continue;
    names.push(tag.name);
    maps.push(map);
    if (notDrawn.has(tag.name)) hidden++;
  }
  if (!seen) throw new CentrelineError('There is no svg element in the file.');
  return writer.drawing();
}

/** From units of the page to mm, y up. */
function pageMap({ attributes }: Tag, writer: DrawingWriter): Affine {
  const box = (attributes.get('viewbox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const width = /^([\d.]+)\s*(mm|cm|in)$/.exec((attributes.get('width') ?? '').trim());
  const known = width !== null && Number(width[1]) > 0;
  const mm = known && box.length === 4 && box[2] > 0 ? (Number(width[1]) * unitsMm[width[2]]) / box[2] : pixelMm;
  if (!known) writer.assume('The drawing gives no width in mm, cm or inches: a unit is taken as 1/96 inch.');
  return [mm, 0, 0, -mm, 0, 0];
}

/** What an element draws, as the data of a path; null when nothing that is read here. */
function dataOf({ name, attributes }: Tag): string | null {
  if (name === 'path') return attributes.get('d') ?? null;
  if (name === 'polyline') return `M${attributes.get('points') ?? ''}`;
  if (name !== 'line') return null;
  const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((key) => attributes.get(key) ?? '0');
  return `M${x1},${y1}L${x2},${y2}`;
}

interface Tag {
  /** Without its prefix, in small letters. */
  readonly name: string;
  readonly closes: boolean;
  readonly empty: boolean;
  readonly attributes: ReadonlyMap<string, string>;
  readonly line: number;
}

/** The tags of a text of markup, in one pass; comments, instructions and character data are passed over. */
function* tagsOf(text: string): Generator<Tag> {
  let line = 1;
  let counted = 0;
  for (let i = text.indexOf('<'); i >= 0; i = text.indexOf('<', i)) {
    const passed = [
      ['<!--', '-->'],
      ['<![CDATA[', ']]>'],
      ['<?', '?>'],
      ['<!', '>'],
    ].find(([opens]) => text.startsWith(opens, i));
    const ends = passed ? text.indexOf(passed[1], i + passed[0].length) : tagEnd(text, i);
    if (ends < 0) return;
    for (; counted < i; counted++) if (text[counted] === '\n') line++;
    if (!passed) {
      const inner = text.slice(i + 1, ends);
      const name = /^\/?\s*(?:[\w-]+:)?([\w-]+)/.exec(inner)?.[1].toLowerCase() ?? '';
      const attributes = new Map<string, string>();
      for (const [, key, , double = '', single = ''] of inner.matchAll(
        /([\w:-]{1,60})\s{0,20}=\s{0,20}("([^"]*)"|'([^']*)')/g,
      )) {
        attributes.set(key.toLowerCase(), double || single);
      }
      yield { name, closes: inner.startsWith('/'), empty: inner.endsWith('/'), attributes, line };
    }
    i = ends + 1;
  }
}

/** Where a tag ends: the first > outside quotes. */
function tagEnd(text: string, from: number): number {
  let quote = '';
  for (let i = from + 1; i < text.length; i++) {
    const letter = text[i];
    if (quote !== '') {
      if (letter === quote) quote = '';
    } else if (letter === '"' || letter === "'") quote = letter;
    else if (letter === '>') return i;
  }
  return -1;
}
