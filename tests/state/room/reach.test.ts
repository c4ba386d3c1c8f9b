import { describe, expect, it } from 'vitest';
import { type SceneRoom, shapeScales, startingShapes } from '../../../src/scene/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { outOfReach } from '../../../src/state/room/index.ts';

/** Stretches out of reach along a straight of 3 m, 400 mm in from the south edge of a board 3.4 m long and 1.2 m wide. */
function stretches(room: Partial<SceneRoom>) {
  const shape = startingShapes.find(({ id }) => id === 'empty-room');
  const scale = shapeScales.find(({ name }) => name === 'HO');
  if (shape === undefined || scale === undefined) throw new Error('no shape');
  const { scene: empty } = shape.make(scale, { lengthMm: 3000 });
  // Its line begins at 300, 300 mm and runs east.
  const board = { xMm: 100, yMm: -100, lengthMm: 3400, widthMm: 1200 };
  const scene = { ...empty, room: { datumAboveFloorMm: 1000, baseboards: [board], ...room } };
  const line = compileScene(scene).tracks.get('line');
  if (line === undefined) throw new Error('no line');
  return outOfReach(scene, line);
}

const walls = (south: number) => [
  { xMm: 100, yMm: south },
  { xMm: 5000, yMm: south },
  { xMm: 5000, yMm: 3000 },
  { xMm: 100, yMm: 3000 },
];

describe('what is out of reach', () => {
  it('is nothing where one can stand 400 mm away', () => {
    expect(stretches({ person: { reachMm: 700 } })).toEqual([]);
    expect(stretches({ person: { reachMm: 390 } })?.length).toBe(1);
  });

  it('is all that lies further from the aisle when the board stands against a wall', () => {
    // From the north edge it is 800 mm. From the east end of the board, 200 mm beyond that of the track, 700 mm reach back over 500 mm of it.
    const [stretch, ...more] = stretches({ person: { reachMm: 700 }, corners: walls(-100) }) ?? [];
    expect(more).toEqual([]);
    expect(stretch.from).toBe(0);
    expect(stretch.to).toBeGreaterThan(2.4);
    expect(stretch.to).toBeLessThanOrEqual(2.5);
    expect(stretch.farthest).toBeCloseTo(0.8, 3);
  });

  it('is not known without a reach, or without boards', () => {
    expect(stretches({})).toBeNull();
    expect(stretches({ person: { eyeMm: 1600 } })).toBeNull();
    expect(stretches({ person: { reachMm: 700 }, baseboards: [] })).toBeNull();
  });
});
