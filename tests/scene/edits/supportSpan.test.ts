import { describe, expect, it } from 'vitest';
import {
  evenSupports,
  meanOffMm,
  moveSupports,
  parseScene,
  placedSupports,
  removeSupports,
  type Scene,
  supportsAsPlanned,
} from '../../../src/scene/index.ts';
import { sampleScene } from '../sample.ts';

const line = (scene: Scene) => scene.tracks[0];
const offs = (scene: Scene) => placedSupports(line(scene)).map(({ offMm }) => offMm);

// The sample has 21 supports, one every 300 mm; support 3 stands 1.5 mm high.
describe('neighbouring supports together', () => {
  it('rise by as much each, those around them stay', () => {
    const up = moveSupports(sampleScene(), 'line', { from: 1, to: 3 }, 0.7);
    expect(offs(up).slice(0, 5)).toEqual([0, 0.7, 2.2, 0.7, 0]);
    expect(meanOffMm(line(up), { from: 1, to: 3 })).toBe(1.2);
    expect(parseScene(up).ok).toBe(true);
    expect(line(moveSupports(up, 'line', { from: 1, to: 3 }, -0.7)).supports).toEqual(line(sampleScene()).supports);
  });

  it('go back to plan', () => {
    expect(offs(supportsAsPlanned(sampleScene(), 'line', { from: 1, to: 20 }))).toEqual(new Array(21).fill(0));
  });

  it('stand on one even grade under a parabolic plan', () => {
    // Closed form: a plan z = k s² departs from the chord of s1 to s2 by k (s - s1)(s2 - s), upwards to the chord.
    const k = 2e-6;
    const span = { from: 3, to: 9 };
    const even = evenSupports(
      supportsAsPlanned(sampleScene(), 'line', { from: 0, to: 20 }),
      'line',
      span,
      (s) => k * s * s,
    );
    placedSupports(line(even)).forEach(({ atMm, offMm }, index) => {
      const inside = index > span.from && index < span.to;
      expect(offMm).toBeCloseTo(inside ? k * (atMm - 900) * (2700 - atMm) : 0, 8);
    });
  });

  it('keep the outer two where they were built', () => {
    // Level plan, support 3 (600 mm) 1.5 mm high, support 7 (1800 mm) as planned: the line falls by 1.5 mm in four bays.
    const even = evenSupports(sampleScene(), 'line', { from: 2, to: 6 }, () => 40);
    expect(offs(even).slice(1, 8)).toEqual([0, 1.5, 1.125, 0.75, 0.375, 0, 0]);
    expect(() => evenSupports(sampleScene(), 'line', { from: 2, to: 3 }, () => 0)).toThrow(/between the outer two/);
  });

  it('are taken out, the others stay where they are and as they are', () => {
    const less = removeSupports(sampleScene(), 'line', { from: 3, to: 5 });
    const before = placedSupports(line(sampleScene()));
    expect(placedSupports(line(less))).toEqual(before.filter((_, index) => index < 3 || index > 5));
    expect(parseScene(less).ok).toBe(true);
    expect(() => removeSupports(sampleScene(), 'line', { from: 0, to: 19 })).toThrow(/two supports at least/);
    expect(() => removeSupports(sampleScene(), 'line', { from: 5, to: 21 })).toThrow(/21 supports/);
  });

  it('stay where a variant or a survey counts them', () => {
    const scene = sampleScene();
    const change = { at: 'tracks/line/supports/off/3/byMm', to: 0 };
    const varied = { ...scene, variants: [{ id: 'mended', name: 'Mended', changes: [change] }] };
    expect(() => removeSupports(varied, 'line', { from: 3, to: 5 })).toThrow(/variant “Mended”/);
    const survey = {
      id: 'first',
      name: 'First',
      track: 'line',
      readings: [{ kind: 'height', support: 6, heightMm: 1 }],
    };
    const surveyed = { ...scene, surveys: [survey] } as Scene;
    expect(() => removeSupports(surveyed, 'line', { from: 3, to: 5 })).toThrow(/survey “First”/);
  });
});
