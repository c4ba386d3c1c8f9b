import {
  type Board,
  cutPieces,
  type Layers,
  layOnSheets,
  railsOver,
  supportSchedule,
  turnsOfHelices,
} from '../../core/build/index.ts';
import { asPlanned, type Track, trackPoint } from '../../core/track/index.ts';
import { placedSupports, type Scene, type SceneTrack } from '../../scene/index.ts';
import { deckWidth } from '../deckWidth.ts';
import type { CompiledScene } from '../types.ts';
import type { BuildPlan, BuildWish, TrackBuild } from './types.ts';

const mm = 1e-3;

/** A support this near the end of the track, m, is at the end. */
const endTolerance = 1e-9;

/** Heights of all supports, pieces of all strips and the sheets they come out of, for the railway as planned. Throws RangeError for an unknown track, or a strip too wide for the sheet. */
export function buildPlan(compiled: CompiledScene, wish: BuildWish): BuildPlan {
  const { scene } = compiled;
  const planned = new Map([...compiled.tracks].map(([id, track]) => [id, asPlanned(track)]));
  const files = scene.tracks.filter(({ id }) => wish.trackId === undefined || id === wish.trackId);
  if (files.length === 0) throw new RangeError(`The scene has no track "${wish.trackId}".`);
  const tracks = files.map((file) => trackBuild(scene, file, planned, wish));
  const pieces = tracks.flatMap((one) => one.pieces);
  const areas = tracks.flatMap(({ pieces: own, layers }) =>
    own.map(({ from, to, count }) => ((to - from) / count) * layers.width),
  );
  return { tracks, sheet: wish.sheet, layout: layOnSheets(pieces, areas, wish.sheet) };
}

function trackBuild(
  scene: Scene,
  file: SceneTrack,
  planned: ReadonlyMap<string, Track>,
  { sheet, every }: BuildWish,
): TrackBuild {
  const track = planned.get(file.id);
  if (track === undefined) throw new RangeError(`Track "${file.id}" was not compiled.`);
  const layers = layersOf(scene, file);
  const rows = supportSchedule({
    track,
    supports: supportsOf(file, track, every),
    layers,
    tracks: [...planned.values()],
    boards: boardsOf(scene, layers),
    floor: scene.room?.datumAboveFloorMm === undefined ? null : -scene.room.datumAboveFloorMm * mm,
  });
  return {
    trackId: file.id,
    trackName: file.name,
    layers,
    supports: rows,
    helices: turnsOfHelices(track, rows, layers),
    pieces: cutPieces(track, layers.width, sheet),
    besides: besides(file.id, planned, layers),
  };
}

function layersOf(scene: Scene, file: SceneTrack): Layers {
  const { thicknessMm, underlayMm, trackMm } = scene.deck;
  return {
    track: trackMm * mm,
    underlay: underlayMm * mm,
    deck: (file.strip?.thicknessMm ?? thicknessMm) * mm,
    width: file.strip === undefined ? deckWidth(scene) : file.strip.widthMm * mm,
  };
}

function supportsOf(file: SceneTrack, track: Track, every: number | undefined) {
  const given = placedSupports(file);
  if (given.length > 0) return given.map(({ atMm }, index) => ({ number: index + 1, chainage: atMm * mm }));
  if (every === undefined) return [];
  const spaces = Math.max(1, Math.ceil((track.length - endTolerance) / every));
  return Array.from({ length: spaces + 1 }, (_, i) => ({ number: i + 1, chainage: Math.min(track.length, i * every) }));
}

/** The boards of the room; one without a height lies a deck below the datum, as everywhere. */
const boardsOf = ({ room }: Scene, { track, underlay, deck }: Layers): Board[] =>
  (room?.baseboards ?? []).map(({ xMm, yMm, lengthMm, widthMm, topMm }) => ({
    x: [xMm * mm, (xMm + lengthMm) * mm],
    y: [yMm * mm, (yMm + widthMm) * mm],
    top: topMm === undefined ? -(track + underlay + deck) : topMm * mm,
  }));

/** How often a track is looked at for others beside it, m. */
const look = 0.1;

function besides(id: string, planned: ReadonlyMap<string, Track>, { width, deck }: Layers): string[] {
  const own = planned.get(id);
  if (own === undefined) return [];
  const steps = Math.ceil(own.length / look);
  const places = Array.from({ length: steps + 1 }, (_, i) => trackPoint(own, (own.length * i) / steps));
  return [...planned].flatMap(([other, track]) => {
    const overlaps =
      other !== id &&
      places.some(({ x, y, z }) => railsOver(track, x, y, width).some(({ height }) => Math.abs(height - z) < deck));
    return overlaps ? [other] : [];
  });
}
