import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arc,
  chainEnd,
  compoundEasement,
  connectPoses,
  easedHelix,
  fillet,
  intersectionAlignment,
  makeTrack,
  type PlanElement,
  type Pose,
  reverseBend,
  straight,
  type Track,
  trackPoint,
} from '../../../../src/core/track/index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const origin: Pose = { x: 0, y: 0, heading: 0 };

const laid = (elements: readonly PlanElement[], start = origin): Track =>
  makeTrack({ start, elements, profile: { points: [{ chainage: 0, height: 0 }] } });

const turnsApart = (a: number, b: number): number => Math.abs(Math.sin((a - b) / 2));

function meets(end: Pose, x: number, y: number, heading: number): void {
  expect(Math.hypot(end.x - x, end.y - y)).toBeLessThan(1e-9);
  expect(turnsApart(end.heading, heading)).toBeLessThan(1e-9);
}

describe('a fillet', () => {
  it('rounds a right angle by an arc with tangents as long as its radius', () => {
    const corner = fillet({ radius: 0.6, easeIn: 0, easeOut: 0 }, Math.PI / 2);
    expect(corner).toMatchObject({ tangentIn: expect.closeTo(0.6, 14), tangentOut: expect.closeTo(0.6, 14) });
    expect(corner.external).toBeCloseTo(0.6 * (Math.SQRT2 - 1), 14);
    expect(corner.elements).toEqual([arc(0.6, Math.PI / 2)]);
  });

  it('starts on one line and ends on the other, tangent, without a jump of curvature', () => {
    const ease = between(0.05, 0.5);
    fc.assert(
      fc.property(
        between(0.3, 2),
        ease,
        ease,
        between(0.3, 2.9),
        fc.constantFrom(-1, 1),
        (radius, easeIn, easeOut, turn, way) => {
          const corner = fillet({ radius, easeIn, easeOut }, way * turn);
          fc.pre(corner.elements !== null);
          const elements = corner.elements ?? [];
          const end = chainEnd({ x: -corner.tangentIn, y: 0, heading: 0 }, elements);
          const heading = way * turn;
          meets(end, corner.tangentOut * Math.cos(heading), corner.tangentOut * Math.sin(heading), heading);
          expect(laid([straight(1), ...elements, straight(1)]).jumps).toEqual([]);
        },
      ),
    );
  });

  it('says by how much its easements overlap', () => {
    const corner = fillet({ radius: 0.5, easeIn: 0.3, easeOut: 0.2 }, -0.4);
    // They turn by 0.3 and 0.2.
    expect(corner.elements).toBeNull();
    expect(corner.arcAngle).toBeCloseTo(-0.1, 14);
    expect(() => fillet({ radius: 0.5, easeIn: 0, easeOut: 0 }, Math.PI)).toThrow(RangeError);
  });
});

