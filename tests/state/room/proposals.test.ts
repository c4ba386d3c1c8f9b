import { describe, expect, it } from 'vitest';
import { changeRoom, parseScene, shapeScales, startingShapes, usualValues } from '../../../src/scene/index.ts';
import {
  asRectangle,
  fromRectangle,
  outOfReach,
  proposedBoard,
  proposedDoor,
  proposedPillar,
  proposedWalls,
  withCorner,
  withoutCorner,
} from '../../../src/state/room/index.ts';
import { draftTrack } from '../../../src/state/routeEdits/index.ts';

const room = {
  corners: fromRectangle({ xMm: 0, yMm: 0, lengthMm: 4000, widthMm: 3000 }),
  doors: [
    { wall: 1, fromMm: 2500, widthMm: 800, hinge: 'near', opens: 'inwards' },
    { wall: 3, fromMm: 100, widthMm: 800, hinge: 'near', opens: 'inwards' },
  ] as const,
};
const changeable = { corners: room.corners, doors: [...room.doors] };

describe('a room that is proposed around a railway', () => {
  it.each(startingShapes.map((shape) => [shape.id, shape] as const))(
    'holds the %s, and its scene is sound',
    (_, shape) => {
      const [scale] = shapeScales.filter(({ name }) => name === 'HO');
      const { scene } = shape.make(scale, usualValues(shape, scale));
      const withBoard = changeRoom(scene, { baseboards: [proposedBoard(scene)], person: { reachMm: 900 } });
      const walls = proposedWalls(withBoard);
      const whole = changeRoom(withBoard, {
        corners: walls,
        doors: [proposedDoor({ corners: walls })],
        obstacles: [proposedPillar({ corners: walls })],
      });
      const parsed = parseScene(whole);
      expect(parsed.ok ? [] : parsed.problems).toEqual([]);
      // There is an aisle all round: only the middle of a board can be out of reach.
      const [track] = scene.tracks;
      const line = draftTrack(whole, track.id);
      for (const { farthest } of (line && outOfReach(whole, line)) ?? []) expect(farthest).toBeLessThan(2);
    },
  );
});

describe('corners of a room', () => {
  it('are added halfway along a wall, and its doors stay where they are', () => {
    const { corners = [], doors = [] } = withCorner(changeable, 0);
    expect(corners[1]).toEqual({ xMm: 2000, yMm: 0 });
    expect(doors.map(({ wall, fromMm }) => [wall, fromMm])).toEqual([
      [2, 500],
      [4, 100],
    ]);
  });

  it('are taken out with the doors of their wall', () => {
    const { corners, doors = [] } = withoutCorner(changeable, 0);
    expect(corners).toHaveLength(3);
    expect(doors.map(({ wall }) => wall)).toEqual([2]);
  });
});

describe('an outline', () => {
  it('is a rectangle when it is square to the room, whichever corner comes first', () => {
    const of = { xMm: 10, yMm: 20, lengthMm: 300, widthMm: 400 };
    const outline = fromRectangle(of);
    expect(asRectangle(outline)).toEqual(of);
    expect(asRectangle([...outline.slice(2), ...outline.slice(0, 2)].toReversed())).toEqual(of);
    expect(asRectangle(outline.with(0, { xMm: 0, yMm: 20 }))).toBeNull();
    expect(asRectangle(outline.slice(1))).toBeNull();
  });
});
