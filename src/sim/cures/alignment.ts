import { elementCurvatures, elementStartsMm, type SceneElement, type SceneTrack } from '../../scene/index.ts';
import { tidy } from './parts.ts';

/** Shortest stretch that an easement may leave of its neighbours, mm. */
const shortestMm = 1;

/** How far from a join a finding may be and still mean it, mm: half a long vehicle. */
const reachMm = 250;

/** The same element, shorter by this much; null when nothing sound would be left. A transition is left alone. */
export function shortened(element: SceneElement, byMm: number): SceneElement | null {
  const left = (mm: number): number | null => (mm - byMm < shortestMm ? null : tidy(mm - byMm));
  switch (element.kind) {
    case 'straight': {
      const lengthMm = left(element.lengthMm);
      return lengthMm === null ? null : { ...element, lengthMm };
    }
    case 'arc': {
      if (element.lengthMm !== undefined) {
        const lengthMm = left(element.lengthMm);
        return lengthMm === null ? null : { ...element, lengthMm };
      }
      const whole = ((element.angleDeg ?? 0) * Math.PI * element.radiusMm) / 180;
      if (left(whole) === null) return null;
      return { ...element, angleDeg: tidy((element.angleDeg ?? 0) - (byMm * 180) / (Math.PI * element.radiusMm)) };
    }
    case 'helix': {
      const whole = element.turns * 2 * Math.PI * element.radiusMm;
      if (left(whole) === null) return null;
      return { ...element, turns: tidy(element.turns - byMm / (2 * Math.PI * element.radiusMm)) };
    }
    case 'transition':
      return null;
  }
}

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
