import { describe, expect, it } from 'vitest';
import {
  helix,
  makeTrack,
  plannedCant,
  reverseTrack,
  routeTrack,
  trackPoint,
} from '../../../../src/core/track/index.ts';
import type { TrackSpec } from '../../../../src/core/track/types.ts';

const canted: TrackSpec = {
  start: { x: 0, y: 0, heading: 0 },
  elements: [helix(0.6, 0.5)],
  profile: {
    points: [
      { chainage: 0, height: 0 },
      { chainage: 1.8, height: 0.036 },
    ],
  },
  cant: {
    points: [
      { chainage: 0.2, cant: 0 },
      { chainage: 0.6, cant: 0.04 },
    ],
    lever: 0.00875,
  },
};

const lean = [
  { chainage: 0.4, cant: 0 },
  { chainage: 0.7, cant: 0.03 },
  { chainage: 1, cant: -0.01 },
];

describe('a deck that leans as built', () => {
  const planned = makeTrack(canted);
  const built = makeTrack({ ...canted, lean });

  it('adds to the cant of the plan, place by place, and keeps the outer leans beyond', () => {
    const at = (s: number) => trackPoint(built, s).cant;
    expect(at(0.3)).toBeCloseTo(0.01, 12);
    // Half-way to 0.6 m the plan has 0.03; a third of the way to 0.7 m the lean is 0.01.
    expect(at(0.5)).toBeCloseTo(0.03 + 0.01, 12);
    expect(at(0.7)).toBeCloseTo(0.07, 12);
    expect(at(0.85)).toBeCloseTo(0.05, 12);
    expect(at(1.7)).toBeCloseTo(0.03, 12);
    expect(trackPoint(built, 0.65).twist).toBeCloseTo(0.1, 12);
  });

  it('leaves the height of the middle, as planned and as built, and the plan’s own cant', () => {
    for (const s of [0.1, 0.55, 0.9, 1.5]) {
      expect(trackPoint(built, s).z).toBe(trackPoint(planned, s).z);
      expect(plannedCant(built, s)).toBeCloseTo(trackPoint(planned, s).cant, 12);
    }
  });

  it('leans a track that was to be level', () => {
    const { cant: _cant, ...level } = canted;
    const track = makeTrack({ ...level, lean });
    expect(trackPoint(track, 0.55).cant).toBeCloseTo(0.015, 12);
    expect(plannedCant(track, 0.55)).toBe(0);
  });

  it('leans to the other hand when it is run the other way, and along in a route', () => {
    const back = reverseTrack(built);
    const over = routeTrack([{ track: built, from: 1.5, to: 0.2 }]).track;
    for (const s of [0.3, 0.5, 0.8, 0.95]) {
      expect(trackPoint(back, built.length - s).cant).toBeCloseTo(-trackPoint(built, s).cant, 12);
      expect(trackPoint(over, 1.5 - s).cant).toBeCloseTo(-trackPoint(built, s).cant, 12);
    }
    expect(plannedCant(back, built.length - 0.7)).toBeCloseTo(-0.04, 12);
  });
});
