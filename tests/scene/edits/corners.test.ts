import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import {
  cornerPlace,
  extendToPose,
  extendTrack,
  moveCorner,
  moveEnd,
  type Scene,
  setBend,
} from '../../../src/scene/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { sample, sceneOf } from '../sample.ts';

const { startMm: _start, finishMm: _finish, ...freeTrial } = sample.trials[0];

const laid = (alignment: readonly unknown[], headingDeg = 0): Scene =>
  sceneOf({
    ...sample,
    tracks: [
      {
        ...sample.tracks[0],
        start: { xMm: 200, yMm: 100, headingDeg },
        alignment,
        profile: [{ atMm: 0, heightMm: 0 }],
        stripJoints: [],
      },
    ],
    trials: [freeTrial],
  });

/** Two bends of 600 mm, the first eased by 300 mm, the second by 200 mm on its far side only. */
const zigzag = (): Scene =>
  laid([
    { kind: 'straight', id: 'a', lengthMm: 1500 },
    { kind: 'transition', lengthMm: 300 },
    { kind: 'arc', id: 'p', radiusMm: 600, turn: 'left', angleDeg: 40 },
    { kind: 'transition', lengthMm: 300 },
    { kind: 'straight', id: 'b', lengthMm: 900 },
    { kind: 'arc', id: 'q', radiusMm: 600, turn: 'right', angleDeg: 60 },
    { kind: 'transition', lengthMm: 200 },
    { kind: 'straight', id: 'c', lengthMm: 1200 },
  ]);

function ends(scene: Scene) {
  const track = compileScene(scene).tracks.get('line');
  if (track === undefined) throw new Error('no track');
  for (const { position, heading } of track.jumps) {
    expect(Math.abs(position) + Math.abs(heading)).toBeLessThan(1e-12);
  }
  return { from: trackPoint(track, 0), to: trackPoint(track, track.length), track };
}

const corner = (scene: Scene, arc: number) =>
  cornerPlace(scene, scene.tracks[0], arc) ?? { xMm: Number.NaN, yMm: Number.NaN };

