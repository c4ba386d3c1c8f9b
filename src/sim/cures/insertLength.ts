import type { Scene, SceneTrack, SceneTrial } from '../../scene/index.ts';
import { tidy, withTrack } from './parts.ts';

/** A place in mm on a track that grew. */
type Shift = <K extends string, T extends { [key in K]?: number }>(place: T, key: K) => T;

/**
 * The scene with a track that grew by `addedMm` at a chainage: every place given as a number beyond it moves along, in
 * the track and in the trials that run on it. Places given by an element move by themselves; supports at even distances
 * keep theirs.
 */
export function shiftBeyond(scene: Scene, track: SceneTrack, fromMm: number, addedMm: number): Scene {
  const shift: Shift = (place, key) => {
    const at = place[key];
    // A place exactly at the join belongs to what comes before: the curve that ends there.
    return at === undefined || at <= fromMm ? place : { ...place, [key]: tidy(at + addedMm) };
  };
  const moved: SceneTrack = {
    ...track,
    profile: track.profile.map((point) => shift(point, 'atMm')),
    ...(Array.isArray(track.supports) ? { supports: track.supports.map((support) => shift(support, 'atMm')) } : {}),
    ...(track.stripJoints === undefined ? {} : { stripJoints: track.stripJoints.map((joint) => shift(joint, 'atMm')) }),
  };
  const trials = scene.trials.map((trial) => (trial.track === track.id ? movedTrial(trial, shift) : trial));
  return withTrack({ ...scene, trials }, moved);
}

const movedTrial = (trial: SceneTrial, shift: Shift): SceneTrial => ({
  ...shift(shift(trial, 'startMm'), 'finishMm'),
  orders: trial.orders.map((order) => shift(order, 'atMm')),
});
