import { trackPoint } from '../point.ts';
import type { Track, TrackPoint } from '../types.ts';

/** More rows than this is a slip in the step: a kilometre of track in millimetres. */
const MOST_ROWS = 1_000_000;

/** A step that ends this near the end of the track, m, is the end: below the rounding of summed chainages. */
const END_TOLERANCE = 1e-9;

/**
 * The long section: one row for every multiple of `every`, m, from 0, and one at the end of the track.
 * Throws RangeError unless `every` is positive and makes at most a million rows.
 */
export function sectionRows(track: Track, every: number): TrackPoint[] {
  if (!(every > 0)) throw new RangeError(`The step between rows must be longer than 0 m, not ${every}.`);
  const steps = Math.ceil((track.length - END_TOLERANCE) / every);
  if (steps > MOST_ROWS) throw new RangeError(`A step of ${every} m makes ${steps} rows; ${MOST_ROWS} are allowed.`);
  const rows: TrackPoint[] = [];
  for (let i = 0; i < steps; i++) rows.push(trackPoint(track, i * every));
  rows.push(trackPoint(track, track.length));
  return rows;
}
