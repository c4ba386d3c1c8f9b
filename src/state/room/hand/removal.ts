import { changeRoom, changeSurroundings, type Scene, type SceneRoom } from '../../../scene/index.ts';
import { withoutCorner } from '../proposals.ts';
import type { RoomHandle } from './roomHandles.ts';

/** The railway without what a handle belongs to, and what that is called in the history. Throws RangeError in words. */
export function roomRemoval(scene: Scene, { part }: RoomHandle): { readonly label: string; readonly without: Scene } {
  const { structures = [] } = scene;
  const room: Partial<SceneRoom> = scene.room ?? {};
  const { corners = [], doors = [], obstacles = [], baseboards = [] } = room;
  const { index } = part;
  switch (part.of) {
    case 'corner':
      if (corners.length <= 3) throw new RangeError('A room needs three corners at least.');
      return { label: `removal of corner ${index + 1}`, without: changeRoom(scene, withoutCorner(room, index)) };
    case 'wall':
    case 'split':
      throw new RangeError('A wall goes with one of its corners.');
    case 'door':
      return {
        label: `removal of door ${index + 1}`,
        without: changeRoom(scene, { doors: doors.toSpliced(index, 1) }),
      };
    case 'structure':
      return {
        label: `removal of ${structures[index].name}`,
        without: changeSurroundings(scene, { structures: structures.toSpliced(index, 1) }),
      };
    case 'obstacle':
      return {
        label: `removal of ${obstacles[index].name}`,
        without: changeRoom(scene, { obstacles: obstacles.toSpliced(index, 1) }),
      };
    case 'board':
      return {
        label: `removal of board ${index + 1}`,
        without: changeRoom(scene, { baseboards: baseboards.toSpliced(index, 1) }),
      };
  }
}
