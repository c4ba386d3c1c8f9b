import { describe, expect, it } from 'vitest';
import { changeRoom, isInside, parseScene, type SceneRoom, standingEdges } from '../../../src/scene/index.ts';
import { sample, sampleWith } from '../sample.ts';

/** A room of 4 by 3 m. */
const corners = [
  { xMm: 0, yMm: 0 },
  { xMm: 4000, yMm: 0 },
  { xMm: 4000, yMm: 3000 },
  { xMm: 0, yMm: 3000 },
];
const door = { wall: 2, fromMm: 200, widthMm: 800, hinge: 'near', opens: 'inwards' } as const;
const room = (more: object) => sampleWith('room', { datumAboveFloorMm: 1000, ...more });

function refusal(source: unknown): { path: string; found: string; allowed: string } {
  const parsed = parseScene(source);
  if (parsed.ok) throw new Error('accepted');
  expect(parsed.problems).toHaveLength(1);
  return parsed.problems[0];
}

describe('a room', () => {
  it('may have walls, doors, what stands in the way, boards, and a person', () => {
    const parsed = parseScene(
      room({
        corners,
        doors: [door, { ...door, fromMm: 1000, opens: 'outwards', swingDeg: 110 }],
        obstacles: [{ name: 'Boiler', outline: corners.map(({ xMm, yMm }) => ({ xMm: xMm / 10, yMm: yMm / 10 })) }],
        baseboards: [{ xMm: 100, yMm: 100, lengthMm: 3000, widthMm: 700 }],
        person: { reachMm: 700, eyeMm: 1550 },
      }),
    );
    expect(parsed.ok ? [] : parsed.problems).toEqual([]);
  });

  it('may have round obstacles, in which nobody stands; an obstacle is round or has corners', () => {
    const board = { xMm: 1000, yMm: 1000, lengthMm: 1000, widthMm: 500 };
    // Over the middle of the south edge, 600 across: nobody stands there within 300 mm of its middle.
    const round = { xMm: 1500, yMm: 900, diameterMm: 600 };
    const edges = standingEdges({ datumAboveFloorMm: 0, obstacles: [{ name: 'Post', round }], baseboards: [board] });
    const south = (edges ?? []).filter(({ yMm }) => yMm === 1000).map(({ xMm }) => Math.abs(xMm - 1500));
    expect(Math.min(...south)).toBeGreaterThan(280);
    expect(Math.min(...south)).toBeLessThan(320);
    expect(parseScene(room({ obstacles: [{ name: 'Post', round }] })).ok).toBe(true);
    expect(refusal(room({ obstacles: [{ name: 'Post' }] })).allowed).toBe('either outline or round');
    expect(refusal(room({ obstacles: [{ name: 'Post', round, outline: corners }] })).path).toBe('room.obstacles[0]');
  });

  it('may have corners that lie in line, and walls that turn back round one another', () => {
    const alcove = [corners[0], { xMm: 2000, yMm: 0 }, corners[1], corners[2], { xMm: 2000, yMm: 1500 }, corners[3]];
    expect(parseScene(room({ corners: alcove })).ok).toBe(true);
  });

  it.each([
    ['corners that cross', { corners: [corners[0], corners[2], corners[1], corners[3]] }, 'room.corners', 'that cross'],
    ['a corner twice', { corners: [corners[0], corners[0], corners[1], corners[2]] }, 'room.corners', 'corner 1 twice'],
    [
      'a wall that folds back',
      { corners: [corners[0], corners[1], { xMm: 1000, yMm: 0 }, corners[2]] },
      'room.corners',
      'folds back at corner 2',
    ],
    ['a door without walls', { doors: [door] }, 'room.doors[0].wall', 'wall 2'],
    ['a door in no wall', { corners, doors: [{ ...door, wall: 5 }] }, 'room.doors[0].wall', 'wall 5'],
    ['a door wider than its wall', { corners, doors: [{ ...door, fromMm: 2300 }] }, 'room.doors[0].fromMm', '3100 mm'],
    [
      'doors over each other',
      { corners, doors: [door, { ...door, fromMm: 900 }] },
      'room.doors[1].fromMm',
      'overlaps door 1',
    ],
    [
      'an obstacle that crosses itself',
      { obstacles: [{ name: 'Pillar', outline: [corners[0], corners[2], corners[1], corners[3]] }] },
      'room.obstacles[0].outline',
      'that cross',
    ],
  ])('with %s is refused', (_, more, path, found) => {
    const problem = refusal(room(more));
    expect(problem.path).toBe(path);
    expect(problem.found).toContain(found);
  });

  it('keeps its other parts when one changes, and loses a door with its wall', () => {
    const parsed = parseScene(room({ corners, doors: [door, { ...door, wall: 4 }], person: { reachMm: 700 } }));
    if (!parsed.ok) throw new Error('refused');
    const changed = changeRoom(parsed.scene, { corners: corners.slice(0, 3) });
    expect(changed.room).toEqual({
      datumAboveFloorMm: 1000,
      corners: corners.slice(0, 3),
      doors: [door],
      person: { reachMm: 700 },
    });
    expect(changeRoom(changed, { corners: undefined, person: undefined }).room).toEqual({ datumAboveFloorMm: 1000 });
  });

  it('gets a floor with its first part where the file has none', () => {
    const parsed = parseScene(sample);
    if (!parsed.ok) throw new Error('refused');
    expect(changeRoom(parsed.scene, { corners }).room).toEqual({ datumAboveFloorMm: 950, corners });
  });
});

