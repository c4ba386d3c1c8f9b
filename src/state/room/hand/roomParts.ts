import { changeRoom, type Scene, type SceneRoom } from '../../../scene/index.ts';

/** Something of a room, or a structure in it, that a hand takes hold of; numbers count from 0. Sides of a rectangle go south, east, north, west; side i of an outline runs from corner i. */
export type RoomPart =
  | { readonly of: 'corner' | 'wall' | 'split'; readonly index: number }
  | { readonly of: 'door'; readonly index: number; readonly does: 'place' | 'near' | 'far' | 'leaf' }
  | {
      readonly of: 'obstacle' | 'board' | 'structure';
      readonly index: number;
      readonly does: 'middle' | 'corner' | 'side' | 'across';
      readonly at: number;
    };

/** What a hand can draw in a room, each by pulling it open. */
export type RoomTool = 'walls' | 'door' | 'pillar' | 'post' | 'board';

/** Everything of one thing of a room belongs together: the walls, a door, an obstacle, a board, a structure. */
export type RoomSubject = 'walls' | `${'door' | 'obstacle' | 'board' | 'structure'}:${number}`;

/** The key of a part, the same before and after an edit. */
export function roomKey(part: RoomPart): string {
  if (part.of === 'door') return `room:door:${part.index}:${part.does}`;
  if (part.of === 'obstacle' || part.of === 'board' || part.of === 'structure') {
    return `room:${part.of}:${part.index}:${part.does}:${part.at}`;
  }
  return `room:${part.of}:${part.index}`;
}

/** The thing that a key belongs to; null for a key of no room. */
export function roomSubject(key: string | null): RoomSubject | null {
  const [room, of, index] = (key ?? '').split(':');
  if (room !== 'room') return null;
  return of === 'door' || of === 'obstacle' || of === 'board' || of === 'structure'
    ? `${of}:${Number(index)}`
    : 'walls';
}

/** The key of what a tool leaves in the hand once it has drawn something in this room. */
export function drawnKey(tool: RoomTool, { doors = [], obstacles = [], baseboards = [] }: Partial<SceneRoom>): string {
  switch (tool) {
    case 'walls':
      return roomKey({ of: 'corner', index: 2 });
    case 'door':
      return roomKey({ of: 'door', index: doors.length, does: 'place' });
    case 'board':
      return roomKey({ of: 'board', index: baseboards.length, does: 'middle', at: 0 });
    case 'pillar':
    case 'post':
      return roomKey({ of: 'obstacle', index: obstacles.length, does: 'middle', at: 0 });
  }
}

/** Heights of the floor and of the top of a board, m. */
export const floorOf = ({ datumAboveFloorMm }: SceneRoom): number => -datumAboveFloorMm / 1000;
export const boardTop = ({ deck }: Scene, topMm: number | undefined): number =>
  (topMm ?? -(deck.thicknessMm + deck.underlayMm + deck.trackMm)) / 1000;

/** Where an obstacle is taken hold of, m: at the height of the track, where it is in the way, or at its top where that is lower. */
export const obstacleGrip = ({ datumAboveFloorMm }: SceneRoom, heightMm: number | undefined): number =>
  heightMm === undefined ? 0 : Math.min(0, (heightMm - datumAboveFloorMm) / 1000);

/** Height of the plane that something is drawn in, m: that of the handles it then has. */
export function drawingHeight(scene: Scene, tool: RoomTool): number {
  if (tool === 'board') return boardTop(scene, undefined);
  if (tool === 'pillar' || tool === 'post') return 0;
  const { room } = changeRoom(scene, {});
  return room === undefined ? 0 : floorOf(room);
}
