import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  jointGeometry,
  newJointGeometry,
  placeCoupled,
  placeVehicle,
  turnVehicle,
} from '../../../src/core/stock/index.ts';
import type { JointGeometry, Vehicle } from '../../../src/core/stock/types.ts';
import { arc, reverseTrack, straight } from '../../../src/core/track/index.ts';
import type { PlanElement, Track } from '../../../src/core/track/types.ts';
import { evenly } from '../../evenly.ts';
import { sampleCoupling, sampleTrack, sampleVehicle, variedElements, variedGrades } from './samples.ts';

const buffers = { spacing: 0.02, height: 0.0122, headWidth: 0.0052, headHeight: 0.004, length: 0.006 };
const coach = sampleVehicle({ pivotSpacing: 0.186, overhang: 0.036, buffers });
const wagon = sampleVehicle({
  pivotSpacing: 0.06,
  overhang: 0.018,
  rearOverhang: 0.022,
  buffers,
  bogies: false,
  coupling: { headHeight: 0.0104, reach: 0.012 },
});

/** Room-sized coordinates to a picometre; angles over joints of centimetres lose two more digits. */
const exact = 12;
const exactAngle = 10;

const coupled = (track: Track, leading: Vehicle, trailing: Vehicle, s: number, extension = 0): JointGeometry =>
  jointGeometry(
    leading,
    trailing,
    placeVehicle(track, leading, s),
    placeVehicle(track, trailing, placeCoupled(track, leading, trailing, s, extension)),
  );

/** Heading of the trailing body less that of the leading one, rad, by the bodies' own axes. */
const turnBetween = (track: Track, leading: Vehicle, trailing: Vehicle, s: number): number => {
  const [a, b] = [
    placeVehicle(track, leading, s).ahead,
    placeVehicle(track, trailing, placeCoupled(track, leading, trailing, s, 0)).ahead,
  ];
  return Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
};

const mirrored = (elements: readonly PlanElement[]): PlanElement[] =>
  elements.map((e) => ({ ...e, startCurvature: -e.startCurvature, endCurvature: -e.endCurvature }));

const radius = fc.double({ min: 0.4, max: 3, noNaN: true });
const share = fc.double({ min: 0.2, max: 0.9, noNaN: true });

describe('a coupled pair on straight level track', () => {
  const track = sampleTrack([straight(3)]);

  it('shows nothing but the difference of its heads', () => {
    const g = coupled(track, coach, wagon, 2);
    expect(g.pinDistance).toBeCloseTo(0.022, exact);
    expect(g.verticalOffset).toBeCloseTo(0.0099 - 0.0104, exact);
    // The line between pivots falls ahead by 0.5 mm over 22 mm.
    expect(g.rise).toBeCloseTo(-0.5 / 22, exact);
    for (const none of [g.lateralOffset, g.swingLeading, g.swingTrailing]) {
      expect(none).toBeCloseTo(0, exact);
    }
    expect(g.bufferLateral[0]).toBeCloseTo(0, exact);
    expect(g.bufferVertical[1]).toBeCloseTo(0, exact);
  });

  it('has its joint midway between the pivots', () => {
    // Rear pivot of the leader 93 + 36 - 8 behind its origin; equal coaches with 20 mm between pivots.
    expect(coupled(track, coach, coach, 2).chainage).toBeCloseTo(2 - 0.121 - 0.01, exact);
  });

  it('opens the gap between buffer faces by the extension', () => {
    // Pivots 20 mm apart and 8 mm inside each body end leave 4 mm between bodies; buffers of 6 mm press 8 mm into it.
    expect(coupled(track, coach, coach, 2).bufferGap[0]).toBeCloseTo(-0.008, exact);
    expect(coupled(track, coach, coach, 2, 0.003).bufferGap[1]).toBeCloseTo(-0.005, exact);
  });

  it('has no buffers to speak of when one end has none', () => {
    const bare = sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02 });
    const g = coupled(track, coach, bare, 2);
    expect([...g.bufferLateral, ...g.bufferVertical, ...g.bufferGap].every(Number.isNaN)).toBe(true);
  });

  it('fills the geometry it is given', () => {
    const out = newJointGeometry();
    const placed = placeVehicle(track, coach, 2);
    expect(jointGeometry(coach, coach, placed, placeVehicle(track, coach, 1.7), out)).toBe(out);
  });
});

