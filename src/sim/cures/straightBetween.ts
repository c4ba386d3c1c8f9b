import { elementCurvatures, elementStartsMm, type Scene, type SceneElement, type SceneTrack } from '../../scene/index.ts';
import { nearestJoin } from './alignment.ts';
import { shiftBeyond } from './insertLength.ts';
import { fileMm, trialParts } from './parts.ts';

/** How far from the straight a finding may be and still mean it, mm: half a long vehicle. */
const reachMm = 250;

/**
 * Puts a straight of this length (m) between two opposite curves at a track chainage, or makes the straight between them
 * that long. Everything beyond moves on by what was added. Null where no opposite curves meet.
 */
export function straightBetween(scene: Scene, trialId: string, chainage: number, length: number): Scene | null {
  const parts = trialParts(scene, trialId);
  if (parts === null) return null;
  const { track } = parts;
  const lengthMm = fileMm(length);
  const there = straightAt(track, chainage * 1000);
  if (there >= 0) {
    const element = track.alignment[there] as Extract<SceneElement, { kind: 'straight' }>;
    const added = lengthMm - element.lengthMm;
    if (added <= 0) return null;
    const alignment = track.alignment.with(there, { ...element, lengthMm });
    return shiftBeyond(scene, { ...track, alignment }, elementStartsMm(track)[there + 1], added);
  }
  const join = nearestJoin(track, chainage * 1000, (before, after) => before * after < 0);
  if (join < 0) return null;
  const alignment = track.alignment.toSpliced(join, 0, { kind: 'straight', lengthMm });
  return shiftBeyond(scene, { ...track, alignment }, elementStartsMm(track)[join], lengthMm);
}

/** The straight between opposite curves nearest to a chainage; -1 when none is within reach. */
function straightAt(track: SceneTrack, chainageMm: number): number {
  const starts = elementStartsMm(track);
  return track.alignment.findIndex((element, index) => {
    if (element.kind !== 'straight' || index === 0 || index === track.alignment.length - 1) return false;
    const opposite = elementCurvatures(track, index - 1)[1] * elementCurvatures(track, index + 1)[0] < 0;
    return opposite && starts[index] - reachMm <= chainageMm && chainageMm <= starts[index + 1] + reachMm;
  });
}
