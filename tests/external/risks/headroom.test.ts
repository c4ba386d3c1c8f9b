import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import { clearHeight } from '../../../src/core/stock/index.ts';
import { helix, makeTrack, straight } from '../../../src/core/track/index.ts';
import { madeUpTrial, passing } from '../../core/risks/samples.ts';
import { sampleTrack, sampleVehicle } from '../../core/stock/samples.ts';

const inch = 0.0254;

/** Clear height that a vehicle finds under a level deck whose rail lies `rail` above its own. */
function clearUnder(rail: number, deckDepth: number, bodyHeight = 0.045): number {
  const line = sampleTrack([straight(3)]);
  const above = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(3)],
    profile: { points: [{ chainage: 0, height: rail }] },
  });
  const van = sampleVehicle({ pivotSpacing: 0.15, overhang: 0.03 }, { bodyHeight });
  const context = madeUpTrial(line, [van], [{ lead: 1.5 }], { surroundings: { tracks: [line, above], deckDepth } });
  return assessRun(context, [riskById('headroom')])[0].worst?.limit ?? Number.NaN;
}

describe('clear height', () => {
  it('of a helix of 3 in a turn is 2.544 in', () => {
    // Source: a builder's numbers on a forum, added up: 3 in less 1/8 in of roadbed, 5/32 in of deck and 0.175 in of code 100 track.
    const clear = clearUnder(3 * inch, (1 / 8 + 5 / 32 + 0.175) * inch);
    expect(Math.abs(clear / inch - 2.544)).toBeLessThan(0.0005);
  });

  it('as NEM 102 (2017) asks in H0 passes a vehicle of 59 mm and none of more', () => {
    const hl4 = clearHeight('H0', false);
    expect(hl4).toBe(0.059);
    expect(clearUnder(hl4 + 0.017, 0.017, 0.059)).toBeCloseTo(0.059, 12);
  });
});

describe('a double helix in 00', () => {
  // Source: a worked example of common practice, no published source: inner ring 438 mm, outer 505 mm, 80 mm a turn on 9 mm of ply, 3 mm of cork and
  // 5 mm of track: 63 mm clear on both.
  it.each([0.438, 0.505])('on %f m leaves 63 mm', (radius) => {
    const turns = 4;
    const length = turns * 2 * Math.PI * radius;
    const ring = (r: number) =>
      makeTrack({
        start: { x: 0, y: -r, heading: 0 },
        elements: [helix(r, turns)],
        profile: {
          points: [
            { chainage: 0, height: 0 },
            { chainage: turns * 2 * Math.PI * r, height: 0.08 * turns },
          ],
        },
      });
    const tracks = [ring(0.438), ring(0.505)];
    const track = radius === 0.438 ? tracks[0] : tracks[1];
    const coach = sampleVehicle({ pivotSpacing: 0.17, overhang: 0.036 });
    const context = madeUpTrial(track, [coach], passing(0.4, length - 0.4, 0.02), {
      surroundings: { tracks, deckDepth: 0.017 },
    });
    const { worst, margins } = assessRun(context, [riskById('headroom')])[0];
    // Roof corners of a 242 mm body lie up to 8 mm of rail away from the point above their own place, 0.25 mm at 3 %.
    expect(Math.abs((worst?.limit ?? 0) - 0.063)).toBeLessThan(0.0003);
    expect([...margins].filter((margin) => !Number.isNaN(margin)).length).toBeGreaterThan(0.7 * margins.length);
  });
});
