import { placedSupports } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { trackOf } from './parts.ts';
import { putTrack } from './putTrack.ts';
import { supportsWith } from './supports.ts';
import { tidy } from './tidy.ts';

/** Neighbouring supports of a track, both ends among them, counted from 0. */
export interface SupportSpan {
  readonly from: number;
  readonly to: number;
}

/** How far the supports of a span stand off their planned heights on average, mm. Throws RangeError in words. */
export function meanOffMm(track: SceneTrack, { from, to }: SupportSpan): number {
  const offs = offsOf(track, { from, to });
  return tidy(offs.reduce((sum, off) => sum + off, 0) / offs.length);
}

/** The scene with the supports of a span each higher by this much, mm (negative: lower). Throws RangeError in words. */
export function moveSupports(scene: Scene, trackId: string, span: SupportSpan, byMm: number): Scene {
  const track = trackOf(scene, trackId);
  return withOffs(
    scene,
    track,
    span,
    offsOf(track, span).map((off) => off + byMm),
  );
}

/** The scene with every support of a span at its planned height. Throws RangeError in words. */
export function supportsAsPlanned(scene: Scene, trackId: string, span: SupportSpan): Scene {
  const track = trackOf(scene, trackId);
  return withOffs(
    scene,
    track,
    span,
    offsOf(track, span).map(() => 0),
  );
}

/**
 * The scene with the inner supports of a span on the straight line between its outer two, which stay: one even grade along the track.
 * `plannedMm` gives the planned height, mm, at a chainage, mm. Throws RangeError in words.
 */
export function evenSupports(
  scene: Scene,
  trackId: string,
  span: SupportSpan,
  plannedMm: (atMm: number) => number,
): Scene {
  const track = trackOf(scene, trackId);
  const offs = offsOf(track, span);
  if (offs.length < 3) throw new RangeError('An even grade needs a support between the outer two.');
  const places = placedSupports(track).slice(span.from, span.to + 1);
  const heightOf = (index: number): number => plannedMm(places[index].atMm) + offs[index];
  const last = places.length - 1;
  const [start, rise] = [heightOf(0), heightOf(last) - heightOf(0)];
  const lengthMm = places[last].atMm - places[0].atMm;
  return withOffs(
    scene,
    track,
    span,
    places.map(({ atMm }, index) =>
      index === 0 || index === last
        ? offs[index]
        : start + (rise * (atMm - places[0].atMm)) / lengthMm - plannedMm(atMm),
    ),
  );
}

/**
 * The scene without the supports of a span. Those of a row at even distances then stand each at its own place. Refused, by RangeError in
 * words, where fewer than two would be left, or a survey or a variant names supports of the track by numbers that would change.
 */
export function removeSupports(scene: Scene, trackId: string, span: SupportSpan): Scene {
  const track = trackOf(scene, trackId);
  const gone = offsOf(track, span).length;
  const placed = placedSupports(track);
  if (placed.length - gone < 2) throw new RangeError(`${track.name} needs two supports at least.`);
  const survey = scene.surveys?.find((one) => one.track === trackId);
  if (survey) throw new RangeError(`The survey “${survey.name}” names supports of ${track.name} by their numbers.`);
  const way = `tracks/${trackId}/supports`;
  const variant = scene.variants?.find(({ changes }) => changes.some(({ at }) => at.startsWith(way)));
  if (variant) throw new RangeError(`The variant “${variant.name}” names supports of ${track.name} by their numbers.`);
  const all = Array.isArray(track.supports)
    ? track.supports
    : placed.map(({ atMm, offMm }) => (offMm === 0 ? { atMm: tidy(atMm) } : { atMm: tidy(atMm), offMm }));
  return putTrack(scene, { ...track, supports: all.filter((_, index) => index < span.from || index > span.to) });
}

/** How far each support of a span stands off its planned height, mm. */
function offsOf(track: SceneTrack, { from, to }: SupportSpan): number[] {
  const placed = placedSupports(track);
  if (!Number.isInteger(from) || !Number.isInteger(to) || from < 0 || to < from || to >= placed.length) {
    throw new RangeError(`${track.name} has ${placed.length} supports; there are no numbers ${from + 1} to ${to + 1}.`);
  }
  return placed.slice(from, to + 1).map(({ offMm }) => offMm);
}

function withOffs(scene: Scene, track: SceneTrack, { from }: SupportSpan, offs: readonly number[]): Scene {
  const { supports } = track;
  if (supports === undefined) return scene;
  return putTrack(scene, {
    ...track,
    supports: offs.reduce((now, off, index) => supportsWith(now, from + index, tidy(off)), supports),
  });
}
