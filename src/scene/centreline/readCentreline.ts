import { drawingLimits } from './limits.ts';
import { readCsv } from './readCsv.ts';
import { readDxf } from './readDxf.ts';
import { readSvg } from './readSvg.ts';
import { CentrelineError, type Drawing } from './types.ts';

const readers = { csv: readCsv, svg: readSvg, dxf: readDxf } as const;

/** The ending of a file's name when centrelines are read from such files; null when not. */
export function centrelineKind(fileName: string): keyof typeof readers | null {
  const ending = /\.([a-z]+)$/i.exec(fileName)?.[1].toLowerCase() ?? '';
  return Object.hasOwn(readers, ending) ? (ending as keyof typeof readers) : null;
}

/** What a file of centrelines says, read by the ending of its name. Throws CentrelineError in words when it is no such file or too large. */
export function readCentreline(fileName: string, text: string): Drawing {
  const kind = centrelineKind(fileName);
  if (kind === null) throw new CentrelineError(`${fileName} is no .csv, .svg or .dxf file.`);
  if (text.length > drawingLimits.text)
    throw new CentrelineError(`${fileName} is longer than ${drawingLimits.text} letters.`);
  return readers[kind](text);
}
