import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';

/** Places along a track where its cross-section is drawn: centreline at the rail top and the level direction to its left. */
export interface Stations {
  readonly count: number;
  readonly chainage: Float64Array;
  /** count × 3, m. */
  readonly centre: Float64Array;
  /** count × 2: unit vector to the left, in plan. */
  readonly left: Float64Array;
}

/** Longest step on straight and level track, m. */
const longestStep = 0.12;

/** Shortest step, m: keeps a kink or a wrong file from asking for millions. */
const shortestStep = 0.002;

/**
 * Chainages from `from` to `to` (m), close enough together that a straight chord departs from the track by about
 * `tolerance` (m) at most, with every place in `also` among them.
 */
export function stationChainages(
  track: Track,
  from: number,
  to: number,
  tolerance: number,
  also: readonly number[],
): number[] {
  const point = {} as TrackPoint;
  const list = [from];
  let s = from;
  while (s < to) {
    trackPoint(track, s, point);
    const bend = Math.hypot(point.curvature, point.verticalCurvature);
    // The bend ahead may be sharper than the one here: look a step on as well.
    const first = chordStep(bend, tolerance);
    trackPoint(track, Math.min(s + first, to), point);
    const step = Math.min(first, chordStep(Math.hypot(point.curvature, point.verticalCurvature), tolerance));
    s = s + step > to - shortestStep ? to : s + step;
    list.push(s);
  }
  for (const place of also) if (place > from && place < to) list.push(place);
  list.sort((a, b) => a - b);
  return list.filter((place, i) => i === 0 || place - list[i - 1] > shortestStep / 4 || place === to);
}

/** Chord length whose sagitta on a curvature is `tolerance`. */
function chordStep(curvature: number, tolerance: number): number {
  return Math.min(longestStep, Math.max(shortestStep, Math.sqrt((8 * tolerance) / Math.max(curvature, 1e-9))));
}

/** Works out the stations at given chainages. */
export function layStations(track: Track, chainages: readonly number[]): Stations {
  const count = chainages.length;
  const stations: Stations = {
    count,
    chainage: Float64Array.from(chainages),
    centre: new Float64Array(3 * count),
    left: new Float64Array(2 * count),
  };
  const point = {} as TrackPoint;
  for (let i = 0; i < count; i++) {
    trackPoint(track, chainages[i], point);
    stations.centre.set([point.x, point.y, point.z], 3 * i);
    stations.left.set([-Math.sin(point.heading), Math.cos(point.heading)], 2 * i);
  }
  return stations;
}
