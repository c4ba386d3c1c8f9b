import { profileHeights, type SceneTrack } from '../../scene/index.ts';

/** Grades along a track's points, ratios: entry i from point i to the next. */
export function gradesBetween(track: SceneTrack): readonly number[] {
  const points = profileHeights(track);
  return points.slice(1).map(({ atMm, heightMm }, i) => (heightMm - points[i].heightMm) / (atMm - points[i].atMm));
}

/** Length of the vertical curve at each point of a track's heights, mm; 0 where there is none. */
export function curveLengthsMm(track: SceneTrack): readonly number[] {
  const grades = gradesBetween(track);
  return track.profile.map(({ verticalCurveLengthMm, verticalCurveRadiusMm }, i) => {
    if (verticalCurveLengthMm !== undefined) return verticalCurveLengthMm;
    if (verticalCurveRadiusMm === undefined || i === 0 || i >= grades.length) return 0;
    return verticalCurveRadiusMm * Math.abs(grades[i] - grades[i - 1]);
  });
}
