import type { Vehicle } from '../../stock/index.ts';
import type { Track } from '../../track/index.ts';
import type { TrackRows } from '../moments/trackRows.ts';
import { nothingSwept, type SweptRows, sweepTrack } from './sweptRows.ts';

/** What was swept along a track last, and by what it is the same again. */
interface Known {
  readonly key: string;
  readonly swept: SweptRows;
}

/** One answer with each track, for as long as the track is there. */
const known = new WeakMap<Track, Known>();

/**
 * What vehicles sweep beside the points of one of the tracks laid out in `rows`, m from the centreline, from the track's first point to its last; vehicles too long for it left out.
 * The last answer is kept with the track: where one line of several is changed the others are not swept anew.
 */
export function sweptAlong(rows: TrackRows, index: number, track: Track, vehicles: readonly Vehicle[]): SweptRows {
  const key = [rows.step[index], ...vehicles.flatMap(measuresOf)].join(' ');
  const before = known.get(track);
  if (before?.key === key) return before.swept;
  const points = rows.last[rows.start[index]] - rows.start[index] + 1;
  const own: TrackRows = {
    ...rows,
    start: Int32Array.of(0),
    step: Float64Array.of(rows.step[index]),
    last: Int32Array.of(points - 1),
  };
  const swept = nothingSwept(points);
  for (const vehicle of vehicles) {
    if (fits(vehicle, track)) sweepTrack(own, 0, track, vehicle, swept);
  }
  known.set(track, { key, swept });
  return swept;
}

/** All of a vehicle that decides what it sweeps. */
const measuresOf = ({ pivotSpacing, frontOverhang, rearOverhang, bodyWidth }: Vehicle): number[] => [
  pivotSpacing,
  frontOverhang,
  rearOverhang,
  bodyWidth,
];

/** Whether a vehicle's running points find room on the tightest curve of a track, so that it can be stood anywhere. */
function fits({ pivotSpacing }: Vehicle, { plan }: Track): boolean {
  return plan.elements.every(
    ({ startCurvature, endCurvature }) => pivotSpacing * Math.max(Math.abs(startCurvature), Math.abs(endCurvature)) < 2,
  );
}
