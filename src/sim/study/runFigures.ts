import type { Run } from '../../core/dynamics/types.ts';
import { lengthOverBuffers } from '../../core/stock/index.ts';
import type { Vehicle } from '../../core/stock/types.ts';
import { type Track, type TrackPoint, trackPoint } from '../../core/track/index.ts';

/**
 * The greatest force between an engine and what it moves, pulled or pushed, N: over the joints of which one side has an engine and the other has not.
 * 0 where there is no such joint.
 */
export function drawbarOf(run: Run): number {
  const joints = run.vehicles - 1;
  const engines = new Set(run.locomotives);
  let most = 0;
  for (let j = 0; j < joints; j++) {
    if (engines.has(j) === engines.has(j + 1)) continue;
    for (let at = j; at < run.frames * joints; at += joints) {
      most = Math.max(most, run.draftPeak[at], -run.buffPeak[at]);
    }
  }
  return most;
}

/** Work that the engines do at the rail over a run of the quasi-static pass, J: from station to station, each with the pulls of the one it begins at. */
export function workOf(run: Run): number {
  const count = run.locomotives.length;
  let work = 0;
  for (let f = 0; f + 1 < run.frames; f++) {
    // Its stations stand that far apart along the rail, m.
    for (let e = 0; e < count; e++) work += run.railForce[f * count + e] * run.interval;
  }
  return work;
}

/**
 * Least speed of the leading vehicle, m/s, once it has gone as far as its train is long: the start is over then, and every slack drawn out. Null for
 * one that never gets so far.
 */
export function leastSpeedOf(run: Run, vehicles: readonly Vehicle[]): number | null {
  const trainLength = vehicles.reduce((sum, one) => sum + lengthOverBuffers(one), 0);
  let least: number | null = null;
  for (let f = 0; f < run.frames; f++) {
    if (run.chainage[f * run.vehicles] - run.chainage[0] < trainLength) continue;
    const speed = Math.abs(run.speed[f * run.vehicles]);
    least = least === null ? speed : Math.min(least, speed);
  }
  return least;
}

/** Heights that differ by less are one, m: where the foot of a climb is level, the train is at the foot all along it. */
const sameHeight = 1e-6;

/**
 * Greatest speed of the leading vehicle at the foot, m/s: where it is lowest on its way. Null where it begins there, so that nothing leads down to it.
 */
export function footSpeedOf(run: Run, track: Track): number | null {
  let here: TrackPoint | undefined;
  const heights = Array.from({ length: run.frames }, (_, f) => {
    here = trackPoint(track, run.chainage[f * run.vehicles], here);
    return here.z;
  });
  const foot = heights.reduce((low, height) => Math.min(low, height), Number.POSITIVE_INFINITY) + sameHeight;
  if (heights[0] <= foot) return null;
  return heights.reduce(
    (most, height, f) => (height <= foot ? Math.max(most, Math.abs(run.speed[f * run.vehicles])) : most),
    0,
  );
}