describe('an alignment by intersection points', () => {
  const bend = { radius: 0.5, easeIn: 0.2, easeOut: 0.3 };

  it('goes through its first and last point along the legs', () => {
    const point = fc.tuple(between(-0.5, 0.5), between(-0.5, 0.5));
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 6 }), (offsets) => {
        const points = offsets.map(([dx, dy], i) => [2.5 * i + dx, dy] as const);
        const small = { radius: 0.4, easeIn: 0.05, easeOut: 0.03 };
        const alignment = intersectionAlignment(
          points,
          offsets.slice(2).map(() => small),
        );
        fc.pre(alignment.elements !== null);
        const end = chainEnd(alignment.start, alignment.elements ?? []);
        const [[x0, y0], [x1, y1]] = points.slice(-2);
        meets(end, x1, y1, Math.atan2(y1 - y0, x1 - x0));
        expect(laid(alignment.elements ?? [], alignment.start).jumps).toEqual([]);
      }),
    );
  });

  it('says which leg is too short and by how much', () => {
    const square = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ] as const;
    const plain = { radius: 0.6, easeIn: 0, easeOut: 0 };
    const alignment = intersectionAlignment(square, [plain, plain]);
    // Tangents of 0.6 m each on the middle leg of 1 m.
    expect(alignment.elements).toBeNull();
    expect(alignment.shortfalls).toEqual([{ where: 'leg', number: 2, missing: expect.closeTo(0.2, 12) }]);
  });

  it('says which corner turns less than its easements', () => {
    const { shortfalls } = intersectionAlignment(
      [
        [0, 0],
        [2, 0],
        [4, 0.4],
      ],
      [bend],
    );
    // 0.25 m over 0.5 m less atan 0.2.
    expect(shortfalls).toEqual([{ where: 'corner', number: 1, missing: expect.closeTo(0.5 - Math.atan(0.2), 12) }]);
  });

  it('goes straight on where nothing turns, and refuses what has no direction', () => {
    const through = intersectionAlignment(
      [
        [0, 0],
        [1, 0],
        [3, 0],
      ],
      [bend],
    );
    expect(through.elements).toEqual([straight(1), straight(2)]);
    expect(() =>
      intersectionAlignment(
        [
          [0, 0],
          [0, 0],
        ],
        [],
      ),
    ).toThrow(/coincide/);
    expect(() =>
      intersectionAlignment(
        [
          [0, 0],
          [1, 0],
        ],
        [bend],
      ),
    ).toThrow(/want 0 bends, not 1/);
    expect(() =>
      intersectionAlignment(
        [
          [0, 0],
          [1, 0],
          [0, 0],
        ],
        [bend],
      ),
    ).toThrow(RangeError);
  });
});

describe('a connection of two poses', () => {
  it('arrives exactly, shortest first, eased at every curve, whatever the poses', () => {
    const pose = fc.record({ x: between(-3, 3), y: between(-3, 3), heading: between(-3.1, 3.1) });
    fc.assert(
      fc.property(pose, pose, fc.constantFrom(0, 0.02, 0.2, 0.4), (from, to, easement) => {
        const ways = connectPoses(from, to, { radius: 0.5, easement, straight: 0.1 });
        ways.forEach((way, i) => {
          meets(chainEnd(from, way.elements), to.x, to.y, to.heading);
          if (i > 0) expect(way.length).toBeGreaterThanOrEqual(ways[i - 1].length);
          if (easement > 0) expect(laid(way.elements, from).jumps).toEqual([]);
        });
      }),
    );
  });

  it('far apart finds all four ways round, and the one bend where the lines meet ahead of both', () => {
    const ways = connectPoses(origin, { x: 4, y: 3, heading: 1.2 }, { radius: 0.5, easement: 0.2, straight: 0 });
    expect(ways.map((way) => way.kind).sort()).toEqual(['LSL', 'LSR', 'RSL', 'RSR', 'SLS']);
  });

  it('goes straight where that does, and half round a circle to come back beside', () => {
    const ahead = connectPoses(origin, { x: 1, y: 0, heading: 0 }, { radius: 0.5, easement: 0, straight: 0 });
    expect(ahead[0]).toEqual({ kind: 'S', elements: [straight(1)], length: 1 });
    const back = connectPoses(origin, { x: 0, y: 1, heading: Math.PI }, { radius: 0.5, easement: 0, straight: 0 });
    expect(back[0].kind).toBe('LSL');
    expect(back[0].length).toBeCloseTo(Math.PI / 2, 12);
  });

  it('finds nothing of two opposite bends where their circles overlap', () => {
    const ways = connectPoses(origin, { x: 0.3, y: 0.1, heading: 0 }, { radius: 0.5, easement: 0, straight: 0 });
    expect(ways.map((way) => way.kind)).not.toContain('LSR');
  });
});

