import { describe, expect, it } from 'vitest';
import { arc, makeTrack, straight, transition } from '../../../src/core/track/index.ts';
import { routeFacts } from '../../../src/ui/panel/route/routeFacts.ts';

const profile = {
  points: [
    { chainage: 0, height: 0.1 },
    { chainage: 1, height: 0.1 },
    { chainage: 3, height: 0.05 },
  ],
};

describe('what a route comes to', () => {
  it('finds the steepest grade with its sign, the tightest curve whichever way it turns, and the rise', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1), transition(0.5, 0, -1 / 0.6), arc(0.6, -1), arc(0.9, 1)],
      profile,
    });
    const facts = routeFacts(track);
    expect(facts.length).toBeCloseTo(1 + 0.5 + 0.6 + 0.9, 9);
    expect(facts.steepest).toBeCloseTo(-0.025, 12);
    expect(facts.leastRadius).toBeCloseTo(0.6, 12);
    expect(facts.rise).toBeCloseTo(-0.05, 9);
  });

  it('knows no radius of a straight line', () => {
    const track = makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(3)], profile });
    expect(routeFacts(track).leastRadius).toBeNull();
  });
});
