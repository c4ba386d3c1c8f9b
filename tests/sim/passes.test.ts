import { describe, expect, it } from 'vitest';
import { compileScene } from '../../src/sim/index.ts';
import { passesOf } from '../../src/sim/passes.ts';
import { sceneForTests } from '../state/fakeHost.ts';

/** Two straight lines that cross square 2 m along the first, the second 100 mm higher; deck, underlay and track 17 mm. */
function crossing() {
  const scene = sceneForTests();
  const [track] = scene.tracks;
  const level = { alignment: [{ kind: 'straight' as const, lengthMm: 4000 }] };
  const { supports: _a, stripJoints: _b, strip: _c, ...bare } = track;
  return compileScene({
    ...scene,
    deck: { thicknessMm: 9, underlayMm: 3, trackMm: 5, material: 'birch-ply' },
    tracks: [
      { ...bare, ...level, start: { xMm: 0, yMm: 0, headingDeg: 0 }, profile: [{ atMm: 0, heightMm: 0 }] },
      {
        ...bare,
        ...level,
        id: 'over',
        name: 'Over',
        start: { xMm: 2000, yMm: -2000, headingDeg: 90 },
        profile: [{ atMm: 0, heightMm: 100 }],
      },
    ],
  });
}

describe('what passes over and under a track', () => {
  const compiled = crossing();
  const [under] = compiled.scene.tracks;

  it('finds the deck above, only where it is', () => {
    const passes = passesOf(compiled, under.id);
    expect(passes.length).toBeGreaterThan(0);
    for (const { chainage, above, below, clear } of passes) {
      expect(Math.abs(chainage - 2)).toBeLessThan(0.05);
      expect(above).toBeCloseTo(0.083, 9);
      expect(below).toBeNull();
      expect(clear).toBeCloseTo(0.083, 9);
    }
  });

  it('finds the same clear height seen from above', () => {
    const passes = passesOf(compiled, 'over');
    expect(passes.length).toBeGreaterThan(0);
    for (const { above, below, clear } of passes) {
      expect(above).toBeNull();
      expect(below).toBeCloseTo(0, 9);
      expect(clear).toBeCloseTo(0.083, 9);
    }
  });
});
