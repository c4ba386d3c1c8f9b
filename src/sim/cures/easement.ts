import { elementStartsMm, type Scene, type SceneElement, type SceneTrack, shortened } from '../../scene/index.ts';
import { nearestJoin } from './alignment.ts';
import { fileMm, withTrack } from './parts.ts';

/** Curvatures closer than this are the same curve, 1/m: a radius of 100 km. */
const sameCurvature = 1e-5;

/**
 * Lays a transition of this length (m) over the nearest jump of curvature, or makes the transition that lies there that
 * long. Both neighbours give up half of the added length: the track keeps its length and its heading beyond (a clothoid
 * turns by the mean of its end curvatures), and moves sideways by the shift of the easement. Null without such a place
 * or without room.
 */
export function addEasement(scene: Scene, track: SceneTrack, chainage: number, length: number): Scene | null {
  const lengthMm = fileMm(length);
  const lying = transitionAt(track, chainage * 1000);
  if (lying >= 0) return lengthened(scene, track, lying, lengthMm);
  const join = nearestJoin(track, chainage * 1000, (before, after) => Math.abs(after - before) > sameCurvature);
  if (join < 0) return null;
  const before = shortened(track.alignment[join - 1], lengthMm / 2);
  const after = shortened(track.alignment[join], lengthMm / 2);
  if (before === null || after === null) return null;
  return withTrack(scene, {
    ...track,
    alignment: track.alignment.toSpliced(join - 1, 2, before, { kind: 'transition', lengthMm }, after),
  });
}

function transitionAt(track: SceneTrack, chainageMm: number): number {
  const starts = elementStartsMm(track);
  return track.alignment.findIndex(
    (element, index) => element.kind === 'transition' && starts[index] <= chainageMm && chainageMm <= starts[index + 1],
  );
}

function lengthened(scene: Scene, track: SceneTrack, index: number, lengthMm: number): Scene | null {
  const element = track.alignment[index] as Extract<SceneElement, { kind: 'transition' }>;
  const added = lengthMm - element.lengthMm;
  if (added <= 0 || index === 0 || index === track.alignment.length - 1) return null;
  const before = shortened(track.alignment[index - 1], added / 2);
  const after = shortened(track.alignment[index + 1], added / 2);
  if (before === null || after === null) return null;
  return withTrack(scene, {
    ...track,
    alignment: track.alignment.toSpliced(index - 1, 3, before, { ...element, lengthMm }, after),
  });
}