describe('inside', () => {
  const notched = [...corners.slice(0, 3), { xMm: 2000, yMm: 3000 }, { xMm: 2000, yMm: 1000 }, { xMm: 0, yMm: 1000 }];
  it.each([
    [1000, 500, true],
    [3000, 2500, true],
    [1000, 2500, false],
    [-1, 500, false],
    [5000, 1000, false],
  ])('a room with a corner cut out: %i, %i: %s', (xMm, yMm, inside) => {
    expect(isInside({ xMm, yMm }, notched)).toBe(inside);
  });
});

describe('where a person can stand', () => {
  const board = { xMm: 0, yMm: 0, lengthMm: 3000, widthMm: 800 };
  const sides = (more: Partial<SceneRoom>) => {
    const places = standingEdges({ datumAboveFloorMm: 1000, baseboards: [board], ...more }) ?? [];
    return {
      south: places.some(({ yMm, xMm }) => yMm === 0 && xMm > 500 && xMm < 2500),
      north: places.some(({ yMm, xMm }) => yMm === 800 && xMm > 500 && xMm < 2500),
      west: places.some(({ xMm, yMm }) => xMm === 0 && yMm > 200 && yMm < 600),
      east: places.some(({ xMm, yMm }) => xMm === 3000 && yMm > 200 && yMm < 600),
    };
  };

  it('is all round a board that stands free', () => {
    expect(sides({})).toEqual({ south: true, north: true, west: true, east: true });
  });

  it('is not behind it where it stands in a corner of the room', () => {
    expect(sides({ corners })).toEqual({ south: false, north: true, west: false, east: true });
  });

  it('is not in a gap that no person fits into, nor where a pillar stands', () => {
    const other = { xMm: 0, yMm: 1000, lengthMm: 3000, widthMm: 500 };
    expect(sides({ corners, baseboards: [board, other] }).north).toBe(false);
    const pillar = [
      { xMm: 3050, yMm: -100 },
      { xMm: 3400, yMm: -100 },
      { xMm: 3400, yMm: 900 },
      { xMm: 3050, yMm: 900 },
    ];
    expect(sides({ corners, obstacles: [{ name: 'Pillar', outline: pillar }] }).east).toBe(false);
  });

  it('is not known without boards', () => {
    expect(standingEdges({ datumAboveFloorMm: 1000, corners })).toBeNull();
  });
});
