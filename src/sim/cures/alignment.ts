import { elementCurvatures, elementStartsMm, type SceneTrack } from '../../scene/index.ts';

/** How far from a join a finding may be and still mean it, mm: half a long vehicle. */
const reachMm = 250;

/** The join (index of the element after it) nearest to a track chainage that a test accepts; -1 when none is within reach. */
export function nearestJoin(
  track: SceneTrack,
  chainageMm: number,
  accepts: (curvatureBefore: number, curvatureAfter: number) => boolean,
): number {
  const starts = elementStartsMm(track);
  let nearest = -1;
  let least = reachMm;
  for (let index = 1; index < track.alignment.length; index++) {
    const before = elementCurvatures(track, index - 1)[1];
    const after = elementCurvatures(track, index)[0];
    const away = Math.abs(starts[index] - chainageMm);
    if (away <= least && accepts(before, after)) {
      least = away;
      nearest = index;
    }
  }
  return nearest;
}
