import { profileHeights, type Scene, type SceneTrack } from '../../scene/index.ts';
import { fileMm, withTrack } from './parts.ts';

/** Rounds off the nearest point where two grades meet with a vertical curve of this plan length (m); null where none meet. */
export function roundOff(scene: Scene, track: SceneTrack, chainage: number, length: number): Scene | null {
  const points = profileHeights(track);
  let nearest = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index + 1 < points.length; index++) {
    const away = Math.abs(points[index].atMm - chainage * 1000);
    if (away < least) {
      least = away;
      nearest = index;
    }
  }
  // A point further away than the curve reaches is not what the finding is about.
  if (nearest < 0 || least > Math.max(fileMm(length), 500)) return null;
  const profile = track.profile.map((point, index) => {
    if (index !== nearest) return point;
    const { verticalCurveLengthMm: _length, verticalCurveRadiusMm: _radius, ...rest } = point;
    return { ...rest, verticalCurveLengthMm: fileMm(length) };
  });
  return withTrack(scene, { ...track, profile });
}
