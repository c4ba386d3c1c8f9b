import type { Run } from '../../../core/dynamics/types.ts';
import type { Naming } from '../../../core/findings/index.ts';
import { reverseTrack } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { namingOf } from '../../../state/index.ts';
import type { SessionState } from '../../../state/types.ts';
import { roundEnd } from '../carpet/colourScales.ts';
import { type Motion, makeMotion } from './motion.ts';
import { drawnRoute } from './routeDrawing.ts';

type CompiledTrial = NonNullable<SessionState['trial']>;
type TrialResult = NonNullable<SessionState['result']>;

/** A trial as the band needs it: its track the way chainage is shown, and its run when there is one. */
export interface TrialView {
  readonly trial: CompiledTrial;
  /** The track the way the scene gives it, whichever way the train goes; a route the way it is run. */
  readonly track: Track;
  readonly result: TrialResult | null;
  /** Who is who, by the scene's own numbers. */
  readonly naming: Naming;
  readonly motion: Motion | null;
  /** One array of F a joint, N: the strongest force since the frame before, 0 only when slack all the time. */
  readonly forces: readonly Float64Array[];
  /** N, the end of the force scale. */
  readonly greatestForce: number;
}

/** The stronger of a frame's peaks and the force at its moment, sign kept. */
export function strongestByJoint(run: Run): Float64Array[] {
  const joints = run.vehicles - 1;
  return Array.from({ length: joints }, (_, j) => {
    const forces = new Float64Array(run.frames);
    for (let f = 0; f < run.frames; f++) {
      const at = f * joints + j;
      const draft = Math.max(run.draftPeak[at], run.force[at]);
      const buff = Math.min(run.buffPeak[at], run.force[at]);
      forces[f] = draft >= -buff ? Math.max(0, draft) : buff;
    }
    return forces;
  });
}

export function viewTrial(trial: CompiledTrial, result: TrialResult | null): TrialView {
  const { path } = trial;
  const track = path.legs ? drawnRoute(path.track, path.legs) : path.reversed ? reverseTrack(path.track) : path.track;
  const naming = namingOf({ trial, result });
  if (!result || result.run.frames === 0) {
    return { trial, track, result: null, naming, motion: null, forces: [], greatestForce: 1 };
  }
  const forces = strongestByJoint(result.run);
  let greatest = 0;
  for (const joint of forces) for (const force of joint) greatest = Math.max(greatest, Math.abs(force));
  return {
    trial,
    track,
    result,
    naming,
    motion: makeMotion(result.run, trial.train, path),
    forces,
    greatestForce: roundEnd(greatest),
  };
}

/** The frame and joint of the strongest force, of one joint or of all; null without a run. */
export function strongestForceOf(
  view: TrialView,
  joint: number | null,
): { readonly joint: number; readonly frame: number } | null {
  let best: { joint: number; frame: number } | null = null;
  let size = -1;
  for (const [j, forces] of view.forces.entries()) {
    if (joint !== null && j !== joint) continue;
    for (let f = 0; f < forces.length; f++) {
      if (Math.abs(forces[f]) > size) {
        size = Math.abs(forces[f]);
        best = { joint: j, frame: f };
      }
    }
  }
  return best;
}
