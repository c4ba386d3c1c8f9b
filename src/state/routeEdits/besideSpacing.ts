import {
  elementCurvatures,
  type Proposed,
  type Scene,
  type SceneTrack,
  shapeScaleOf,
  spacingFor,
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
