import {
  elementCurvatures,
  type Proposed,
  type Scene,
  type SceneTrack,
  shapeScaleOf,
  spacingFor,
  straightSpacingFor,
} from '../../scene/index.ts';

/**
 * Spacing that a track beside another is first offered at, mm, and the standard it comes from: for the sharpest curve of the inner of the two, which is
 * sharper than the one that is there.
 */
export function besideSpacing(scene: Scene, track: SceneTrack): Proposed {
  const scale = shapeScaleOf(scene.scale);
  const sharpest = Math.max(...track.alignment.flatMap((_, index) => elementCurvatures(track, index).map(Math.abs)));
  const straight = spacingFor(scale, 'line', Number.POSITIVE_INFINITY);
  if (sharpest === 0) return straight;
  const innerMm = 1000 / sharpest - straight.mm;
  return innerMm > 0 ? spacingFor(scale, 'line', innerMm) : straight;
}

/** All spacings that the standards have for a track beside another, mm, from the least: of straight track on the line and in stations, and round its sharpest curve. */
export function normSpacings(scene: Scene, track: SceneTrack): readonly Proposed[] {
  const scale = shapeScaleOf(scene.scale);
  const all = [straightSpacingFor(scale, 'line'), straightSpacingFor(scale, 'station'), besideSpacing(scene, track)];
  return all.filter(({ mm }, k) => all.findIndex((one) => one.mm === mm) === k).sort((a, b) => a.mm - b.mm);
}

/** The spacing of a standard that one is led to from no further than `reachMm`; null where none is so near. */
export function ledSpacing(spacingMm: number, norms: readonly Proposed[], reachMm: number): Proposed | null {
  let [best, least]: [Proposed | null, number] = [null, reachMm];
  for (const norm of norms) {
    const off = Math.abs(norm.mm - spacingMm);
    if (off <= least) [best, least] = [norm, off];
  }
  return best;
}
