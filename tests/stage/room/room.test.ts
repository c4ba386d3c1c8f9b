import { describe, expect, it } from 'vitest';
import { portalStructures, wallStructures } from '../../../src/core/risks/index.ts';
import { strokeCount } from '../../../src/stage/ink/strokes.ts';
import { drawnRoom } from '../../../src/stage/room/drawnRoom.ts';
import { roomSolid } from '../../../src/stage/room/roomModel.ts';
import { drawStructures } from '../../../src/stage/room/structureSolid.ts';
import { emptySolid, type Solid } from '../../../src/stage/solid/solid.ts';
import { levelCircle } from '../samples.ts';

/** A room of 4 by 3 m, counter-clockwise, its first wall to the south. */
const corners = [
  { xMm: 0, yMm: 0 },
  { xMm: 4000, yMm: 0 },
  { xMm: 4000, yMm: 3000 },
  { xMm: 0, yMm: 3000 },
];
const door = { wall: 1, fromMm: 500, widthMm: 800, hinge: 'near', opens: 'inwards' } as const;
const pen = { weight: 1, role: 0 };

/** Where the leaf of the only door stands open, m from its hinge. */
function openLeaf(file: Parameters<typeof drawnRoom>[0]): {
  readonly hinge: readonly number[];
  readonly leaf: number[];
} {
  const [{ hinge, closed, swing, from, to }] = drawnRoom(file).doors;
  return {
    hinge,
    leaf: [(to - from) * Math.cos(closed + swing), (to - from) * Math.sin(closed + swing)].map(
      (metres) => Math.round(metres * 1e6) / 1e6,
    ),
  };
}

describe('a door', () => {
  it.each([
    ['near', 'inwards', [0.5, 0], [0, 0.8]],
    ['near', 'outwards', [0.5, 0], [0, -0.8]],
    ['far', 'inwards', [1.3, 0], [0, 0.8]],
    ['far', 'outwards', [1.3, 0], [0, -0.8]],
  ] as const)('on its %s jamb opens %s', (hinge, opens, place, leaf) => {
    const open = openLeaf({ corners, doors: [{ ...door, hinge, opens }] });
    expect(open.hinge).toEqual(place);
    expect(open.leaf.map((metres) => metres + 0)).toEqual(leaf);
  });

  it('opens into the same room when the file goes round it the other way', () => {
    // Reversed, the south wall runs from (4, 0) to (0, 0) as wall 3: the door is 2.7 m along it.
    const open = openLeaf({
      corners: corners.toReversed(),
      doors: [{ ...door, wall: 3, fromMm: 2700, hinge: 'far' }],
    });
    expect(open.hinge[0]).toBeCloseTo(0.5, 9);
    expect(open.leaf).toEqual([0, 0.8]);
  });

  it('leaves a gap in the wall it is in, whichever way round the file goes', () => {
    for (const file of [
      { corners, doors: [door] },
      { corners: corners.toReversed(), doors: [{ ...door, wall: 3, fromMm: 2700 }] },
    ]) {
      const { corners: round, doors } = drawnRoom(file);
      const [{ wall, from, to }] = doors;
      const [a, b] = [round[wall], round[(wall + 1) % 4]];
      const places = [from, to].map((at) => a[0] + (at / 4) * (b[0] - a[0])).sort();
      expect(places[0]).toBeCloseTo(0.5, 9);
      expect(places[1]).toBeCloseTo(1.3, 9);
      expect([a[1], b[1]]).toEqual([0, 0]);
    }
  });
});

/** Volume inside the faces of a closed solid, m³, by the divergence of position. */
function volume({ position, index }: Solid): number {
  let six = 0;
  for (let i = 0; i < index.length; i += 3) {
    const [a, b, c] = [index[i], index[i + 1], index[i + 2]].map((k) => position.slice(3 * k, 3 * k + 3));
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

describe('what stands in the room', () => {
  const tables = [{ x: [0, 1] as const, y: [0, 1] as const, top: -0.02, thickness: 0.045 }];
  const pillar = { outline: corners.map(({ xMm, yMm }) => ({ xMm: xMm / 10, yMm: yMm / 10 })).toReversed() };

  it('is as large as in the file, from the floor up', () => {
    const boiler = drawnRoom({ obstacles: [{ ...pillar, heightMm: 1400 }] });
    expect(volume(roomSolid({ room: boiler, floor: -1, tables }))).toBeCloseTo(0.4 * 0.3 * 1.4, 9);
  });

  it('is cut off a little over the boards where it goes up to the ceiling', () => {
    const room = drawnRoom({ obstacles: [pillar] });
    expect(volume(roomSolid({ room, floor: -1, tables }))).toBeCloseTo(0.4 * 0.3 * (-0.02 + 0.3 + 1), 9);
  });

  it('has walls on the outside of its corners only', () => {
    const { position } = roomSolid({ room: drawnRoom({ corners, doors: [door] }), floor: -1, tables });
    for (let i = 0; i < position.length; i += 3) {
      const [x, y, z] = position.slice(i, i + 3);
      expect(x > 1e-9 && x < 4 - 1e-9 && y > 1e-9 && y < 3 - 1e-9).toBe(false);
      expect(z).toBeGreaterThanOrEqual(-1);
      expect(z).toBeLessThanOrEqual(-0.8);
    }
    expect(roomSolid({ room: drawnRoom({}), floor: -1, tables }).position).toEqual([]);
  });
});

describe('structures', () => {
  const track = levelCircle();

  it('are drawn without a line or a face between the pieces of one wall', () => {
    const wall = { name: 'Wall', from: 0.2, to: 0.5, side: 1, distance: 0.03, height: 0.02, thickness: 0.01 } as const;
    const pieces = wallStructures(track, wall);
    expect(pieces.length).toBe(30);
    const solid = emptySolid();
    drawStructures(solid, pieces, pen);
    // Four long edges a piece, and at either end the two across and the two upright.
    expect(strokeCount(solid.strokes)).toBe(4 * 30 + 2 * 4);
    // On the left of a left curve of 600 mm the wall runs from 570 to 560 mm, 20 mm high over the rail and 10 mm below it.
    expect(volume(solid)).toBeCloseTo(((0.57 ** 2 - 0.56 ** 2) / 2) * (0.3 / 0.6) * 0.03, 8);
  });

  it('keep all faces of a portal: its lintel is no piece of its walls', () => {
    const portal = { name: 'Mouth', chainage: 1, width: 0.06, height: 0.06, depth: 0.02, thickness: 0.01, offset: 0 };
    const solid = emptySolid();
    drawStructures(solid, portalStructures(track, portal), pen);
    expect(strokeCount(solid.strokes)).toBe(3 * 12);
    // Two walls of 10 by 20 by 80 mm and a lintel of 60 by 20 by 10 mm.
    expect(volume(solid)).toBeCloseTo(2 * 0.01 * 0.02 * 0.08 + 0.06 * 0.02 * 0.01, 9);
  });
});
