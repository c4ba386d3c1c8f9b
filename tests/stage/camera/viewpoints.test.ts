import { describe, expect, it } from 'vitest';
import { dot, subtract, type Vec3 } from '../../../src/core/math/vec3.ts';
import { project } from '../../../src/stage/camera/framing.ts';
import { eyeOf, lookBetween } from '../../../src/stage/camera/look.ts';
import {
  atEyeHeight,
  atPlace,
  inCab,
  onCoupling,
  straightDown,
  wholeRailway,
} from '../../../src/stage/camera/viewpoints.ts';
import { betweenHeads } from '../../../src/stage/lens/jointSubject.ts';
import type { Railway } from '../../../src/stage/railway.ts';
import { drawnRoom } from '../../../src/stage/room/drawnRoom.ts';
import { tableTops } from '../../../src/stage/table/tableTop.ts';
import { bufferedWagon, fallingHelix, measures, standing, windingTrack } from '../samples.ts';

const helix = fallingHelix();
const tables = tableTops([helix], measures, []);
const railway: Railway = {
  name: 'Sample',
  scale: 'H0',
  measures,
  tracks: [helix],
  tables,
  floor: tables[0].top - 0.9,
  eye: 1.52,
  room: drawnRoom({}),
  structures: [],
};
const insets = { left: 0.05, right: 0.05, top: 0.1, bottom: 0.1 };

const ring: Vec3[] = Array.from(
  { length: 40 },
  (_, i): Vec3 => [0.6 * Math.cos(i), 0.6 + 0.6 * Math.sin(i), 0.08 + i / 200],
);

describe('the first picture', () => {
  it('shows the side that something happens on', () => {
    const place: Vec3 = [0, 0, 0.2];
    const look = wholeRailway(ring, 1.9, insets, place);
    // The eye is nearer to that place than to the far side of the helix.
    const eye = eyeOf(look);
    expect(Math.hypot(...subtract(eye, place))).toBeLessThan(Math.hypot(...subtract(eye, [0, 1.2, 0.2])));
  });
});

describe('atPlace', () => {
  const from = lookBetween([0, -4, 1], [0, 0.6, 0.2], 0.42);

  it('looks at a curve from its outside', () => {
    // Heading east on a left curve about (0, 0.6): outside is to the south.
    const look = atPlace([0, 0, 0.1], 0, 1 / 0.6, from, 0.5);
    expect(eyeOf(look)[1]).toBeLessThan(0);
    expect(look.target).toEqual([0, 0, 0.1]);
    expect(look.height).toBe(0.5);
  });

  it('stays on its own side of straight track', () => {
    expect(eyeOf(atPlace([0, 0, 0.1], 0, 0, from, 0.5))[1]).toBeLessThan(0);
    const other = lookBetween([0, 4, 1], [0, 0, 0.2], 0.42);
    expect(eyeOf(atPlace([0, 0, 0.1], 0, 0, other, 0.5))[1]).toBeGreaterThan(0);
  });
});

describe('atEyeHeight', () => {
  it.each([0, 1, 2.5, 4, 5.5])(
    'stands beside the table with the eye as high above the floor as the person is, at %d rad',
    (azimuth) => {
      const [x, y, z] = eyeOf(atEyeHeight(railway, [0.2, 0.3, 0.1], azimuth));
      expect(z - railway.floor).toBeCloseTo(1.52, 9);
      const [table] = tables;
      const inside = x > table.x[0] && x < table.x[1] && y > table.y[0] && y < table.y[1];
      expect(inside).toBe(false);
    },
  );
});

describe('straightDown', () => {
  it('has east to the right and north up', () => {
    const look = straightDown(ring, 1.9, insets);
    const [x0, y0] = project([0, 0.6, 0.1], look);
    expect(project([0.3, 0.6, 0.1], look)[0]).toBeGreaterThan(x0);
    expect(project([0, 0.9, 0.1], look)[1]).toBeGreaterThan(y0);
  });
});

describe('riding', () => {
  const track = windingTrack();
  const vehicles = [bufferedWagon(), bufferedWagon(), bufferedWagon()];
  const placements = standing(track, vehicles, 1.3);

  it('in the cab looks ahead from the front of the first vehicle', () => {
    const eye = eyeOf(inCab(vehicles[0], placements[0]));
    const ahead = dot(subtract(eye, placements[0].origin), placements[0].ahead);
    expect(ahead).toBeGreaterThan(0.04);
    expect(ahead).toBeLessThan(0.05);
  });

  it('on a coupling sits outside the train and looks forward past the joint', () => {
    const subject = {
      leading: vehicles[0],
      trailing: vehicles[1],
      placedLeading: placements[0],
      placedTrailing: placements[1],
    };
    const joint = betweenHeads(subject);
    const look = onCoupling(joint, vehicles[1], placements[1], 1);
    const eye = eyeOf(look);
    expect(dot(subtract(eye, joint), placements[1].left)).toBeGreaterThan(vehicles[1].bodyWidth / 2);
    expect(dot(subtract(look.target, eye), placements[1].ahead)).toBeGreaterThan(0);
    expect(dot(subtract(joint, eye), placements[1].ahead)).toBeGreaterThan(0);
  });
});
