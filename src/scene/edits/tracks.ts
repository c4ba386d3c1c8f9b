import { trackProblems } from '../checks/trackChecks.ts';
import { withoutLoose } from '../goingOn.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { runsOn } from '../way.ts';
import { fittedTrial } from './fittedTrial.ts';
import { freeId, newId } from './ids.ts';
import { trackOf } from './parts.ts';
import { inWords } from './putTrack.ts';
import { withoutLostStops } from './tour.ts';

/** Where a new track begins and how long it runs straight and level. */
export interface NewTrack {
  readonly name: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly headingDeg: number;
  readonly lengthMm: number;
  readonly heightMm: number;
  /** Left out: on no supports. */
  readonly supportsEveryMm?: number;
}

/** A straight, level track to go on from, named as no track of the scene is. */
export function straightTrack(scene: Scene, from: NewTrack): SceneTrack {
  const { name, xMm, yMm, headingDeg, lengthMm, heightMm, supportsEveryMm } = from;
  return {
    id: newId(scene.tracks, name),
    name,
    start: { xMm, yMm, headingDeg },
    alignment: [{ kind: 'straight', lengthMm }],
    profile: [{ atMm: 0, heightMm }],
    ...(supportsEveryMm === undefined ? {} : { supports: { everyMm: supportsEveryMm } }),
  };
}

/** The scene with one more track, under an id that no other has. Throws RangeError in words. */
export function addTrack(scene: Scene, track: SceneTrack): Scene {
  const own = {
    ...track,
    id: freeId(
      scene.tracks.map(({ id }) => id),
      track.id,
    ),
  };
  if ('branchOf' in own.start) trackOf(scene, own.start.branchOf);
  const problem = trackProblems(own, 'track')[0];
  if (problem !== undefined) throw new RangeError(`${own.name}: ${inWords(problem)}`);
  return { ...scene, tracks: [...scene.tracks, own] };
}

/**
 * The scene without a track, what stands beside it and what was read along it. Its trials go with it; when none would be left they go over to the
 * first track that remains, from end to end. Throws RangeError in words: for the only track, one that others branch off, and trains
 * that would have no room.
 */
export function removeTrack(scene: Scene, trackId: string): Scene {
  const gone = trackOf(scene, trackId);
  const tracks = scene.tracks.filter(({ id }) => id !== trackId);
  if (tracks.length === 0) throw new RangeError(`${gone.name} is the only track.`);
  const branch = tracks.find(({ start }) => 'branchOf' in start && start.branchOf === trackId);
  if (branch !== undefined) throw new RangeError(`${branch.name} branches off ${gone.name}: remove that track first.`);
  const kept = withoutLoose(
    scene,
    scene.trials.filter((trial) => !runsOn(trial, trackId)),
  );
  const trials = kept.length > 0 ? kept : scene.trials.map((trial) => onto(scene, tracks[0], trial));
  const { opensWith, lineside, surveys, ...rest } = scene;
  return withoutLostStops({
    ...rest,
    tracks,
    trials,
    ...(lineside && { lineside: lineside.filter(({ track }) => track !== trackId) }),
    ...(surveys && { surveys: surveys.filter(({ track }) => track !== trackId) }),
    ...(opensWith !== undefined && trials.some(({ id }) => id === opensWith) && { opensWith }),
  });
}

/** A trial from end to end of another track; orders given by places there have no meaning and are obeyed at once. */
function onto(scene: Scene, track: SceneTrack, trial: Scene['trials'][number]): Scene['trials'][number] {
  const { startMm: _start, finishMm: _finish, route: _route, follows: _follows, ...placeless } = trial;
  const orders = trial.orders.map(({ atMm, ...order }) => (atMm === undefined ? order : { ...order, atS: 0 }));
  return fittedTrial(scene, track, { ...placeless, orders, track: track.id, towards: trial.towards ?? 'end' });
}