describe('a coupled pair in a curve', () => {
  const track = sampleTrack([arc(0.6, 5)]);

  it('swings each end by half the angle between like bodies, to opposite sides', () => {
    const g = coupled(track, coach, coach, 2);
    const turned = turnBetween(track, coach, coach, 2);
    expect(turned).toBeLessThan(0);
    expect(g.swingTrailing).toBeCloseTo(-turned / 2, exactAngle);
    expect(g.swingLeading).toBeCloseTo(turned / 2, exactAngle);
  });

  it('has no lateral offset between like ends and closes the buffers on the inside', () => {
    const g = coupled(track, coach, coach, 2);
    const onStraight = coupled(sampleTrack([straight(3)]), coach, coach, 2);
    expect(g.lateralOffset).toBeCloseTo(0, exact);
    // Left curve: the left pair is the inner one. The faces turn about each other by the bodies' turn over the 20 mm between pairs.
    expect(g.bufferGap[0]).toBeLessThan(onStraight.bufferGap[0]);
    expect(g.bufferGap[1] - g.bufferGap[0]).toBeCloseTo(
      2 * 0.02 * Math.sin(-turnBetween(track, coach, coach, 2) / 2),
      exact,
    );
  });

  it('turns bodies by the difference of the swings of body-mounted couplings, for unlike vehicles too', () => {
    fc.assert(
      fc.property(radius, share, (r, at) => {
        const varied = sampleTrack(variedElements(r), variedGrades);
        const g = coupled(varied, coach, wagon, at * varied.length);
        const turned = turnBetween(varied, coach, wagon, at * varied.length);
        expect(turned).toBeCloseTo(g.swingLeading - g.swingTrailing, exactAngle);
      }),
    );
  });

  it('swings bogie-mounted couplings against the bogie, which lies along the track', () => {
    const onBogies = sampleVehicle({
      pivotSpacing: 0.186,
      overhang: 0.036,
      coupling: { mount: 'bogie', pivotInset: 0 },
    });
    const s = 2;
    const back = placeCoupled(track, onBogies, onBogies, s);
    const g = jointGeometry(onBogies, onBogies, placeVehicle(track, onBogies, s), placeVehicle(track, onBogies, back));
    // Bogie of the leader's rear at angle α, of the follower's front at β, on a circle: by symmetry the line of pivots
    // makes half of α - β with each.
    const leadingRear = placeVehicle(track, onBogies, s).rearChainage / 0.6;
    const trailingFront = placeVehicle(track, onBogies, back).frontChainage / 0.6;
    expect(g.swingTrailing).toBeCloseTo((leadingRear - trailingFront) / 2, exactAngle);
    expect(g.swingLeading).toBeCloseTo(-(leadingRear - trailingFront) / 2, exactAngle);
    expect(Math.abs(g.swingLeading)).toBeLessThan(Math.abs(coupled(track, coach, coach, s).swingLeading));
  });

  it('lets a rigid frame carry what is called bogie-mounted', () => {
    const asBogie = { ...wagon, rear: { ...wagon.rear, coupling: sampleCoupling({ mount: 'bogie' }) } };
    const asBody = { ...wagon, rear: { ...wagon.rear, coupling: sampleCoupling({ mount: 'body' }) } };
    expect(coupled(track, asBogie, wagon, 2)).toEqual(coupled(track, asBody, wagon, 2));
  });
});

describe('a coupled pair on a vertical curve', () => {
  // A sag of radius 20 m, from -2 % to +2 %.
  const sag = sampleTrack(
    [straight(3)],
    [
      { chainage: 0, height: 0.03 },
      { chainage: 1.5, height: 0, curve: { length: 0.8 } },
      { chainage: 3, height: 0.03 },
    ],
  );

  it('shows no vertical offset between equal vehicles: the danger is at entries, kinks and mixed pairs', () => {
    for (let s = 1.46; s <= 1.8; s += 0.02) {
      // Not quite a circle: the parabola's radius changes with its own grade by 3·g·Δg, at most 3 × 1.5 % × 1.3 % over a
      // coach, of the 0.2 mm that one end would be out alone.
      expect(Math.abs(coupled(sag, coach, coach, s).verticalOffset)).toBeLessThan(1.2e-7);
    }
    expect(Math.abs(coupled(sag, coach, wagon, 1.6).verticalOffset + 0.0005)).toBeGreaterThan(5e-5);
  });

  it('shows its greatest offset as one vehicle enters', () => {
    let greatest = 0;
    for (let s = 1; s <= 1.5; s += 0.001)
      greatest = Math.max(greatest, Math.abs(coupled(sag, coach, coach, s).verticalOffset));
    // End throw of one vehicle on radius 20 m at the head, 2 mm beyond the body end: o(a + o)/2R.
    expect(greatest).toBeCloseTo((0.038 * (0.186 + 0.038)) / 40, 6);
  });
});

