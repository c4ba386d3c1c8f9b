import {
  elementCurvatures,
  elementStartsMm,
  type Scene,
  type SceneElement,
  type SceneTrack,
  shortened,
} from '../../scene/index.ts';
import { nearestJoin } from './alignment.ts';
import { fileMm, withTrack } from './parts.ts';

/** How far from the straight a finding may be and still mean it, mm: half a long vehicle. */
const reachMm = 250;

/**
 * Puts a straight of this length (m) between two opposite curves at a track chainage, or makes the straight between them
 * that long. The curves give up the room, each as much as turns the same angle, so that the track keeps its length and its
 * heading beyond; it moves sideways a little. Null where no opposite curves meet or there is no room.
 */
export function straightBetween(scene: Scene, track: SceneTrack, chainage: number, length: number): Scene | null {
  const lengthMm = fileMm(length);
  const there = straightAt(track, chainage * 1000);
  const join = there >= 0 ? there : nearestJoin(track, chainage * 1000, (before, after) => before * after < 0);
  if (join < 0) return null;
  const lying = there >= 0 ? (track.alignment[there] as Extract<SceneElement, { kind: 'straight' }>) : null;
  const added = lengthMm - (lying?.lengthMm ?? 0);
  if (added <= 0) return null;
  const next = lying === null ? join : join + 1;
  const sharpBefore = Math.abs(elementCurvatures(track, join - 1)[1]);
  const sharpAfter = Math.abs(elementCurvatures(track, next)[0]);
  const before = shortened(track.alignment[join - 1], (added * sharpAfter) / (sharpBefore + sharpAfter));
  const after = shortened(track.alignment[next], (added * sharpBefore) / (sharpBefore + sharpAfter));
  if (before === null || after === null) return null;
  const straight: SceneElement = { ...(lying ?? { kind: 'straight' }), lengthMm };
  const alignment = track.alignment.toSpliced(join - 1, next - join + 2, before, straight, after);
  return withTrack(scene, { ...track, alignment });
}

/** The straight between opposite curves that a chainage lies on or near; -1 when none is within reach. */
function straightAt(track: SceneTrack, chainageMm: number): number {
  const starts = elementStartsMm(track);
  return track.alignment.findIndex((element, index) => {
    if (element.kind !== 'straight' || index === 0 || index === track.alignment.length - 1) return false;
    const opposite = elementCurvatures(track, index - 1)[1] * elementCurvatures(track, index + 1)[0] < 0;
    return opposite && starts[index] - reachMm <= chainageMm && chainageMm <= starts[index + 1] + reachMm;
  });
}
