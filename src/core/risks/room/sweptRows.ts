import { cos, sin } from '../../math/index.ts';
import { frontReach, newPlacement, placeVehicle, pointOnVehicle, rearReach, type Vehicle } from '../../stock/index.ts';
import { type Track, type TrackPoint, trackPoint } from '../../track/index.ts';
import type { TrackRows } from '../moments/trackRows.ts';

/** What vehicles sweep beside every point of some rows, to its left and to its right, m from the centreline; 0 where none goes. */
export interface SweptRows {
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/** Places along a body whose sides are followed: both ends, the middle, and midway between. */
export const bodyPlaces = 5;

/**
 * A side is noted at the points it passes within one step of, so that nothing swept between two samples is missed. A little more than
 * one, lest rounding should decide whether a place that falls on a point counts there.
 */
const noted = 1 + 1e-6;

/** Nothing swept yet, for rows of a length. */
export const nothingSwept = (points: number): SweptRows => ({
  left: new Float64Array(points),
  right: new Float64Array(points),
});

/**
 * Takes a vehicle along one of the tracks laid out in `rows`, a step at a time and no further than its body stands on it, and notes what it sweeps.
 * Never less than it does sweep; more only where the throw changes, by what it changes in two steps.
 */
export function sweepTrack(rows: TrackRows, index: number, track: Track, vehicle: Vehicle, out: SweptRows): void {
  const step = rows.step[index];
  const start = rows.start[index];
  const end = rows.last[start];
  const front = frontReach(vehicle);
  const rear = rearReach(vehicle);
  const side = vehicle.bodyWidth / 2;
  const placed = newPlacement();
  const corner: [number, number, number] = [0, 0, 0];
  let here: TrackPoint | undefined;
  const steps = Math.floor((track.length - front - rear) / step);
  for (let k = 0; k <= steps; k++) {
    // Counted from the middle of the track, so that it is the same from either end.
    const chainage = (track.length + rear - front) / 2 + (k - steps / 2) * step;
    placeVehicle(track, vehicle, chainage, placed);
    const chainagePerMetre = (placed.frontChainage - placed.rearChainage) / vehicle.pivotSpacing;
    for (let place = 0; place < bodyPlaces; place++) {
      const ahead = -rear + ((front + rear) * place) / (bodyPlaces - 1);
      const beside = chainage + ahead * chainagePerMetre;
      here = trackPoint(track, beside, here);
      const cosine = cos(here.heading);
      const sine = sin(here.heading);
      for (let turn = -1; turn <= 1; turn += 2) {
        pointOnVehicle(placed, ahead, turn * side, 0, corner);
        const along = (corner[0] - here.x) * cosine + (corner[1] - here.y) * sine;
        const left = (corner[1] - here.y) * cosine - (corner[0] - here.x) * sine;
        // The corner's own foot lies a little further along the curve; its distance there, to the second order.
        const turned = along / (1 - here.curvature * left);
        const across = turn * (left - (here.curvature * along * turned) / 2);
        const swept = turn > 0 ? out.left : out.right;
        const at = (beside + turned) / step;
        const from = Math.max(start, start + Math.ceil(at - noted));
        const to = Math.min(end, start + Math.floor(at + noted));
        for (let point = from; point <= to; point++) {
          if (across > swept[point]) swept[point] = across;
        }
      }
    }
  }
}
