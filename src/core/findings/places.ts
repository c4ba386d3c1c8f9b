import type { RiskDefinition, RiskSeries } from '../risks/types.ts';

/** Samples this near along the track belong to one place, m: about a vehicle. */
const apart = 0.3;

/** More bad places than this of one risk are one thing that is wrong everywhere. */
const mostPlaces = 4;

export interface Place {
  readonly frame: number;
  readonly subject: number;
  readonly margin: number;
}

/**
 * The separate places along the track where a risk has less than `near` left, each with its least sample, least first; the worst
 * sample is always among them. A whole train passing one bad support makes one place. A risk of locomotives is the
 * train's and has one place.
 */
export function placesOf(series: RiskSeries, definition: RiskDefinition): Place[] {
  const { worst, margins, chainages, subjects } = series;
  if (worst === null) return [];
  const worstPlace = { frame: worst.frame, subject: worst.subject, margin: worst.margin };
  if (definition.subject === 'locomotive' || !(worst.margin < definition.near)) return [worstPlace];
  /** Least sample of every stretch of track that has one, by the number of the stretch. */
  const least = new Map<number, Place>();
  for (let at = 0; at < margins.length; at++) {
    const margin = margins[at];
    if (!(margin < definition.near)) continue;
    const stretch = Math.floor(chainages[at] / apart);
    const known = least.get(stretch);
    if (known !== undefined && known.margin <= margin) continue;
    const frame = Math.floor(at / subjects);
    least.set(stretch, { frame, subject: at - frame * subjects, margin });
  }
  const places: Place[] = [];
  let last = Number.NaN;
  for (const stretch of [...least.keys()].sort((a, b) => a - b)) {
    const place = least.get(stretch) as Place;
    const open = places[places.length - 1];
    if (stretch !== last + 1 || open === undefined) places.push(place);
    else if (place.margin < open.margin) places[places.length - 1] = place;
    last = stretch;
  }
  return places.sort((a, b) => a.margin - b.margin).slice(0, mostPlaces);
}
