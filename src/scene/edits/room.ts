import type { SceneRoom } from '../room/index.ts';
import type { Scene } from '../schema/schema.ts';

/** What of a room is to be otherwise; undefined takes it out of the file. */
export type RoomChange = { readonly [Part in keyof SceneRoom]?: SceneRoom[Part] | undefined };

/** Height of the scene's zero over the floor where nothing was said, mm: a table to stand at. Common practice, no source. */
const usualDatumMm = 950;

/** The scene with parts of its room changed; parts without anything in them go, and doors whose wall went with a corner. */
export function changeRoom(scene: Scene, change: RoomChange): Scene {
  const { datumAboveFloorMm = usualDatumMm, ...parts } = { ...scene.room, ...change };
  const kept = Object.entries(parts).filter(
    ([, part]) => part !== undefined && !(Array.isArray(part) && part.length === 0),
  );
  const room = { datumAboveFloorMm, ...Object.fromEntries(kept) } as SceneRoom;
  const walls = room.corners?.length ?? 0;
  const doors = room.doors?.filter(({ wall }) => wall <= walls) ?? [];
  const { doors: _doors, ...rest } = room;
  return { ...scene, room: doors.length === 0 ? rest : { ...rest, doors } };
}
