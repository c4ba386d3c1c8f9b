import { describe, expect, it } from 'vitest';
import { arc, gradeBreaks, makeTrack, profileCorners, straight, transition } from '../../../../src/core/track/index.ts';
import { levelTrack } from '../arbitraryTracks.ts';

describe('curvature jumps', () => {
  it('are reported where a straight meets an arc and where arcs reverse, with their signs', () => {
    const track = levelTrack(straight(1), arc(0.5, 1), arc(0.4, -1), straight(1));
    expect(track.jumps).toEqual([
      { chainage: 1, position: 0, heading: 0, curvature: 2 },
      { chainage: 1.5, position: 0, heading: 0, curvature: expect.closeTo(-4.5, 14) },
      { chainage: expect.closeTo(1.9, 14), position: 0, heading: 0, curvature: 2.5 },
    ]);
  });

  it('are not reported where easements fit, nor for the rounding of a radius', () => {
    const track = levelTrack(straight(1), transition(0.3, 0, 2), arc(0.5, 1), transition(0.6, 2, -2), arc(0.5, -1));
    expect(track.jumps).toEqual([]);
    expect(levelTrack(transition(0.3, 0, 1 / 0.7 + 1e-12), arc(0.7, 1)).jumps).toEqual([]);
    expect(levelTrack(transition(0.3, 0, 2 + 1e-6), arc(0.5, 1)).jumps).toHaveLength(1);
  });
});

describe('grade breaks', () => {
  const track = (first: number, second: number, rounded: boolean) =>
    makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(3)],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: 1.5, height: 1.5 * first, ...(rounded && { curve: { length: 0.5 } }) },
          { chainage: 3, height: 1.5 * (first + second) },
        ],
      },
    });

  it('are reported at a grade point without a curve', () => {
    expect(gradeBreaks(track(0, 0.025, false))).toEqual([
      { chainage: 1.5, before: 0, after: expect.closeTo(0.025, 14) },
    ]);
  });

  it('are not reported where the change is rounded, nor where it is rounding', () => {
    expect(gradeBreaks(track(0, 0.025, true))).toEqual([]);
    expect(gradeBreaks(track(0.02, 0.02 + 1e-9, false))).toEqual([]);
    expect(gradeBreaks(track(0.02, 0.02 + 2e-6, false))).toHaveLength(1);
  });
});

describe('corners of a profile', () => {
  const points = [
    { chainage: 0, height: 0 },
    { chainage: 1.5, height: 0 },
    { chainage: 3, height: 0.03 },
  ];
  const track = (profile: Partial<Parameters<typeof makeTrack>[0]['profile']>) =>
    makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements: [straight(3)], profile: { points, ...profile } });

  it('are breaks of grade, and both ends of the rail over a step, but no vertical curve of some metres', () => {
    expect([...profileCorners(track({}))]).toEqual([1.5]);
    const rounded = points.map((point) => (point.chainage === 1.5 ? { ...point, curve: { radius: 5 } } : point));
    expect([...profileCorners(track({ points: rounded }))]).toEqual([]);
    const supports = [0, 0.5, 1, 2, 3].map((chainage) => ({ chainage, departure: 0 }));
    const step = { chainage: 0.5, rise: 0.0005, over: 0.02 };
    expect([...profileCorners(track({ strip: { supports, hinges: [0.5], steps: [step] } }))]).toEqual([
      expect.closeTo(0.49, 12),
      expect.closeTo(0.51, 12),
      1.5,
    ]);
  });
});
