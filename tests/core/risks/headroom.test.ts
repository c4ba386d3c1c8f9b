import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { RiskContext, Surroundings } from '../../../src/core/risks/types.ts';
import { arc, helix, makeTrack, reverseTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial, passing } from './samples.ts';

const risk = riskById('headroom');
/** 45 mm high, 34 mm wide, 220 mm long. */
const van = sampleVehicle({ pivotSpacing: 0.16, overhang: 0.03 });

/** A straight bridge of 3 m across the line y = 0 at x = 1.5, its rail at a height, m. */
const bridge = (height: number, y = -1.5, heading = Math.PI / 2): Track =>
  makeTrack({
    start: { x: 1.5, y, heading },
    elements: [straight(3)],
    profile: { points: [{ chainage: 0, height }] },
  });

const line = sampleTrack([straight(3)]);
const around = (tracks: readonly Track[], deckHalfWidth = 0.03): Surroundings => ({
  tracks,
  deckDepth: 0.017,
  deckHalfWidth,
});
const assess = (context: RiskContext) => assessRun(context, [risk])[0];
const under = (upper: Track, lead: number, deckHalfWidth?: number) =>
  assess(madeUpTrial(line, [van], [{ lead }], { surroundings: around([line, upper], deckHalfWidth) }));

describe('headroom under a bridge', () => {
  it('is the rail above less its deck, less the vehicle: 80 - 17 - 45 = 18 mm', () => {
    const { worst } = under(bridge(0.08), 1.5);
    expect(worst?.value).toBe(0.045);
    expect(worst?.limit).toBeCloseTo(0.063, 9);
    expect(worst?.margin).toBeCloseTo(0.018, 9);
  });

  it('is missing under a bridge too low', () => {
    expect(under(bridge(0.06), 1.5).worst?.margin).toBeCloseTo(-0.002, 9);
  });

  it('counts from where the front of the roof comes under the edge of the deck', () => {
    // Front end 110 mm ahead of the middle, deck 30 mm to either side of x = 1.5.
    const { margins } = assess(
      madeUpTrial(line, [van], passing(1.2, 1.5, 0.001), { surroundings: around([line, bridge(0.08)]) }),
    );
    const first = margins.findIndex((margin) => !Number.isNaN(margin));
    expect(1.2 + first * 0.001).toBeCloseTo(1.5 - 0.03 - 0.11, 2);
  });

  it('does not count a deck beside the line, and counts it once the roof reaches under it', () => {
    // Parallel to the line: roof edge at 17 mm, deck edge at 60 - 30 = 30 mm; then at 40 - 30 = 10 mm.
    const beside = (y: number): Track => bridge(0.08, y, 0);
    expect(
      assessRun(madeUpTrial(line, [van], [{ lead: 2 }], { surroundings: around([line, beside(0.06)]) }), [risk])[0]
        ?.worst ?? null,
    ).toBeNull();
    expect(under(beside(0.04), 2).worst?.margin).toBeCloseTo(0.018, 9);
  });

  it('takes the lowest of several decks', () => {
    const tracks = [line, bridge(0.2), bridge(0.08), bridge(0.14)];
    expect(
      assess(madeUpTrial(line, [van], [{ lead: 1.5 }], { surroundings: around(tracks) })).worst?.margin,
    ).toBeCloseTo(0.018, 9);
  });

  it('does not take the deck the train stands on, nor a line at the same level, for one above', () => {
    const crossing = bridge(0);
    expect(
      assessRun(madeUpTrial(line, [van], [{ lead: 1.5 }], { surroundings: around([line, crossing]) }), [risk]),
    ).toEqual([]);
  });

  it('does not take a deck for one above whose underside is lower than the axles: 20 - 17 mm over the rail', () => {
    expect(under(bridge(0.02), 1.5).worst).toBeNull();
    expect(under(bridge(0.024), 1.5).worst?.margin).toBeCloseTo(0.007 - 0.045, 9);
  });

  it('takes the lowest of two that cross, point by point', () => {
    // One level at 100 mm; one that falls by 1 in 10 across the line, 101 mm over its middle and 99.3 mm over one edge of the roof.
    const falling = makeTrack({
      start: { x: 1.5, y: -1.5, heading: Math.PI / 2 },
      elements: [straight(3)],
      profile: {
        points: [
          { chainage: 0, height: 0.251 },
          { chainage: 3, height: -0.049 },
        ],
      },
    });
    const surroundings = around([line, bridge(0.1), bridge(0.12), falling]);
    const { worst } = assess(madeUpTrial(line, [van], [{ lead: 1.5 }], { surroundings }));
    expect(worst?.limit).toBeCloseTo(0.101 - 0.0017 - 0.017, 9);
  });

  it('does not arise where nothing passes over the line', () => {
    expect(assessRun(madeUpTrial(line, [van], [{ lead: 1.5 }]), [risk])).toEqual([]);
  });
});

