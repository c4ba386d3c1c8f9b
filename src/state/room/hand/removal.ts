import type { RoomChange, SceneRoom } from '../../../scene/index.ts';
import { withoutCorner } from '../proposals.ts';
import type { RoomHandle } from './roomHandles.ts';

/** The room without what a handle belongs to, and what that is called in the history. Throws RangeError in words. */
export function roomRemoval(
  room: SceneRoom,
  { part }: RoomHandle,
): { readonly label: string; readonly change: RoomChange } {
  const { corners = [], doors = [], obstacles = [], baseboards = [] } = room;
  const { index } = part;
  switch (part.of) {
    case 'corner':
      if (corners.length <= 3) throw new RangeError('A room needs three corners at least.');
      return { label: `removal of corner ${index + 1}`, change: withoutCorner(room, index) };
    case 'wall':
    case 'split':
      throw new RangeError('A wall goes with one of its corners.');
    case 'door':
      return { label: `removal of door ${index + 1}`, change: { doors: doors.toSpliced(index, 1) } };
    case 'obstacle':
      return { label: `removal of ${obstacles[index].name}`, change: { obstacles: obstacles.toSpliced(index, 1) } };
    case 'board':
      return { label: `removal of board ${index + 1}`, change: { baseboards: baseboards.toSpliced(index, 1) } };
  }
}
