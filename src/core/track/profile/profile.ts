import { locate, makeBucketIndex } from '../bucket.ts';
import type { HeightPieces, PreparedProfile, TrackPoint } from '../types.ts';
import { railStarts } from './rail.ts';

/** Prepares `pieces`, which start at chainage 0, for constant-time queries over a track of `length`. */
export function prepareProfile(pieces: HeightPieces, length: number): PreparedProfile {
  const rails = railStarts(pieces, length);
  const startRail = rails.slice(0, -1);
  return {
    ...pieces,
    startRail,
    bucket: makeBucketIndex(pieces.startChainage, length),
    railBucket: makeBucketIndex(startRail, rails[rails.length - 1]),
  };
}

/** Writes height, grade and vertical curvature at `chainage`, inside the track, into `out`. */
export function placeInProfile(
  profile: PreparedProfile,
  chainage: number,
  out: Pick<TrackPoint, 'z' | 'grade' | 'verticalCurvature'>,
): void {
  const k = locate(profile.bucket, profile.startChainage, chainage);
  const t = chainage - profile.startChainage[k];
  const b = profile.b[k];
  const c = profile.c[k];
  const d = profile.d[k];
  const e = profile.e[k];
  out.z = profile.a[k] + t * (b + t * (c + t * (d + t * e)));
  out.grade = b + t * (2 * c + t * (3 * d + t * 4 * e));
  out.verticalCurvature = 2 * c + t * (6 * d + t * 12 * e);
}
