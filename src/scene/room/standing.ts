import type { SceneCorner } from '../schema/outlineSchema.ts';
import { isIn } from './obstacle.ts';
import { isInside } from './outline.ts';
import type { SceneBaseboard, SceneRoom } from './roomSchema.ts';

/** Distance of the places looked at along the edge of a board, mm. */
const everyMm = 20;

/** Floor that a person needs in front of a board to stand and lean, mm. Assumption. */
export const standingDepthMm = 350;

/**
 * Places along the edges of the boards where a person can stand, mm: in front of them the floor is free, inside the room, of boards and of
 * obstacles. Whether one can walk there is not asked: a well in the middle counts. Null without boards.
 */
export function standingEdges(room: SceneRoom): readonly SceneCorner[] | null {
  const boards = room.baseboards ?? [];
  if (boards.length === 0) return null;
  const free = (place: SceneCorner): boolean =>
    (room.corners === undefined || isInside(place, room.corners)) &&
    !boards.some((board) => covers(board, place)) &&
    !(room.obstacles ?? []).some((obstacle) => isIn(place, obstacle));
  return boards.flatMap((board) =>
    edgePlaces(board)
      .filter(({ at, out }) =>
        // As deep as a person: a gap between two boards is none to stand in.
        [0.02, 0.5, 1].every((part) =>
          free({ xMm: at.xMm + out.xMm * part * standingDepthMm, yMm: at.yMm + out.yMm * part * standingDepthMm }),
        ),
      )
      .map(({ at }) => at),
  );
}

/** Whether a place lies over a board. */
export const covers = ({ xMm, yMm, lengthMm, widthMm }: SceneBaseboard, place: SceneCorner): boolean =>
  place.xMm >= xMm && place.xMm <= xMm + lengthMm && place.yMm >= yMm && place.yMm <= yMm + widthMm;

interface EdgePlace {
  readonly at: SceneCorner;
  /** Away from the board, of length 1. */
  readonly out: SceneCorner;
}

function edgePlaces({ xMm, yMm, lengthMm, widthMm }: SceneBaseboard): EdgePlace[] {
  const spread = (length: number): number[] => {
    const steps = Math.max(1, Math.ceil(length / everyMm));
    return Array.from({ length: steps + 1 }, (_, step) => (length * step) / steps);
  };
  return [
    ...spread(lengthMm).flatMap((along): EdgePlace[] => [
      { at: { xMm: xMm + along, yMm }, out: { xMm: 0, yMm: -1 } },
      { at: { xMm: xMm + along, yMm: yMm + widthMm }, out: { xMm: 0, yMm: 1 } },
    ]),
    ...spread(widthMm).flatMap((along): EdgePlace[] => [
      { at: { xMm, yMm: yMm + along }, out: { xMm: -1, yMm: 0 } },
      { at: { xMm: xMm + lengthMm, yMm: yMm + along }, out: { xMm: 1, yMm: 0 } },
    ]),
  ];
}
