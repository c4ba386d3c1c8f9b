import { gradeLines, plannedHeight } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';

/** What a route comes to. Lengths m. */
export interface RouteFacts {
  readonly length: number;
  /** End above start. */
  readonly rise: number;
  /** Planned grade of greatest size, rise over plan distance, signed. */
  readonly steepest: number;
  /** Null when all of it is straight. */
  readonly leastRadius: number | null;
}

export function routeFacts(track: Track): RouteFacts {
  const grades = gradeLines(track).map((line) => line.grade);
  const bends = track.spec.elements.map(({ startCurvature, endCurvature }) =>
    Math.max(Math.abs(startCurvature), Math.abs(endCurvature)),
  );
  const sharpest = Math.max(0, ...bends);
  return {
    length: track.length,
    rise: plannedHeight(track, track.length) - plannedHeight(track, 0),
    steepest: grades.reduce((most, grade) => (Math.abs(grade) > Math.abs(most) ? grade : most), 0),
    leastRadius: sharpest > 0 ? 1 / sharpest : null,
  };
}
