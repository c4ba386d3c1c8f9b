import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';

/** What a track takes and asks for, m: the other side of what its margins gain. */
export interface RouteMeasure {
  /** Along the centreline in plan. */
  readonly length: number;
  /** From the lowest to the highest rail top. */
  readonly rise: number;
  /** Steepest grade as built, over the bent strip, as a positive number. */
  readonly steepest: number;
  /** The same with what the curve there is worth added. */
  readonly ruling: number;
  /** Tightest radius; Infinity for a straight track. */
  readonly tightest: number;
  /** Sharpest vertical radius away from breaks of grade; Infinity for an even grade. */
  readonly sharpest: number;
  /** Size of the smallest upright rectangle that holds the centreline in plan. */
  readonly across: number;
  readonly along: number;
  /** Where its sides lie, and the lowest and the highest rail top, in the room. */
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
  readonly lowest: number;
  readonly highest: number;
}

/** What a curve is worth in terms of grade, as a length over its radius, m: 32/R(in) per cent, the rule of the trade in H0. */
export const curveWorth = 8.128e-3;

/** Way between the places looked at, m: no easement or vertical curve is shorter than some of these. */
const every = 0.01;

/** What a track takes and asks for, found by looking every centimetre and at both ends. */
export function routeMeasure(track: Track): RouteMeasure {
  let point: TrackPoint | undefined;
  let [lowX, highX, lowY, highY, lowZ, highZ] = [Infinity, -Infinity, Infinity, -Infinity, Infinity, -Infinity];
  let [steepest, ruling, curvature, vertical] = [0, 0, 0, 0];
  const steps = Math.max(1, Math.ceil(track.length / every));
  for (let k = 0; k <= steps; k++) {
    point = trackPoint(track, (k / steps) * track.length, point);
    lowX = Math.min(lowX, point.x);
    highX = Math.max(highX, point.x);
    lowY = Math.min(lowY, point.y);
    highY = Math.max(highY, point.y);
    lowZ = Math.min(lowZ, point.z);
    highZ = Math.max(highZ, point.z);
    steepest = Math.max(steepest, Math.abs(point.grade));
    ruling = Math.max(ruling, Math.abs(point.grade) + curveWorth * Math.abs(point.curvature));
    curvature = Math.max(curvature, Math.abs(point.curvature));
    vertical = Math.max(vertical, Math.abs(point.verticalCurvature));
  }
  return {
    length: track.length,
    rise: highZ - lowZ,
    steepest,
    ruling,
    tightest: 1 / curvature,
    sharpest: 1 / vertical,
    across: highX - lowX,
    along: highY - lowY,
    west: lowX,
    east: highX,
    south: lowY,
    north: highY,
    lowest: lowZ,
    highest: highZ,
  };
}
