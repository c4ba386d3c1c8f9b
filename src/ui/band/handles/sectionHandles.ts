import { plannedHeight } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { placedSupports, profileHeights, type SceneTrack, trackLengthMm } from '../../../state/routeEdits/index.ts';

/** What of the section a hand can take hold of. `index` counts points or supports from 0. */
export type SectionHandle =
  | {
      readonly kind: 'point';
      readonly index: number;
      readonly atMm: number;
      readonly heightMm: number;
      /** Chainages of its neighbours, or of the ends of the track, mm. */
      readonly betweenMm: readonly [number, number];
    }
  | {
      readonly kind: 'curve';
      readonly index: number;
      /** At which end of the vertical curve it is. */
      readonly side: -1 | 1;
      readonly atMm: number;
      readonly heightMm: number;
      /** The point of intersection, mm, and the change of grade there, as a share. */
      readonly middleMm: number;
      readonly change: number;
      readonly lengthMm: number;
      /** Whether the file gives it by its radius. */
      readonly byRadius: boolean;
    }
  | { readonly kind: 'support'; readonly index: number; readonly atMm: number; readonly offMm: number };

export const handleKey = (handle: SectionHandle): string =>
  handle.kind === 'curve' ? `curve-${handle.index}-${handle.side}` : `${handle.kind}-${handle.index}`;

/** Grades that differ by less than this meet without a curve, as a share. */
const sameGrade = 1e-5;

/** The handles of a track's section in order of chainage; `drawn` is the same track compiled. */
export function sectionHandles(track: SceneTrack, drawn: Track): readonly SectionHandle[] {
  const points = profileHeights(track);
  const end = trackLengthMm(track);
  const handles: SectionHandle[] = points.map(({ atMm, heightMm }, index) => ({
    kind: 'point',
    index,
    atMm,
    heightMm,
    betweenMm: [points[index - 1]?.atMm ?? 0, points[index + 1]?.atMm ?? end],
  }));
  for (let index = 1; index + 1 < points.length; index++) {
    const { verticalCurveLengthMm, verticalCurveRadiusMm } = track.profile[index];
    const change = Math.abs(gradeFrom(points, index) - gradeFrom(points, index - 1));
    const lengthMm =
      verticalCurveLengthMm ?? (verticalCurveRadiusMm === undefined ? 0 : verticalCurveRadiusMm * change);
    if (lengthMm === 0 || change < sameGrade) continue;
    for (const side of [-1, 1] as const) {
      const atMm = points[index].atMm + (side * lengthMm) / 2;
      handles.push({
        kind: 'curve',
        index,
        side,
        atMm,
        heightMm: plannedHeight(drawn, atMm / 1000) * 1000,
        middleMm: points[index].atMm,
        change,
        lengthMm,
        byRadius: verticalCurveRadiusMm !== undefined,
      });
    }
  }
  const supports = placedSupports(track).map(
    ({ atMm, offMm }, index): SectionHandle => ({ kind: 'support', index, atMm, offMm }),
  );
  return [...handles.sort((a, b) => a.atMm - b.atMm), ...supports];
}

type Placed = ReturnType<typeof profileHeights>;

/** Grade from a point to the next, as a share; NaN at the last. */
export function gradeFrom(points: Placed, index: number): number {
  const [a, b] = [points[index], points[index + 1]];
  return a && b ? (b.heightMm - a.heightMm) / (b.atMm - a.atMm) : Number.NaN;
}
