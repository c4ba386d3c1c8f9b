import type { Structure } from '../core/risks/types.ts';
import { structuresOf } from '../state/room/index.ts';
import type { SessionState } from '../state/types.ts';
import { type DrawnRoom, drawnRoom, type RoomOfFile } from './room/drawnRoom.ts';
import { type TableTop, tableTops } from './table/tableTop.ts';
import { type DrawnTrack, drawnTrack } from './way/drawnTrack.ts';
import { type DeckSizes, type WayMeasures, wayMeasures } from './way/measures.ts';

/** Everything that stands still on the stage, in metres. */
export interface Railway {
  readonly name: string;
  /** What people call the scale, e.g. "H0/00". */
  readonly scale: string;
  readonly measures: WayMeasures;
  readonly tracks: readonly DrawnTrack[];
  readonly tables: readonly TableTop[];
  /** Height of the floor, m. */
  readonly floor: number;
  /** Height of the standing eye above the floor, m. */
  readonly eye: number;
  readonly room: DrawnRoom;
  /** Walls, piers and portals that bodies must keep clear of, as they are computed with. */
  readonly structures: readonly Structure[];
}

/** The part of a scene file that the stage reads. */
interface DrawnScene {
  readonly name: string;
  readonly scale: { readonly name: string; readonly gaugeMm: number };
  readonly deck: DeckSizes;
  readonly room?:
    | (RoomOfFile & {
        readonly datumAboveFloorMm: number;
        readonly baseboards?: readonly Parameters<typeof tableTops>[2][number][] | undefined;
        readonly person?: { readonly eyeMm?: number | undefined } | undefined;
      })
    | undefined;
}

/** Height of a table above the floor where the file does not say, m. */
const usualTableHeight = 0.9;

/** Height of a standing person's eye above the floor where the file does not say, m. */
const usualEyeHeight = 1.6;

/** Works out what is to be drawn of a compiled scene. */
export function railwayOf(compiled: NonNullable<SessionState['compiled']>): Railway {
  const scene: DrawnScene = compiled.scene;
  const measures = wayMeasures(scene.scale.gaugeMm / 1000, scene.deck);
  const tracks = [...compiled.tracks].map(([id, track]) => drawnTrack(id, track));
  // Who has said where the walls are, or where they reach to, means the boards as they are.
  const described = scene.room?.corners !== undefined || scene.room?.person !== undefined;
  const tables = tableTops(tracks, measures, scene.room?.baseboards ?? [], described);
  const datum = scene.room?.datumAboveFloorMm;
  const lowest = Math.min(...tables.map((table) => table.top));
  return {
    name: scene.name,
    scale: scene.scale.name,
    measures,
    tracks,
    tables,
    floor: datum === undefined ? lowest - usualTableHeight : -datum / 1000,
    eye: (scene.room?.person?.eyeMm ?? usualEyeHeight * 1000) / 1000,
    room: drawnRoom(scene.room ?? {}),
    structures: structuresOf(compiled),
  };
}
