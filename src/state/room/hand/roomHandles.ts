import {
  extentOfObstacle,
  type Scene,
  type SceneCorner,
  type SceneObstacle,
  type SceneStructure,
  twiceArea,
} from '../../../scene/index.ts';
import type { Handle, HandleKind, Place } from '../../route/handles.ts';
import { asRectangle, fromRectangle } from '../proposals.ts';
import { doorLeaf, onLeaf } from './doorLeaf.ts';
import { boardTop, floorOf, obstacleGrip, type RoomPart, type RoomSubject, roomKey, roomSubject } from './roomParts.ts';

/** A handle of the room, with what of it a hand takes. */
export interface RoomHandle extends Handle {
  readonly part: RoomPart;
}

/** Names of the sides and corners of a rectangle square to the room, in their order. */
export const sideNames = ['South', 'East', 'North', 'West'] as const;
const cornerNames = ['South-west', 'South-east', 'North-east', 'North-west'] as const;

/** How far along its wall the handle for another corner stands, as a share: not on the middle, where the wall itself is held. */
const splitAt = 0.25;

/**
 * The handles of a room: the corners of its walls and the middle of each thing; of the chosen one those that size it too. In the order in which the keyboard
 * goes through them.
 */
export function roomHandles(scene: Scene, chosen: string | null): readonly RoomHandle[] {
  const { room, structures = [] } = scene;
  const standing = structures.flatMap((structure, index) => structureHandles(structure, index, roomSubject(chosen)));
  if (room === undefined) return standing;
  const { corners = [], doors = [], obstacles = [], baseboards = [] } = room;
  const floor = floorOf(room);
  const subject = roomSubject(chosen);
  return [
    ...wallHandles(corners, floor, subject === 'walls' ? chosen : null, subject === 'walls'),
    ...doors.flatMap((door, index): RoomHandle[] => {
      const leaf = doorLeaf(room, door);
      if (leaf === null) return [];
      const at = (mm: number): SceneCorner => ({
        xMm: leaf.from.xMm + mm * leaf.along[0],
        yMm: leaf.from.yMm + mm * leaf.along[1],
      });
      const named = `door ${index + 1}`;
      const handle = (does: 'place' | 'near' | 'far', mm: number, name: string, grows: Place | null): RoomHandle =>
        handleAt(
          { of: 'door', index, does },
          does === 'place' ? 'room-middle' : 'room-side',
          at(mm),
          floor,
          name,
          grows,
        );
      const [x, y] = leaf.along;
      const end = onLeaf(leaf, door.widthMm, 1, 1);
      return [
        handle('place', door.fromMm + door.widthMm / 2, `Place of ${named}`, null),
        ...(subject === `door:${index}`
          ? [
              handle('near', door.fromMm, `Near jamb of ${named}`, [-x, -y]),
              handle('far', door.fromMm + door.widthMm, `Far jamb of ${named}`, [x, y]),
              {
                ...handleAt({ of: 'door', index, does: 'leaf' }, 'room-leaf', end, floor, `Swing of ${named}`, null),
                turns: { about: metres(leaf.hinge), sense: leaf.sense },
              },
            ]
          : []),
      ];
    }),
    ...obstacles.flatMap((obstacle, index) => {
      const named = obstacle.name;
      const place = { of: 'obstacle', index } as const;
      const grip = obstacleGrip(room, obstacle.heightMm);
      return [
        handleAt({ ...place, does: 'middle', at: 0 }, 'room-middle', middleOf(obstacle), grip, named, null),
        ...(subject === `obstacle:${index}` ? sizesOf('obstacle', obstacle, index, grip) : []),
      ];
    }),
    ...baseboards.flatMap((board, index) => {
      const outline = fromRectangle(board);
      const top = boardTop(scene, board.topMm);
      const named = `board ${index + 1}`;
      const middle = { xMm: board.xMm + board.lengthMm / 2, yMm: board.yMm + board.widthMm / 2 };
      return [
        handleAt({ of: 'board', index, does: 'middle', at: 0 }, 'room-middle', middle, top, `Board ${index + 1}`, null),
        ...(subject === `board:${index}` ? rectangleSizes('board', index, outline, top, named) : []),
      ];
    }),
    ...standing,
  ];
}

