import { describe, expect, it } from 'vitest';
import { makeTrack } from '../../../src/core/track/index.ts';
import { sectionCut } from '../../../src/stage/lens/sectionCut.ts';
import { ghostLines } from '../../../src/stage/way/ghostLines.ts';
import { stripUnderside } from '../../../src/stage/way/measures.ts';
import { bounds, fallingHelix, levelCircle, measures, vertices } from '../samples.ts';

describe('ghostLines', () => {
  it('draws nothing where nothing changes', () => {
    const { track } = fallingHelix();
    expect(ghostLines(track, track, measures).from).toHaveLength(0);
  });

  it('draws the way it would become only around the support that is set right', () => {
    const { track } = fallingHelix();
    const { strip } = track.spec.profile;
    const mended = makeTrack({
      ...track.spec,
      profile: {
        ...track.spec.profile,
        strip: {
          hinges: strip?.hinges ?? [],
          supports: strip?.supports.map((one) => ({ ...one, departure: 0 })) ?? [],
        },
      },
    });
    const strokes = ghostLines(track, mended, measures);
    expect(strokes.from.length).toBeGreaterThan(0);
    const chainages = strokes.run.filter((_, i) => i % 2 === 0);
    // The strip is bent by a high support at 1.5 m for a few spans; the far turn does not move.
    expect(Math.min(...chainages)).toBeGreaterThan(0.2);
    expect(Math.max(...chainages)).toBeLessThan(3.5);
  });
});

describe('sectionCut', () => {
  it('is as wide as the strip and reaches from the rail top to its underside', () => {
    const solid = sectionCut(levelCircle(), 0.4, measures);
    const points = vertices(solid);
    const { low, high } = bounds(points);
    expect(high[2]).toBeCloseTo(0.1, 9);
    expect(low[2]).toBeCloseTo(0.1 - stripUnderside(measures), 9);
    const radii = points.map(([x, y]) => Math.hypot(x, y - 0.6));
    expect(Math.max(...radii) - Math.min(...radii)).toBeCloseTo(measures.stripWidth, 9);
  });
});