describe('a reverse bend', () => {
  it('arrives beside its line, parallel, at the offset', () => {
    fc.assert(
      fc.property(
        between(0.01, 0.6),
        between(0.4, 2),
        between(0.01, 0.4),
        between(0, 0.3),
        (offset, radius, ease, middle) => {
          const bend = reverseBend(-offset, radius, ease, middle);
          meets(chainEnd(origin, bend.elements), bend.along, -offset, 0);
          expect(bend.radius).toBeGreaterThanOrEqual(radius * (1 - 1e-12));
          expect(laid([straight(1), ...bend.elements, straight(1)]).jumps).toEqual([]);
        },
      ),
    );
  });

  it('without easements turns by acos(1 - d/2R) and takes √(d(4R - d))', () => {
    const bend = reverseBend(0.05, 0.6, 0, 0);
    expect(bend.angle).toBeCloseTo(Math.acos(1 - 0.05 / 1.2), 12);
    expect(bend.along).toBeCloseTo(Math.sqrt(0.05 * (2.4 - 0.05)), 12);
  });

  it('of a small offset is gentler than asked for', () => {
    const bend = reverseBend(0.002, 0.6, 0.3, 0);
    expect(bend.radius).toBeGreaterThan(0.6);
    expect(bend.elements.every((element) => element.kind === 'transition')).toBe(true);
  });

  it('is refused when it would have to turn further than across', () => {
    expect(() => reverseBend(2, 0.5, 0, 0)).toThrow(/reaches 1.0000 m aside/);
    expect(() => reverseBend(0, 0.5, 0, 0)).toThrow(RangeError);
  });
});

describe('a compound easement', () => {
  /** Centre of the circle that touches a pose with this curvature. */
  const centre = ({ x, y, heading }: Pose, k: number) =>
    [x - Math.sin(heading) / k, y + Math.cos(heading) / k] as const;

  it('joins two circles that clear each other by the gap, either hand', () => {
    fc.assert(
      fc.property(
        between(0.4, 1),
        between(1.2, 3),
        between(0.0005, 0.01),
        fc.boolean(),
        (sharp, wide, gap, reversed) => {
          const [from, to] = [1 / wide, (reversed ? -1 : 1) / sharp];
          const element = compoundEasement(from, to, gap);
          const end = chainEnd(origin, [element]);
          const [a, b] = [centre(origin, from), centre(end, to)];
          const apart = Math.hypot(a[0] - b[0], a[1] - b[1]);
          const found = reversed ? apart - wide - sharp : wide - sharp - apart;
          expect(found).toBeCloseTo(gap, 10);
        },
      ),
    );
  });

  it('is near √(24·gap·R₁R₂/(R₁ - R₂)) long', () => {
    // Compound curves of route surveying: the spiral of the difference of curvatures; from memory.
    const element = compoundEasement(1 / 2, 1 / 0.8, 0.002);
    expect(element.length / Math.sqrt((24 * 0.002 * 1.6) / 1.2)).toBeCloseTo(1, 2);
  });

  it('does not exist between circles that cross or touch, nor from a straight', () => {
    expect(() => compoundEasement(1, 2, 0)).toThrow(/must be more than 0/);
    expect(() => compoundEasement(1, 2, -0.01)).toThrow(RangeError);
    expect(() => compoundEasement(0, 2, 0.01)).toThrow(RangeError);
    expect(() => compoundEasement(1, 2, 5)).toThrow(RangeError);
  });
});

describe('an eased helix', () => {
  it('turns by its turns in all and keeps its radius about its axis', () => {
    const { elements, axisAhead, axisAside } = easedHelix(0.6, -3.5, 0.36);
    const track = laid(elements);
    expect(trackPoint(track, track.length).heading).toBeCloseTo(-7 * Math.PI, 11);
    for (const s of [0.4, 3, 9]) {
      const { x, y } = trackPoint(track, s);
      expect(Math.hypot(x - axisAhead, y - axisAside)).toBeCloseTo(0.6, 12);
    }
    const end = trackPoint(track, track.length);
    // Half a turn and whole ones: back beside the start, past the axis by as much as the start was before it.
    expect(end.x).toBeCloseTo(0, 11);
    expect(end.y).toBeCloseTo(2 * axisAside, 11);
    expect(track.jumps).toEqual([]);
  });

  it('is refused when the easements alone turn further', () => {
    expect(() => easedHelix(0.5, 0.1, 0.4)).toThrow(/turn by 0.127 turns alone/);
  });
});
