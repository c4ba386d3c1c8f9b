import { cos, sin, square } from '../math/index.ts';
import { newTrackPoint, type Track, trackPoint } from '../track/index.ts';
import type { Board, Layers, Standing } from './types.ts';

/** A centreline is looked at this often, m: shorter than half of any turn that a vehicle runs. */
const look = 0.05;

/** A place beside the centreline is known to this, m. */
const chainageTolerance = 1e-6;

/** A strip beside the support's own, at the same height to this, m, is the one that the support carries. */
const same = 1e-3;

/**
 * What lies below a place under a strip whose underside is at `under`, m: the highest of the boards there, the strips of `tracks` that pass there, and the
 * `floor`; null where there is none of them. A strip is stood on beside its underlay, and all are taken to be of the same `layers`; lengths in m.
 */
export function standingAt(
  place: { readonly x: number; readonly y: number; readonly under: number },
  tracks: readonly Track[],
  layers: Layers,
  boards: readonly Board[],
  floor: number | null,
): Standing | null {
  const { x, y, under } = place;
  let best: Standing | null = floor === null || floor > under ? null : { on: 'floor', height: floor };
  const consider = (on: Standing['on'], height: number, most: number): void => {
    if (height <= most && (best === null || height > best.height)) best = { on, height };
  };
  for (const board of boards) {
    if (x >= board.x[0] && x <= board.x[1] && y >= board.y[0] && y <= board.y[1]) consider('board', board.top, under);
  }
  for (const track of tracks) {
    for (const rail of railsOver(track, x, y, layers.width / 2)) {
      const top = rail.height - (layers.track + layers.underlay) * rail.slant;
      consider('strip', top, under - same);
    }
  }
  return best;
}

/** Rail heights of a track, m, wherever its centreline passes within `reach`, m, of a place in plan, with the upright depth of a layer for each of its thickness. */
export function railsOver(track: Track, x: number, y: number, reach: number): { height: number; slant: number }[] {
  const point = newTrackPoint();
  /** How far the place lies ahead of a chainage, along the track there: it falls through zero where the track is nearest. */
  const ahead = (s: number): number => {
    trackPoint(track, s, point);
    return (x - point.x) * cos(point.heading) + (y - point.y) * sin(point.heading);
  };
  const found: { height: number; slant: number }[] = [];
  const steps = Math.max(1, Math.ceil(track.length / look));
  // A place right over either end counts.
  const [first, last] = [-chainageTolerance, track.length + chainageTolerance];
  const at = (i: number): number => first + ((last - first) * i) / steps;
  let before = ahead(first);
  for (let i = 1; i <= steps; i++) {
    const here = ahead(at(i));
    if (before >= 0 && here <= 0) {
      let [low, high] = [at(i - 1), at(i)];
      while (high - low > chainageTolerance) {
        const middle = (low + high) / 2;
        if (ahead(middle) > 0) low = middle;
        else high = middle;
      }
      ahead(low);
      if (square(x - point.x) + square(y - point.y) < reach * reach) {
        found.push({ height: point.z, slant: Math.sqrt(1 + point.grade * point.grade) });
      }
    }
    before = here;
  }
  return found;
}