/** A bridge, a pier, a building: its middle at its top, and what sizes it while it is chosen. */
function structureHandles(structure: SceneStructure, index: number, subject: RoomSubject | null): RoomHandle[] {
  const { name, outline, topMm } = structure;
  const middle = { of: 'structure', index, does: 'middle', at: 0 } as const;
  return [
    handleAt(middle, 'room-middle', middleOf({ name, outline }), topMm / 1000, name, null),
    ...(subject === `structure:${index}` ? sizesOf('structure', { name, outline }, index, topMm / 1000) : []),
  ];
}

function wallHandles(
  corners: readonly SceneCorner[],
  floor: number,
  chosen: string | null,
  all: boolean,
): RoomHandle[] {
  const count = corners.length;
  const left = twiceArea(corners) >= 0 ? 1 : -1;
  // Walls that a chosen corner or wall touches can have another corner.
  const [, of, index] = (chosen ?? '').split(':');
  const beside = (wall: number): boolean =>
    of === 'corner' ? wall === Number(index) || (wall + 1) % count === Number(index) : wall === Number(index);
  return corners.flatMap((corner, at): RoomHandle[] => {
    const next = corners[(at + 1) % count];
    const along = (share: number): SceneCorner => ({
      xMm: corner.xMm + share * (next.xMm - corner.xMm),
      yMm: corner.yMm + share * (next.yMm - corner.yMm),
    });
    const size = Math.hypot(next.xMm - corner.xMm, next.yMm - corner.yMm);
    const out = [(left * (next.yMm - corner.yMm)) / size, (left * (corner.xMm - next.xMm)) / size] as const;
    return [
      handleAt({ of: 'corner', index: at }, 'room-corner', corner, floor, `Corner ${at + 1} of the room`, null),
      ...(all ? [handleAt({ of: 'wall', index: at }, 'room-side', along(0.5), floor, `Wall ${at + 1}`, out)] : []),
      ...(chosen !== null && beside(at)
        ? [
            handleAt(
              { of: 'split', index: at },
              'room-split',
              along(splitAt),
              floor,
              `Another corner in wall ${at + 1}`,
              null,
            ),
          ]
        : []),
    ];
  });
}

/** What sizes something that stands in the room: its sides and corners, or how far it goes across. */
function sizesOf(of: 'obstacle' | 'structure', thing: SceneObstacle, index: number, z: number): RoomHandle[] {
  const { name, outline = [], round } = thing;
  if (round !== undefined) {
    const edge = { xMm: round.xMm + round.diameterMm / 2, yMm: round.yMm };
    const part = { of, index, does: 'across', at: 0 } as const;
    return [handleAt(part, 'room-side', edge, z, `Size of ${name}`, [1, 0])];
  }
  const rectangle = asRectangle(outline);
  if (rectangle !== null) return rectangleSizes(of, index, fromRectangle(rectangle), z, name);
  return outline.map((corner, at) =>
    handleAt({ of, index, does: 'corner', at }, 'room-corner', corner, z, `Corner ${at + 1} of ${name}`, null),
  );
}

function rectangleSizes(
  of: 'obstacle' | 'board' | 'structure',
  index: number,
  outline: readonly SceneCorner[],
  z: number,
  named: string,
): RoomHandle[] {
  const outwards = [
    [0, -1],
    [1, 0],
    [0, 1],
    [-1, 0],
  ] as const;
  return outline.flatMap((corner, at) => {
    const next = outline[(at + 1) % outline.length];
    const middle = { xMm: (corner.xMm + next.xMm) / 2, yMm: (corner.yMm + next.yMm) / 2 };
    return [
      handleAt(
        { of, index, does: 'corner', at },
        'room-corner',
        corner,
        z,
        `${cornerNames[at]} corner of ${named}`,
        null,
      ),
      handleAt(
        { of, index, does: 'side', at },
        'room-side',
        middle,
        z,
        `${sideNames[at]} side of ${named}`,
        outwards[at],
      ),
    ];
  });
}

/** The middle of the rectangle that something just fits into, mm. */
function middleOf(obstacle: SceneObstacle): SceneCorner {
  const [low, high] = extentOfObstacle(obstacle);
  return { xMm: (low.xMm + high.xMm) / 2, yMm: (low.yMm + high.yMm) / 2 };
}

const metres = ({ xMm, yMm }: SceneCorner): Place => [xMm / 1000, yMm / 1000];

function handleAt(
  part: RoomPart,
  kind: HandleKind,
  at: SceneCorner,
  z: number,
  name: string,
  grows: Place | null,
): RoomHandle {
  const [x, y] = metres(at);
  return { key: roomKey(part), part, kind, element: part.index, place: [x, y, z], anchor: [x, y], grows, name };
}
