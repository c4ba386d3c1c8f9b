import { cos, sin } from '../math/index.ts';
import { newTrackPoint, trackPoint } from '../track/index.ts';
import type { Track } from '../track/types.ts';

/** A road that leaves a turnout: growing chainages lead away from it. `from`: where it is apart from the other, m; `to`: as far as it is looked at. */
export interface Road {
  readonly track: Track;
  readonly from: number;
  readonly to: number;
}

/** What is to be kept clear of a road. */
export interface Envelope {
  /** How far out of its middle to one of its sides at a chainage, m. */
  reach(track: Track, chainage: number, left: boolean): number;
  /** Roads whose middles are nearer than this are never clear, m: nothing is swept there. */
  readonly least: number;
}

/** Steps along a road; what is found between two of them is cut down to the tolerance, m. */
export interface FoulingSteps {
  readonly step: number;
  readonly tolerance: number;
  /** The road counts as clear once it has stayed so for this long, m: a vehicle. */
  readonly settled: number;
}

/** Newton ends within this of the foot of a point, m. */
const footWithin = 1e-9;
const mostTurns = 20;

/**
 * Chainage of its own road (m) from which a vehicle stands clear of everything that goes along the other: from there on what is to be kept clear on the one does not reach into what is on
 * the other, in plan. Null where the road never gets so far apart. The reach of the standing vehicle is laid off square to its road, the foot of that
 * point found on the other road, and the distance there held against that one's reach: two straight roads at an angle α with the reaches p and q are clear from (p·cos α + q)/sin α beyond where their
 * middles cross.
 */
export function standsClearFrom(own: Road, other: Road, envelope: Envelope, steps: FoulingSteps): number | null {
  const here = newTrackPoint();
  const foot = newTrackPoint();
  /** Chainage on the other road of the last foot: where the next one is looked for. */
  let near = other.from;
  /** Writes the foot of a point on the other road; returns how far the point lies to its left, m. */
  const leftOfOther = (x: number, y: number): number => {
    for (let turn = 0; ; turn++) {
      trackPoint(other.track, near, foot);
      const [cosine, sine] = [cos(foot.heading), sin(foot.heading)];
      const along = (x - foot.x) * cosine + (y - foot.y) * sine;
      const left = (y - foot.y) * cosine - (x - foot.x) * sine;
      if (Math.abs(along) < footWithin || turn === mostTurns) return left;
      near += along / Math.max(0.5, 1 - foot.curvature * left);
    }
  };
  const spare = (chainage: number): number => {
    trackPoint(own.track, chainage, here);
    const [cosine, sine] = [cos(here.heading), sin(here.heading)];
    const left = leftOfOther(here.x, here.y);
    if (Math.abs(left) < envelope.least) return Math.abs(left) - envelope.least;
    const side = left < 0 ? -1 : 1;
    const otherIsLeft = (foot.y - here.y) * cosine - (foot.x - here.x) * sine > 0;
    const out = (otherIsLeft ? 1 : -1) * envelope.reach(own.track, chainage, otherIsLeft);
    const there = side * leftOfOther(here.x - out * sine, here.y + out * cosine);
    return there - envelope.reach(other.track, near, side > 0);
  };
  let fouled = own.from;
  for (let at = own.from; at - fouled <= steps.settled; at += steps.step) {
    if (at > own.to) return null;
    if (spare(at) < 0) fouled = at;
  }
  let clear = fouled + steps.step;
  while (clear - fouled > steps.tolerance) {
    const middle = (fouled + clear) / 2;
    if (spare(middle) < 0) fouled = middle;
    else clear = middle;
  }
  return clear;
}
