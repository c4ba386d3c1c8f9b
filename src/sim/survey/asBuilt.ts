import { drawLeans, drawLines } from '../../core/survey/index.ts';
import type { Survey, TwistEstimate } from '../../core/survey/types.ts';
import { placedSupports, type Scene, type SceneSupports, type SceneTrack, trackLengthMm } from '../../scene/index.ts';

/** A departure goes into a scene to this many parts of a millimetre: a tenth of a micrometre. */
const partsOfMm = 1e4;

/** How the deck leans beside the plan across the rails, place by place: chainage, m, and slope, the right rail higher where positive. */
type Leans = readonly { readonly chainage: number; readonly lean: number }[];

/**
 * The scene with the supports of a track standing off plan by `departures` (m, one a support), whatever it said before; with `leans` its
 * deck also leans so across the rails, without them as before.
 */
export function asBuiltScene(
  scene: Scene,
  trackId: string,
  departures: ArrayLike<number>,
  leans: Leans | null = null,
): Scene {
  const tracks = scene.tracks.map((track) => {
    if (track.id !== trackId) return track;
    const built = standing(track, departures);
    return leans === null ? built : leaning(built, leans);
  });
  return { ...scene, tracks };
}

/** How the deck leans by a survey's cross-levels, and what setting its wrong places right takes away; null where none was read. */
export function leansOf({ twist }: Survey): { readonly before: Leans; readonly after: Leans } | null {
  if (twist === null) return null;
  const { mean } = twist.belief;
  return { before: leansAt(twist, mean), after: leansAt(twist, setRight(twist, mean)) };
}

const leansAt = ({ places }: TwistEstimate, leans: ArrayLike<number>): Leans =>
  places.map(({ chainage }, i) => ({ chainage, lean: leans[i] }));

/** The advice for a wrong place is to take out what it is believed to lean by. */
const setRight = ({ places, belief }: TwistEstimate, leans: ArrayLike<number>): number[] =>
  places.map(({ wrong }, i) => leans[i] - (wrong ? belief.mean[i] : 0));

/** A line as it may stand: departures of the supports, m, and leans before and after the wrong places are set right. */
export interface DrawnLine {
  readonly departures: Float64Array;
  readonly leans: { readonly before: Leans; readonly after: Leans } | null;
}

/** Lines as they may stand by what the readings leave open: `count` draws that the seed alone decides. */
export function drawnLines({ belief, twist }: Survey, count: number, seed: number): DrawnLine[] {
  const across = twist === null ? null : drawLeans(twist.belief, count, seed);
  return drawLines(belief, count, seed).map((departures, i) => ({
    departures,
    leans:
      twist === null || across === null
        ? null
        : { before: leansAt(twist, across[i]), after: leansAt(twist, setRight(twist, across[i])) },
  }));
}

/** The same as scenes. */
export const drawnScenes = (scene: Scene, trackId: string, survey: Survey, count: number, seed: number): Scene[] =>
  drawnLines(survey, count, seed).map(({ departures, leans }) =>
    asBuiltScene(scene, trackId, departures, leans?.before ?? null),
  );

/** A lean goes into a scene to this many parts of a per cent: a tenth of a micrometre on H0. */
const partsOfPercent = 1e3;

function leaning(track: SceneTrack, leans: Leans): SceneTrack {
  const { crossLevels: _old, ...level } = track;
  const length = trackLengthMm(track);
  const crossLevels = leans.map(({ chainage, lean }) => ({
    atMm: Math.min(length, Math.round(chainage * 1e3 * partsOfMm) / partsOfMm),
    offPercent: Math.round(lean * 100 * partsOfPercent) / partsOfPercent,
  }));
  return crossLevels.every(({ offPercent }) => offPercent === 0) ? level : { ...level, crossLevels };
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