describe('headroom in a helix', () => {
  // 80 mm a turn on 505 mm; a decline of three turns, anticlockwise.
  const turns = 3;
  const length = turns * 2 * Math.PI * 0.505;
  const spiral = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [helix(0.505, turns)],
    profile: {
      points: [
        { chainage: 0, height: 0 },
        { chainage: length, height: 0.08 * turns },
      ],
    },
  });
  const along = (track: Track, reversed: boolean) =>
    assess(madeUpTrial(track, [van], passing(0.3, length - 0.3, 0.05), { surroundings: around([spiral]), reversed }));

  it('is a turn less the deck in the lower turns and nothing to speak of in the top one', () => {
    const { margins } = along(spiral, false);
    const free = margins.filter((margin) => Number.isNaN(margin)).length / margins.length;
    // One turn of three has nothing above it, less where a vehicle reaches into it.
    expect(free).toBeGreaterThan(0.28);
    expect(free).toBeLessThan(0.36);
    for (const margin of margins) {
      // The outer front corner is 110 mm ahead and 522 mm out, at an angle that the rail reaches after 105 mm: the deck there is
      // 5 mm × 2.5 % = 0.13 mm lower than straight above the body. The roof leans back by 45 mm × 2.5 %, which makes it 0.03 mm more.
      if (!Number.isNaN(margin)) expect(Math.abs(margin - 0.018)).toBeLessThan(0.0002);
    }
  });

  it('is the same the other way round', () => {
    const least = along(spiral, false).worst?.margin ?? 0;
    expect(along(reverseTrack(spiral), true).worst?.margin).toBeCloseTo(least, 4);
  });
});

describe('a body thrown out in a curve', () => {
  it('meets a deck it would clear on its centreline', () => {
    // Long coach: end corners stand (L² - a²)/8R = (220² - 120²)/(8 × 400) = 10.6 mm further out than the middle of a straight body.
    const curve = sampleTrack([arc(0.4, 2)]);
    const coach = sampleVehicle({ pivotSpacing: 0.12, overhang: 0.05 });
    // A ring of deck outside the curve: its inner edge 22 mm from the centreline, past the roof's 17 mm.
    const ring = makeTrack({
      start: { x: 0, y: -0.052, heading: 0 },
      elements: [arc(0.452, 2)],
      profile: { points: [{ chainage: 0, height: 0.08 }] },
    });
    const { worst } = assess(madeUpTrial(curve, [coach], [{ lead: 0.4 }], { surroundings: around([curve, ring]) }));
    expect(worst?.margin).toBeCloseTo(0.018, 5);
    const stub = sampleVehicle({ pivotSpacing: 0.04, overhang: 0.005 });
    expect(
      assess(madeUpTrial(curve, [stub], [{ lead: 0.4 }], { surroundings: around([curve, ring]) })).worst,
    ).toBeNull();
  });
});