describe('the geometry of a joint', () => {
  const turnedPair = (track: Track, s: number, extension: number) => {
    const trailing = placeCoupled(track, coach, wagon, s, extension);
    const there = jointGeometry(coach, wagon, placeVehicle(track, coach, s), placeVehicle(track, wagon, trailing));
    const back = reverseTrack(track);
    const lead = turnVehicle(wagon);
    const follow = turnVehicle(coach);
    const again = jointGeometry(
      lead,
      follow,
      placeVehicle(back, lead, track.length - trailing),
      placeVehicle(back, follow, track.length - s),
    );
    return [there, again] as const;
  };

  it('is the same seen from the other direction of travel, with the signs that leading and trailing exchange', () => {
    fc.assert(
      fc.property(radius, share, evenly(0, 0.002), (r, at, extension) => {
        const track = sampleTrack(variedElements(r), variedGrades);
        const [there, again] = turnedPair(track, at * track.length, extension);
        expect(again.pinDistance).toBeCloseTo(there.pinDistance, exact);
        expect(again.chainage).toBeCloseTo(track.length - there.chainage, exact);
        expect(again.lateralOffset).toBeCloseTo(there.lateralOffset, exact);
        expect(again.verticalOffset).toBeCloseTo(-there.verticalOffset, exact);
        expect(again.rise).toBeCloseTo(-there.rise, exactAngle);
        expect(again.swingLeading).toBeCloseTo(there.swingTrailing, exactAngle);
        expect(again.swingTrailing).toBeCloseTo(there.swingLeading, exactAngle);
        expect(again.bufferLateral[0]).toBeCloseTo(there.bufferLateral[1], exact);
        expect(again.bufferVertical[0]).toBeCloseTo(-there.bufferVertical[1], exact);
        expect(again.bufferGap[0]).toBeCloseTo(there.bufferGap[1], exact);
      }),
    );
  });

  it('is mirrored on the mirrored track', () => {
    fc.assert(
      fc.property(radius, share, (r, at) => {
        const elements = variedElements(r);
        const track = sampleTrack(elements, variedGrades);
        const one = coupled(track, coach, wagon, at * track.length);
        const other = coupled(sampleTrack(mirrored(elements), variedGrades), coach, wagon, at * track.length);
        expect(other.pinDistance).toBeCloseTo(one.pinDistance, exact);
        expect(other.lateralOffset).toBeCloseTo(-one.lateralOffset, exact);
        expect(other.verticalOffset).toBeCloseTo(one.verticalOffset, exact);
        expect(other.rise).toBeCloseTo(one.rise, exactAngle);
        expect(other.swingLeading).toBeCloseTo(-one.swingLeading, exactAngle);
        expect(other.bufferLateral[0]).toBeCloseTo(-one.bufferLateral[1], exact);
        expect(other.bufferGap[0]).toBeCloseTo(one.bufferGap[1], exact);
      }),
    );
  });

  it('moves on smoothly with the train, over joins of elements and breaks of grade alike', () => {
    const track = sampleTrack(variedElements(0.45), variedGrades);
    const step = 5e-5;
    const lengths = ['pinDistance', 'lateralOffset', 'verticalOffset'] as const;
    const angles = ['swingLeading', 'swingTrailing'] as const;
    let before = coupled(track, coach, wagon, 0.5);
    let moved = 0;
    for (let s = 0.5 + step; s < track.length - 0.2; s += step) {
      const now = coupled(track, coach, wagon, s);
      // No offset grows faster than the bodies turn, and no body turns faster than its chord does over the tightest
      // curve: heading by 2/R a metre between the two, doubled over the short drawbar.
      for (const key of lengths) if (Math.abs(now[key] - before[key]) > step) throw new Error(`${key} jumps at ${s}`);
      for (const key of angles)
        if (Math.abs(now[key] - before[key]) > 20 * step) throw new Error(`${key} jumps at ${s}`);
      moved += Math.abs(now.lateralOffset - before.lateralOffset);
      before = now;
    }
    expect(moved).toBeGreaterThan(0.005);
  });
});