describe('a corner', () => {
  it('of a right angle lies where the straights meet', () => {
    // 1000 mm straight and a quarter of 500 mm: they meet 500 mm further on.
    const scene = laid([
      { kind: 'straight', lengthMm: 1000 },
      { kind: 'arc', radiusMm: 500, turn: 'left', angleDeg: 90 },
      { kind: 'straight', lengthMm: 1000 },
    ]);
    expect(corner(scene, 1).xMm).toBeCloseTo(1700, 9);
    expect(corner(scene, 1).yMm).toBeCloseTo(100, 9);
  });

  it('goes where it is moved to; the other corners and both ends stay, and all stays tangent', () => {
    const before = zigzag();
    const [p, q] = [corner(before, 2), corner(before, 5)];
    const { from, to } = ends(before);
    fc.assert(
      fc.property(fc.integer({ min: -250, max: 250 }), fc.integer({ min: -250, max: 250 }), (dx, dy) => {
        const after = moveCorner(before, 'line', 2, { xMm: p.xMm + dx, yMm: p.yMm + dy });
        expect(corner(after, 2).xMm).toBeCloseTo(p.xMm + dx, 5);
        expect(corner(after, 2).yMm).toBeCloseTo(p.yMm + dy, 5);
        expect(corner(after, 5).xMm).toBeCloseTo(q.xMm, 5);
        const now = ends(after);
        expect([now.from.x, now.from.y]).toEqual([from.x, from.y]);
        // A micrometre: lengths and angles of the file to a billionth of a mm and a degree, over 6 m.
        expect(Math.hypot(now.to.x - to.x, now.to.y - to.y)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('behind a helix moves along its first straight only', () => {
    const before = laid([
      { kind: 'helix', radiusMm: 700, turn: 'left', turns: 1.25 },
      { kind: 'straight', lengthMm: 1000 },
      { kind: 'arc', radiusMm: 500, turn: 'left', angleDeg: 90 },
      { kind: 'straight', lengthMm: 1000 },
    ]);
    const place = corner(before, 2);
    const after = moveCorner(before, 'line', 2, { xMm: place.xMm + 77, yMm: place.yMm + 100 });
    // After a turn and a quarter the straight runs north.
    expect(corner(after, 2).xMm).toBeCloseTo(place.xMm, 6);
    expect(corner(after, 2).yMm).toBeCloseTo(place.yMm + 100, 6);
  });

  it('says what is short, and by how much', () => {
    const before = zigzag();
    const p = corner(before, 2);
    expect(() => moveCorner(before, 'line', 2, { xMm: p.xMm + 1100, yMm: p.yMm + 600 })).toThrow(
      /^b is \d+(\.\d)? mm too short for its bends/,
    );
    // Almost on the line from the start to the next corner hardly anything turns.
    const q = corner(before, 5);
    const between = { xMm: (200 + q.xMm) / 2, yMm: (100 + q.yMm) / 2 - 20 };
    expect(() => moveCorner(before, 'line', 2, between)).toThrow(/The easements of p turn \d+(\.\d)?° further/);
    expect(() => moveCorner(laid([{ kind: 'straight', lengthMm: 3000 }]), 'line', 0, p)).toThrow(/no bend between/);
  });
});

describe('a bend between straights', () => {
  it('takes another radius and easements with everything beyond it unmoved', () => {
    const before = zigzag();
    const { to } = ends(before);
    for (const change of [{ radiusMm: 520 }, { radiusMm: 690, easeInMm: 240 }, { easeOutMm: 420 }]) {
      const now = ends(setBend(before, 'line', 2, change));
      expect(Math.hypot(now.to.x - to.x, now.to.y - to.y)).toBeLessThan(1e-6);
      expect(now.to.heading).toBeCloseTo(to.heading, 9);
    }
    expect(() => setBend(before, 'line', 2, { radiusMm: 2400 })).toThrow(/too short for its bends|turn .* further/);
  });
});

describe('the end of a track', () => {
  it('reaches the place it is moved to: bend and straight follow, the start stays', () => {
    const before = zigzag();
    const { to } = ends(before);
    fc.assert(
      fc.property(fc.integer({ min: -300, max: 400 }), fc.integer({ min: -300, max: 300 }), (dx, dy) => {
        const goal = { xMm: to.x * 1000 + dx, yMm: to.y * 1000 + dy };
        const now = ends(moveEnd(before, 'line', goal));
        expect(Math.hypot(now.to.x - goal.xMm / 1000, now.to.y - goal.yMm / 1000)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('on a lone straight only stretches it', () => {
    const now = moveEnd(laid([{ kind: 'straight', lengthMm: 3000 }]), 'line', { xMm: 4000, yMm: 900 });
    expect(now.tracks[0].alignment).toEqual([{ kind: 'straight', lengthMm: 3800 }]);
  });

  it('inside the bend cannot be met, by so much', () => {
    const scene = laid([
      { kind: 'straight', lengthMm: 2000 },
      { kind: 'arc', radiusMm: 800, turn: 'left', angleDeg: 90 },
      { kind: 'straight', lengthMm: 1000 },
    ]);
    // The centre of the bend is 800 mm left of where it begins.
    expect(() => moveEnd(scene, 'line', { xMm: 2200, yMm: 500 })).toThrow(/lies 400 mm inside the bend of 800 mm/);
  });
});

describe('new track', () => {
  const begun = () => laid([{ kind: 'straight', lengthMm: 1500 }]);
  const bend = { radiusMm: 600, easeMm: 200 };

  it('goes straight on near the direction of the end, and bends to what lies aside', () => {
    const straight = extendTrack(begun(), 'line', { xMm: 2700, yMm: 120 }, bend, 5);
    expect(straight.tracks[0].alignment).toEqual([{ kind: 'straight', lengthMm: 2500 }]);
    fc.assert(
      fc.property(fc.integer({ min: -160, max: 160 }), fc.integer({ min: 1600, max: 4000 }), (deg, far) => {
        fc.pre(Math.abs(deg) > 25);
        const angle = (deg * Math.PI) / 180;
        const goal = { xMm: 1700 + far * Math.cos(angle), yMm: 100 + far * Math.sin(angle) };
        const now = ends(extendTrack(begun(), 'line', goal, bend, 5));
        expect(Math.hypot(now.to.x - goal.xMm / 1000, now.to.y - goal.yMm / 1000)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('says what an easement out of the bend is short of', () => {
    // Clothoids of 400 mm on 600 mm: the bend touches its straights 200 mm behind their ends, 400²/(24·600) = 11.1 mm further out, both to 0.7 mm, which the obtuse tangent makes 3. A goal 150 mm
    // along the tangent is 50 mm short, and a straight has some length of its own.
    const middle = [1900, 711.1] as const;
    const away = Math.hypot(611.1, 150);
    const goal = { xMm: middle[0] + away * Math.cos(-0.2), yMm: middle[1] + away * Math.sin(-0.2) };
    expect(() => extendTrack(begun(), 'line', goal, { radiusMm: 600, easeMm: 400 }, 5)).toThrow(
      /There are (4[6-9]|5[0-4])(\.\d+)? mm too few for the easement out/,
    );
  });

  it('ends in a place and a direction', () => {
    const made = extendToPose(begun(), 'line', { xMm: 600, yMm: 1900, headingDeg: 180 }, bend);
    const { to } = ends(made);
    expect(to.x).toBeCloseTo(0.6, 7);
    expect(to.y).toBeCloseTo(1.9, 7);
    expect(Math.cos(to.heading)).toBeCloseTo(-1, 9);
  });
});
