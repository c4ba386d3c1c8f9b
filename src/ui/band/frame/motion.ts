import type { Path, Run } from '../../../core/dynamics/types.ts';
import { lastNotAbove } from '../../../core/math/index.ts';
import { couplerPivot } from '../../../core/stock/index.ts';
import type { Train } from '../../../core/stock/types.ts';

/** Where the joints of the train were in every recorded frame, track chainage, m. */
export interface Motion {
  /** F, s. */
  readonly time: Float64Array;
  /** One array of F a joint: midway between the two coupler pivots, along the bodies. */
  readonly joints: readonly Float64Array[];
  /** Longest step between frames that is still travel, m: anything longer is a change of the sampled spot. */
  readonly jump: number;
}

/** A moment between two recorded frames: `share` of the way from `frame` to the next. */
export interface FrameShare {
  readonly frame: number;
  readonly share: number;
}

/** Track chainage (m) of a path chainage. */
export function trackChainage(path: Path, chainage: number): number {
  return path.reversed ? path.track.length - chainage : chainage;
}

export function makeMotion(run: Run, train: Train, path: Path): Motion {
  const { frames, vehicles, chainage } = run;
  const joints = Array.from({ length: vehicles - 1 }, (_, j) => {
    const leading = train.vehicles[j];
    const trailing = train.vehicles[j + 1];
    const shift = (couplerPivot(leading, 'rear').ahead + couplerPivot(trailing, 'front').ahead) / 2;
    const places = new Float64Array(frames);
    for (let f = 0; f < frames; f++) {
      const at = f * vehicles + j;
      places[f] = trackChainage(path, (chainage[at] + chainage[at + 1]) / 2 + shift);
    }
    return places;
  });
  let longest = 0;
  for (let f = 0; f < frames; f++) {
    const at = f * vehicles;
    if (f > 0) longest = Math.max(longest, Math.abs(chainage[at] - chainage[at - vehicles]));
  }
  // Vehicles of one train differ in speed by what slack and springs allow; three times the leader's longest step covers it.
  return { time: run.time, joints, jump: 3 * longest + 1e-6 };
}

/** The recorded frames on either side of a time, the ends standing for what lies beyond them. */
export function frameAt(time: Float64Array, at: number): FrameShare {
  const last = time.length - 1;
  if (last < 1 || !(at > time[0])) return { frame: 0, share: 0 };
  if (at >= time[last]) return { frame: last, share: 0 };
  const frame = lastNotAbove(time, at);
  return { frame, share: (at - time[frame]) / (time[frame + 1] - time[frame]) };
}

/** The recorded frame nearest to a moment. */
export function nearestFrame({ frame, share }: FrameShare): number {
  return share < 0.5 ? frame : frame + 1;
}

/** A value between two frames, on the straight line between them. */
export function valueBetween(values: Float64Array, { frame, share }: FrameShare): number {
  const here = values[frame];
  return share > 0 ? here + (values[frame + 1] - here) * share : here;
}
