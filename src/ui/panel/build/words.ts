import type { CutPieces, Standing, SupportRow } from '../../../core/build/index.ts';
import { coarsePitches, type Thread } from '../../../core/survey/index.ts';
import { formatAngle, formatLength, formatNumber, thinSpace } from '../../../core/units/index.ts';
import { distanceShown, type Show } from '../../show.ts';

/** A length to be measured with a rule, without its unit: tenths of a millimetre, or hundredths of an inch and finer by a digit where asked. */
export const figureOf = (metres: number, { lengthUnit }: Show, digits = 1, signed = false): string =>
  formatNumber(lengthUnit === 'mm' ? metres * 1e3 : metres / 0.0254, {
    digits: lengthUnit === 'mm' ? digits : digits + 1,
    ...(signed && { signed: true }),
  });

/** What a support stands above the one before: as a length, or as turns of a nut on a thread. */
export function riseWords({ from }: Pick<SupportRow, 'from'>, thread: Thread | null, show: Show): string {
  if (from === null) return '–';
  if (thread === null) return figureOf(from.rise, show, 2, true);
  return formatNumber(from.rise / coarsePitches[thread], { digits: 2, signed: true });
}

const standings = { board: 'board', strip: 'turn below', floor: 'floor' } as const;

/** What a support stands on. */
export const standingWords = (standing: Standing | null): string => (standing === null ? '' : standings[standing.on]);

const degrees = (rad: number): string => formatAngle(rad, { digits: 1 });

/** Pieces in words: what they are, the blank they come out of, how they are marked out. */
export function pieceWords(piece: CutPieces, show: Show): { what: string; blank: string; how: string } {
  const { shape, count, blank, sector, from, to } = piece;
  const long = (metres: number): string =>
    formatLength(metres, show.lengthUnit === 'mm' ? { digits: 1 } : { unit: 'in' });
  const [fromWords, toWords] = [from, to].map((at) => distanceShown(at, show).shown.join(thinSpace));
  const where = `${fromWords} to ${toWords}`;
  return {
    what: `${count} × ${shape}${sector ? `, ${degrees(sector.angle)}` : ''}`,
    blank: `${figureOf(blank.length, show)} × ${figureOf(blank.width, show)}`,
    how:
      sector === undefined
        ? where
        : `R ${long(sector.radius)} · chords ${long(sector.innerChord)} and ${long(sector.outerChord)} · ends ${degrees(sector.mitre)} off square · ${where}`,
  };
}
