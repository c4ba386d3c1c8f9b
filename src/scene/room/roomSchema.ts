import { z } from 'zod';
import { bounds } from '../schema/bounds.ts';
import { either, maybe, named, oneOf, positiveMm, quantity, whole } from '../schema/fields.ts';
import { outlineOf } from '../schema/outlineSchema.ts';

const baseboard = z.strictObject({
  xMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'Corner nearest the west, mm.', 0),
  yMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'Corner nearest the south, mm.', 0),
  lengthMm: positiveMm(bounds.lengthMm, 'Size from west to east, mm.', 2400),
  widthMm: positiveMm(bounds.lengthMm, 'Size from south to north, mm.', 1400),
  topMm: maybe(quantity(-10_000, 10_000, 'Height of its top, mm; a deck below height 0 when left out.', -12)),
});

const door = z
  .strictObject({
    wall: whole(1, bounds.corners, 'The wall it is in: wall 1 runs from corner 1 to corner 2.', 1),
    fromMm: quantity(0, bounds.lengthMm, 'From the corner where that wall begins to the opening, mm.', 300),
    widthMm: positiveMm(5_000, 'Width of the opening, and of the leaf, mm.', 800),
    hinge: oneOf(['near', 'far'], 'Which jamb the leaf hangs on, seen from the corner where the wall begins.'),
    opens: oneOf(['inwards', 'outwards'], 'Into the room or out of it.'),
    swingDeg: maybe(quantity(5, 180, 'How far it opens, degrees; 90 when left out.', 90)),
  })
  .meta({
    description: 'A door in a wall of the room.',
    examples: [{ wall: 1, fromMm: 300, widthMm: 800, hinge: 'near', opens: 'inwards' }],
  });

const round = z
  .strictObject({
    xMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'Middle, east, mm.', 600),
    yMm: quantity(-bounds.lengthMm, bounds.lengthMm, 'Middle, north, mm.', 400),
    diameterMm: positiveMm(bounds.lengthMm, 'Across, mm.', 120),
  })
  .meta({ description: 'A circle in plan.', examples: [{ xMm: 600, yMm: 400, diameterMm: 120 }] });

const obstacle = either(
  z.strictObject({
    name: named('What people call it.', 'Chimney breast'),
    outline: maybe(outlineOf('Its corners in plan, one after the other round it.', 1200, 350)),
    round: maybe(round),
    heightMm: maybe(positiveMm(10_000, 'Its top above the floor, mm; up to the ceiling when left out.', 1400)),
  }),
  ['outline', 'round'],
).meta({
  description:
    'What stands on the floor and stays: a pillar, a boiler, a chimney breast. It has an outline, or is round.',
  examples: [
    {
      name: 'Boiler',
      outline: [
        { xMm: 0, yMm: 0 },
        { xMm: 450, yMm: 0 },
        { xMm: 450, yMm: 400 },
      ],
      heightMm: 1400,
    },
    { name: 'Post', round: { xMm: 600, yMm: 400, diameterMm: 120 } },
  ],
});

const person = z
  .strictObject({
    reachMm: maybe(positiveMm(2_000, 'How far in from the edge the hand works, mm.', 700)),
    eyeMm: maybe(quantity(300, 2_500, 'Height of the standing eye above the floor, mm; 1600 when left out.', 1600)),
  })
  .meta({ description: 'Who builds and runs it.', examples: [{ reachMm: 700, eyeMm: 1600 }] });

export const roomSchema = z
  .strictObject({
    datumAboveFloorMm: quantity(0, 5_000, 'Height 0 of the scene above the floor, mm.', 1000),
    corners: maybe(
      outlineOf('Corners of the floor, inside the walls, one after the other round the room.', 4200, 3000),
    ),
    doors: maybe(z.array(door).max(bounds.doors)),
    obstacles: maybe(z.array(obstacle).max(bounds.obstacles)),
    baseboards: maybe(
      z
        .array(baseboard)
        .max(bounds.baseboards)
        .meta({
          description: 'Boards that carry the railway; people stand around them.',
          examples: [[{ xMm: 0, yMm: 0, lengthMm: 2400, widthMm: 1400 }]],
        }),
    ),
    person: maybe(person),
  })
  .meta({
    description:
      'The room the railway stands in. No risk is computed from it: it is drawn, and tells what is out of reach.',
    examples: [{ datumAboveFloorMm: 1000 }],
  });

export type SceneRoom = z.infer<typeof roomSchema>;
export type SceneBaseboard = z.infer<typeof baseboard>;
export type SceneDoor = z.infer<typeof door>;
export type SceneObstacle = z.infer<typeof obstacle>;
/** A circle in plan, mm. */
export type SceneRound = z.infer<typeof round>;
