import { drawLines } from '../../core/survey/index.ts';
import type { Survey } from '../../core/survey/types.ts';
import { placedSupports, type Scene, type SceneSupports, type SceneTrack } from '../../scene/index.ts';

/** A departure goes into a scene to this many parts of a millimetre: a tenth of a micrometre. */
const partsOfMm = 1e4;

/** The scene with the supports of a track standing off plan by `departures` (m, one a support), whatever it said before. */
export function asBuiltScene(scene: Scene, trackId: string, departures: ArrayLike<number>): Scene {
  const tracks = scene.tracks.map((track) => (track.id === trackId ? standing(track, departures) : track));
  return { ...scene, tracks };
}

/** Scenes as the line may stand by what its readings leave open: `count` draws that the seed alone decides. */
export function drawnScenes(scene: Scene, trackId: string, { belief }: Survey, count: number, seed: number): Scene[] {
  return drawLines(belief, count, seed).map((departures) => asBuiltScene(scene, trackId, departures));
}

function standing(track: SceneTrack, departures: ArrayLike<number>): SceneTrack {
  const { supports } = track;
  if (supports === undefined) return track;
  const offs = placedSupports(track).map((_, i) => Math.round((departures[i] ?? 0) * 1e3 * partsOfMm) / partsOfMm);
  return { ...track, supports: withOffs(supports, offs) };
}

function withOffs(supports: SceneSupports, offs: readonly number[]): SceneSupports {
  if (Array.isArray(supports)) {
    return supports.map(({ offMm: _old, ...place }, i) => (offs[i] === 0 ? place : { ...place, offMm: offs[i] }));
  }
  const { off: _old, ...even } = supports;
  const off = offs.flatMap((byMm, i) => (byMm === 0 ? [] : [{ support: i + 1, byMm }]));
  return off.length === 0 ? even : { ...even, off };
}
