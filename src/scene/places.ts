import { crossingAngle, type Turnout, turnout } from '../core/track/index.ts';
import type { SceneBend, SceneElement, ScenePlace, SceneProfilePoint, SceneTrack } from './schema/trackSchema.ts';

/** Signed curvature of a radius and turn, 1/m, left positive. */
export function curvatureOf(bend: SceneBend): number {
  if (bend === 'straight') return 0;
  return (bend.turn === 'left' ? 1000 : -1000) / bend.radiusMm;
}

/** Plan length of an element, mm. */
export function elementLengthMm(element: SceneElement): number {
  switch (element.kind) {
    case 'straight':
    case 'transition':
      return element.lengthMm;
    case 'arc':
      return element.lengthMm ?? ((element.angleDeg ?? 0) * Math.PI * element.radiusMm) / 180;
    case 'helix':
      return element.turns * 2 * Math.PI * element.radiusMm;
  }
}

/** Curvature at an element's start and end, 1/m; a transition's open ends take its neighbours' (straight beyond the ends). */
export function elementCurvatures(track: SceneTrack, index: number): readonly [number, number] {
  const element = track.alignment[index];
  if (element.kind === 'straight') return [0, 0];
  if (element.kind !== 'transition') {
    const curvature = curvatureOf(element);
    return [curvature, curvature];
  }
  const from = element.from === undefined ? neighbour(track, index - 1, 'to') : curvatureOf(element.from);
  const to = element.to === undefined ? neighbour(track, index + 1, 'from') : curvatureOf(element.to);
  return [from, to];
}

/** Curvature that the element next door shows to this side. Two transitions that both leave it open meet straight. */
function neighbour(track: SceneTrack, index: number, side: 'from' | 'to'): number {
  const element = track.alignment[index];
  if (element === undefined || element.kind === 'straight') return 0;
  if (element.kind !== 'transition') return curvatureOf(element);
  const bend = element[side];
  return bend === undefined ? 0 : curvatureOf(bend);
}

/** The turnout that a track begins with; null when it begins in the room. Throws RangeError when it cannot be built. */
export function startTurnout({ start }: SceneTrack): Turnout | null {
  if (!('branchOf' in start)) return null;
  const { hand, radiusMm, gaugeMm, crossing, frontMm, heelMm } = start.turnout;
  return turnout({
    hand,
    radius: radiusMm / 1000,
    gauge: gaugeMm / 1000,
    front: frontMm / 1000,
    heel: heelMm / 1000,
    ...(crossing && { crossingAngle: crossingAngle(crossing.oneIn, crossing.measured ?? 'right-angle') }),
  });
}

/** Diverging track before the first element of a branch, mm; 0 for a turnout that cannot be built, which the checks tell. */
function turnoutLengthMm(track: SceneTrack): number {
  try {
    return (startTurnout(track)?.diverging ?? 0) * 1000;
  } catch {
    return 0;
  }
}

/**
 * Chainage of every element's start, mm, and after them the track's length: one more entry than elements. A branch has the
 * diverging track of its turnout before the first.
 */
export function elementStartsMm(track: SceneTrack): readonly number[] {
  const starts = [turnoutLengthMm(track)];
  for (const element of track.alignment) starts.push(starts[starts.length - 1] + elementLengthMm(element));
  return starts;
}

export const trackLengthMm = (track: SceneTrack): number => elementStartsMm(track)[track.alignment.length];

/** Chainage of a place, mm; NaN when it names an element that the track does not have. */
export function placeMm(track: SceneTrack, place: ScenePlace | SceneProfilePoint): number {
  if (place.atMm !== undefined) return place.atMm;
  const at = place.at;
  if (at === undefined) return Number.NaN;
  const starts = elementStartsMm(track);
  const plus = at.plusMm ?? 0;
  const name = at.startOf ?? at.endOf;
  const last = at.startOf === undefined ? 1 : 0;
  if (name === 'track') return (last === 1 ? starts[track.alignment.length] : 0) + plus;
  const index = track.alignment.findIndex((element) => element.id === name);
  return index < 0 ? Number.NaN : starts[index + last] + plus;
}

/** One point of the profile with its chainage and height worked out, mm. */
export interface PlacedPoint {
  readonly atMm: number;
  readonly heightMm: number;
}

/** Chainages and heights of a profile's points, mm: a grade counts from the point before (from height 0 at the first). */
export function profileHeights(track: SceneTrack): readonly PlacedPoint[] {
  const placed: PlacedPoint[] = [];
  for (const point of track.profile) {
    const atMm = placeMm(track, point);
    const before = placed[placed.length - 1] ?? { atMm: 0, heightMm: 0 };
    const heightMm = point.heightMm ?? before.heightMm + ((point.gradePercent ?? 0) / 100) * (atMm - before.atMm);
    placed.push({ atMm, heightMm });
  }
  return placed;
}

/** One support of a track: its chainage and how far it stands off its planned height, mm. */
export interface PlacedSupport {
  readonly atMm: number;
  readonly offMm: number;
}

/** Every support of a track in order; none when the file gives none. Support number n of the file is entry n - 1. */
export function placedSupports(track: SceneTrack): readonly PlacedSupport[] {
  const supports = track.supports;
  if (supports === undefined) return [];
  if (!('everyMm' in supports)) {
    return supports.map((support) => ({ atMm: placeMm(track, support), offMm: support.offMm ?? 0 }));
  }
  const length = trackLengthMm(track);
  const off = new Map(supports.off?.map((entry) => [entry.support, entry.byMm]));
  const placed: PlacedSupport[] = [];
  for (let number = 1; ; number++) {
    const atMm = (supports.firstMm ?? 0) + (number - 1) * supports.everyMm;
    if (atMm > length) return placed;
    placed.push({ atMm, offMm: off.get(number) ?? 0 });
  }
}

/** Chainages of the strip's joints without a splice, mm, in order. */
export const stripJointsMm = (track: SceneTrack): readonly number[] =>
  (track.stripJoints ?? []).map((joint) => placeMm(track, joint)).sort((a, b) => a - b);
