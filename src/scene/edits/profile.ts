import { placeMm, profileHeights, trackLengthMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneProfilePoint, SceneTrack } from '../schema/trackSchema.ts';
import { trackOf } from './parts.ts';
import { putTrack } from './putTrack.ts';
import { mmText, tidy } from './tidy.ts';

/** What may be said anew of a point of the heights. Height and grade exclude each other, and so do length and radius of its curve. */
export interface ProfileChange {
  readonly atMm?: number;
  readonly heightMm?: number;
  /** From the point before to this one, per cent. */
  readonly gradePercent?: number;
  /** Null takes the vertical curve away. */
  readonly verticalCurveLengthMm?: number | null;
  readonly verticalCurveRadiusMm?: number | null;
}

/**
 * The scene with one point of a track's heights (index from 0) changed. A point placed relative to an element stays so. Points after it that
 * are given by grade go up and down with it; those given by height stay. Throws RangeError in words.
 */
export function setProfilePoint(scene: Scene, trackId: string, index: number, change: ProfileChange): Scene {
  const track = trackOf(scene, trackId);
  const point = pointOf(track, index);
  if (change.heightMm !== undefined && change.gradePercent !== undefined) {
    throw new RangeError('A point has a height or a grade, not both.');
  }
  const profile = track.profile.with(index, curved(raised(placed(track, point, change), change), change));
  return putTrack(scene, { ...track, profile });
}

function pointOf(track: SceneTrack, index: number): SceneProfilePoint {
  const point = track.profile[index];
  if (point !== undefined) return point;
  throw new RangeError(
    `The heights of ${track.name} have ${track.profile.length} points; there is no number ${index + 1}.`,
  );
}

function placed(track: SceneTrack, point: SceneProfilePoint, { atMm }: ProfileChange): SceneProfilePoint {
  if (atMm === undefined) return point;
  if (point.at === undefined) return { ...point, atMm: tidy(atMm) };
  const { plusMm = 0, ...rest } = point.at;
  const plus = tidy(plusMm + atMm - placeMm(track, point));
  return { ...point, at: plus === 0 ? rest : { ...rest, plusMm: plus } };
}

function raised(point: SceneProfilePoint, { heightMm, gradePercent }: ProfileChange): SceneProfilePoint {
  if (heightMm === undefined && gradePercent === undefined) return point;
  const { heightMm: _height, gradePercent: _grade, ...rest } = point;
  return heightMm !== undefined
    ? { ...rest, heightMm: tidy(heightMm) }
    : { ...rest, gradePercent: tidy(gradePercent ?? 0) };
}

function curved(point: SceneProfilePoint, change: ProfileChange): SceneProfilePoint {
  const { verticalCurveLengthMm: length, verticalCurveRadiusMm: radius } = change;
  if (length === undefined && radius === undefined) return point;
  if (typeof length === 'number' && typeof radius === 'number') {
    throw new RangeError('A vertical curve has a length or a radius, not both.');
  }
  const { verticalCurveLengthMm: _length, verticalCurveRadiusMm: _radius, ...broken } = point;
  if (typeof length === 'number' && length > 0) return { ...broken, verticalCurveLengthMm: tidy(length) };
  if (typeof radius === 'number' && radius > 0) return { ...broken, verticalCurveRadiusMm: tidy(radius) };
  return broken;
}

/** Points of the heights nearer to each other than this are one, mm. */
const nearestMm = 1;

/**
 * The scene with one more point in a track's heights at a chainage, mm: on the grade that runs there, so that nothing changes yet, or at the
 * height given. Throws RangeError in words.
 */
export function addProfilePoint(scene: Scene, trackId: string, atMm: number, heightMm?: number): Scene {
  const track = trackOf(scene, trackId);
  const points = profileHeights(track);
  if (!(atMm >= 0 && atMm <= trackLengthMm(track))) {
    throw new RangeError(`${mmText(atMm)} is not on ${track.name}, which is ${mmText(trackLengthMm(track))} long.`);
  }
  const near = points.find((point) => Math.abs(point.atMm - atMm) < nearestMm);
  if (near !== undefined) throw new RangeError(`There is a point of the heights at ${mmText(near.atMm)} already.`);
  const following = points.findIndex((point) => point.atMm > atMm);
  const index = following < 0 ? points.length : following;
  const point = { atMm: tidy(atMm), heightMm: tidy(heightMm ?? heightOn(points, atMm)) };
  return putTrack(scene, { ...track, profile: track.profile.toSpliced(index, 0, point) });
}

/** Height of the straight grades at a chainage, mm; before the first and after the last point the grade goes on. */
export function heightOn(points: ReturnType<typeof profileHeights>, atMm: number): number {
  if (points.length === 1) return points[0].heightMm;
  const next = points.findIndex((point, index) => index > 0 && point.atMm > atMm);
  const to = next < 0 ? points.length - 1 : next;
  const [a, b] = [points[to - 1], points[to]];
  return a.heightMm + ((b.heightMm - a.heightMm) * (atMm - a.atMm)) / (b.atMm - a.atMm);
}

/** The scene without one point of a track's heights; all others keep their heights. Throws RangeError in words. */
export function removeProfilePoint(scene: Scene, trackId: string, index: number): Scene {
  const track = trackOf(scene, trackId);
  pointOf(track, index);
  if (track.profile.length === 1) throw new RangeError(`The heights of ${track.name} need at least one point.`);
  const heights = profileHeights(track);
  const next = track.profile[index + 1];
  const profile = track.profile.toSpliced(index, 1);
  if (next?.gradePercent !== undefined) {
    const after = heights[index + 1];
    const before = heights[index - 1] ?? { atMm: 0, heightMm: 0 };
    const { gradePercent: _grade, ...rest } = next;
    profile[index] =
      index === 0
        ? { ...rest, heightMm: tidy(after.heightMm) }
        : { ...rest, gradePercent: tidy((100 * (after.heightMm - before.heightMm)) / (after.atMm - before.atMm)) };
  }
  return putTrack(scene, { ...track, profile });
}
