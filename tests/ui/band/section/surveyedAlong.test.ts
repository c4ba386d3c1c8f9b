import { describe, expect, it } from 'vitest';
import type { CompiledTrial, Surveyed } from '../../../../src/state/types.ts';
import { surveyedAlong } from '../../../../src/ui/band/frame/routeDrawing.ts';

const surveyed: Surveyed = {
  trackId: 'hill',
  supports: [0.2, 1, 1.8].map((chainage, index) => {
    return { chainage, departure: index / 1000, deviation: 0.0002, wrong: index === 1, mended: null };
  }),
  pointed: [1],
  next: 1.5,
};

const on = (legs: CompiledTrial['legs']): CompiledTrial => ({ trackId: 'yard', legs }) as CompiledTrial;
const leg = (trackId: string, from: number, to: number, start: number) => {
  return { trackId, trackName: trackId, from, to, start };
};

describe('a survey along the way of a trial', () => {
  it('is as it is where the trial runs on its track alone, and nowhere on another', () => {
    expect(surveyedAlong(surveyed, { trackId: 'hill' } as CompiledTrial)).toBe(surveyed);
    expect(surveyedAlong(surveyed, { trackId: 'yard' } as CompiledTrial)).toBeNull();
    expect(surveyedAlong(surveyed, on([leg('yard', 0, 3, 0)]))).toBeNull();
  });

  it('is told along a route, turned round where that runs back, without what lies off it', () => {
    // 3 m of yard, then the hill from 2 m back to 0.5 m: its support at 1.8 m comes 0.2 m after the joint.
    const along = surveyedAlong(surveyed, on([leg('yard', 0, 3, 0), leg('hill', 2, 0.5, 3)]));
    expect(along?.supports.map(({ chainage, wrong }) => [chainage, wrong])).toEqual([
      [4, true],
      [3.2, false],
    ]);
    expect(along?.next).toBe(3.5);
  });

  it('is there twice where the route passes twice', () => {
    const along = surveyedAlong(surveyed, on([leg('hill', 0, 2, 0), leg('hill', 2, 0, 2)]));
    expect(along?.supports.map(({ chainage }) => Math.round(chainage * 10) / 10)).toEqual([0.2, 3.8, 1, 3, 1.8, 2.2]);
  });
});
