import { trackPoint } from '../../track/index.ts';
import { lineAt } from '../lineShape.ts';
import { chainageOf, gradeFeet } from '../rows.ts';
import type { Place, Reading } from '../types.ts';
import type { Candidate, Family, SlipContext } from './candidate.ts';

/** No edge lies further from its track than this, m: half a board of 300 mm (common practice, no source). */
const widestHalfBoard = 0.15;

/**
 * Measured at the edge of the board instead of the track. The amount is how far outside the centreline the edge lies:
 * a way along it is longer by that times the angle turned through.
 *
 * At fault can be the plan, whose radius is then the edge's: supports, set out by angle, keep their heights, and every grade
 * is steeper by edge/radius. Or the chainages of the readings: each was taken short of where it is written.
 */
export function edgeRadius({ shape, readings, rows }: SlipContext): Family {
  const turned = (s: number): number => {
    const { plan } = shape;
    return trackPoint(plan, s).heading - trackPoint(plan, 0).heading;
  };
  const steeper = readings.map((reading): number => {
    if (reading.kind !== 'grade') return 0;
    const { from, to } = gradeFeet(shape, reading);
    return (rowGrade(reading) * Math.abs(turned(to) - turned(from))) / (to - from);
  });
  const further = readings.map((reading): number => {
    const place = writtenChainage(reading);
    if (place === null) return 0;
    const order = reading.kind === 'height' ? 1 : 2;
    return reading.kind === 'gap' ? 0 : -lineAt(shape, place, order).planned * Math.abs(turned(place));
  });
  const candidates = [steeper, further].flatMap((amounts, which): Candidate[] => {
    const concerned = amounts.flatMap((amount, index) => (amount === 0 ? [] : [index]));
    if (concerned.length < 2) return [];
    const column = (all: typeof rows): Float64Array =>
      Float64Array.from(all, (row) => (row.reading < 0 ? 0 : amounts[row.reading]));
    const at = which === 0 ? 'plan' : 'readings';
    return [{ kind: 'edge-radius', readings: concerned, support: -1, at, column, largest: widestHalfBoard }];
  });
  return { candidates, alternatives: Math.max(1, candidates.length) };

  function rowGrade(reading: Reading): number {
    return rows[readings.indexOf(reading)].planned;
  }
}

function writtenChainage(reading: Reading): number | null {
  if (reading.kind === 'rise') return null;
  const place: Place = reading.at;
  return 'chainage' in place ? chainageOf(place, []) : null;
}
