import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessRun, riskById } from '../../../src/core/risks/index.ts';
import type { Surroundings } from '../../../src/core/risks/types.ts';
import type { Vehicle } from '../../../src/core/stock/index.ts';
import { arc, makeTrack, type PlanElement, reverseTrack, straight, type Track } from '../../../src/core/track/index.ts';
import { sampleTrack, sampleVehicle } from '../stock/samples.ts';
import { madeUpTrial, passing } from './samples.ts';

const risk = riskById('passing');
/** 220 mm long, 34 mm wide, 45 mm high. */
const coach = sampleVehicle({ pivotSpacing: 0.16, overhang: 0.03 });
const laid = (elements: readonly PlanElement[], y: number, height = 0, x = 0, heading = 0): Track =>
  makeTrack({ start: { x, y, heading }, elements, profile: { points: [{ chainage: 0, height }] } });
const line = sampleTrack([straight(3)]);
const beside = (tracks: readonly Track[], lead = 1.5, more: Partial<Surroundings> = {}, vehicle: Vehicle = coach) =>
  assessRun(madeUpTrial(tracks[0], [vehicle], [{ lead }], { surroundings: { tracks, deckDepth: 0.017, ...more } }), [
    risk,
  ])[0]?.worst;

describe('two straight tracks 46 mm apart', () => {
  it.each([
    ['on the left', laid([straight(3)], 0.046)],
    ['on the right', laid([straight(3)], -0.046)],
    ['laid the other way', laid([straight(3)], 0.046, 0, 3, Math.PI)],
  ])('leave 46 - 17 - 17 = 12 mm, the other one %s', (_, other) => {
    const worst = beside([line, other]);
    expect(worst?.value).toBeCloseTo(0.017, 9);
    expect(worst?.limit).toBeCloseTo(0.029, 9);
    expect(worst?.margin).toBeCloseTo(0.012, 9);
    expect(worst?.governing).toBe('beside');
  });

  it('leave more to narrower vehicles: 46 - 17 - 12.5 mm', () => {
    const passers = [sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02 }, { bodyWidth: 0.025 })];
    expect(beside([line, laid([straight(3)], 0.046)], 1.5, { passers })?.margin).toBeCloseTo(0.0165, 9);
  });

  it('take the wider of two kinds of passer', () => {
    const wide = sampleVehicle({ pivotSpacing: 0.1, overhang: 0.02 }, { bodyWidth: 0.04 });
    for (const passers of [
      [coach, wide],
      [wide, coach],
    ]) {
      expect(beside([line, laid([straight(3)], 0.046)], 1.5, { passers })?.margin).toBeCloseTo(0.009, 9);
    }
  });

  it('are too near at 30 mm, by 4 mm', () => {
    expect(beside([line, laid([straight(3)], 0.03)])?.margin).toBeCloseTo(-0.004, 9);
  });
});

describe('two curves about one centre, 500 and 567 mm', () => {
  const inner = laid([arc(0.5, 2)], -0.5);
  const outer = laid([arc(0.567, 2)], -0.567);
  // Inner coach: chord √(500² - 80²) = 493.559 mm from the centre, its outer corner √(510.559² + 110²) = 522.274 mm. Outer coach: chord
  // √(567² - 80²) = 561.328 mm, its inner side 544.328 mm. Between them 22.054 mm.
  it.each([
    ['inner', [inner, outer]],
    ['outer', [outer, inner]],
  ])('leave 22.05 mm, seen from the %s one', (_, tracks) => {
    const [track] = tracks;
    // Points 5 mm apart on curves of 500 mm: 5² / 8 x 500 = 0.006 mm.
    expect(Math.abs((beside(tracks, track.length / 2)?.margin ?? 0) - 0.022054)).toBeLessThan(0.00001);
  });
});

describe('a track that is no neighbour', () => {
  it('lies a vehicle’s height above or below, or far away, or is the train’s own', () => {
    expect(beside([line, laid([straight(3)], 0.046, 0.046)])).toBeUndefined();
    expect(beside([line, laid([straight(3)], 0.046, -0.046)])).toBeUndefined();
    expect(beside([line, laid([straight(3)], 0.046, 0.044)])?.margin).toBeCloseTo(0.012, 9);
    expect(beside([line, laid([straight(3)], 0.046, -0.044)])?.margin).toBeCloseTo(0.012, 9);
    expect(beside([line, laid([straight(3)], 0.2)])).toBeUndefined();
    expect(beside([line])).toBeUndefined();
  });

  it('crosses on the level', () => {
    expect(beside([line, laid([straight(3)], -1, 0, 1, 1)])).toBeUndefined();
  });

  it('has ended: a body of 220 mm is past it 110 mm on', () => {
    const short = laid([straight(1.5)], 0.046);
    expect(beside([line, short], 1.6)?.margin).toBeCloseTo(0.012, 9);
    expect(beside([line, short], 1.62)).toBeNull();
  });

  it('is too tight for anything to stand on', () => {
    expect(beside([line, laid([straight(2), arc(0.07, 0.5)], 0.046)])).toBeNull();
  });
});

describe('a siding out of a turnout of 914 mm, parallel at 60 mm', () => {
  // Two arcs of 914 mm move it aside by 2 x 914 x (1 - cos b) = 60 mm: cos b = 0.967177, b = 0.25691.
  const b = Math.acos(1 - 0.06 / (2 * 0.914));
  const siding = laid([straight(0.6), arc(0.914, b), arc(0.914, -b), straight(1.6)], 0);
  const run = (track: Track) =>
    assessRun(
      madeUpTrial(track, [coach], passing(0.2, track.length - 0.15, 0.01), {
        surroundings: { tracks: [line, siding], deckDepth: 0.017 },
      }),
      [risk],
    )[0];

  it.each([
    ['the line', line],
    ['the siding', siding],
  ])('says nothing where they meet and part, and 60 - 34 = 26 mm beyond, seen from %s', (_, track) => {
    const { margins, chainages } = run(track);
    const within = (from: number, to: number) =>
      [...margins].filter((_m, i) => chainages[i] > from && chainages[i] < to);
    for (const margin of within(0.2, 0.9)) expect(margin).toBeNaN();
    for (const margin of within(1.4, 2.4)) expect(margin).toBeCloseTo(0.026, 9);
    // While one still swings into line the other is nearer, but never so near that trains touch.
    for (const margin of within(0.9, 1.4)) if (!Number.isNaN(margin)) expect(margin).toBeGreaterThan(0.015);
  });

  it('says the same when met the other way', () => {
    const { margins, chainages } = run(reverseTrack(siding));
    const { length } = siding;
    margins.forEach((margin, i) => {
      const chainage = length - chainages[i];
      if (chainage > 0.2 && chainage < 0.9) expect(margin).toBeNaN();
      if (chainage > 1.4 && chainage < 2.4) expect(margin).toBeCloseTo(0.026, 9);
    });
  });
});

describe('passing on curves', () => {
  const bends = (radius: number, apart: number, hand: number): Track[] => [
    laid([straight(0.8), arc(radius, hand), straight(0.5)], 0),
    laid([straight(0.8), arc(radius - hand * apart, hand), straight(0.5)], apart),
  ];
  const margins = (tracks: readonly Track[], track: Track) =>
    assessRun(
      madeUpTrial(track, [coach, coach], passing(0.55, track.length - 0.2, 0.03), {
        surroundings: { tracks, deckDepth: 0.017 },
      }),
      [risk],
    )[0].margins;

  it('is the mirror image’s, and 12 mm on the first straight', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        fc.double({ min: 0.046, max: 0.07, noNaN: true }),
        (radius, apart) => {
          const left = bends(radius, apart, 1);
          const right = [
            laid([straight(0.8), arc(radius, -1), straight(0.5)], 0),
            laid([straight(0.8), arc(radius - apart, -1), straight(0.5)], -apart),
          ];
          const one = margins(left, left[0]);
          const other = margins(right, right[0]);
          one.forEach((margin, i) => {
            // Which of two equally near points a foot is sought from may differ, within what points 5 mm apart leave open.
            expect(other[i]).toBeCloseTo(margin, 7);
          });
          expect(one[1]).toBeCloseTo(apart - 0.034, 9);
        },
      ),
      { numRuns: 10 },
    );
  });

  it('comes to the same seen from either track: the least of each', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 1.5, noNaN: true }), (radius) => {
        const tracks = bends(radius, 0.055, 1);
        const least = tracks.map((track) => Math.min(...margins(tracks, track)));
        // The sweep errs to the wide side by what the throw changes in two points, 10 mm, where a curve begins; frames are 30 mm apart.
        expect(Math.abs(least[0] - least[1])).toBeLessThan(0.001);
        expect(least[0]).toBeLessThan(0.055 - 0.034);
      }),
      { numRuns: 10 },
    );
  });
});

describe('a track that leads off and goes on as another', () => {
  // 25° round 500 mm, as one track or cut where it is more than a gauge and less than a vehicle's width away: 500 · versine 20° = 30.2 mm.
  const radius = 0.5;
  const degree = Math.PI / 180;
  const turned = 20 * degree;
  const whole = makeTrack({
    start: { x: 1, y: 0, heading: 0 },
    elements: [arc(radius, 25 * degree), straight(1)],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });
  const stem = laid([arc(radius, turned)], 0, 0, 1);
  const rest = makeTrack({
    start: { x: 1 + radius * Math.sin(turned), y: radius * (1 - Math.cos(turned)), heading: turned },
    elements: [arc(radius, 5 * degree), straight(1)],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });

  it('is beside nowhere: what stands on it short of its fouling point fouls, wherever the file cuts it', () => {
    expect(beside([line, whole], 1.235)).toBeUndefined();
    expect(beside([line, stem, rest], 1.235)).toBeUndefined();
    expect(beside([line, stem, reverseTrack(rest)], 1.235)).toBeUndefined();
  });

  it('is another track where the two do not meet', () => {
    // A gap of 3 mm is no joint: then the rest is a track of its own that begins 30.2 mm from the line. From the side of the vehicle
    // 6 mm further on it is 6 sin 20° + 13.2 cos 20° = 14.5 mm off, half a vehicle is 17 mm.
    const away = makeTrack({ ...rest.spec, start: { ...rest.spec.start, x: rest.spec.start.x + 0.003 } });
    expect(beside([line, stem, away], 1.235)?.margin).toBeLessThan(-0.002);
  });
});

describe('a road that branches off near another turnout', () => {
  // Out of the line at 500 mm to the left and at 720 mm to the right, both round 914 mm. There the first lies 914 - √(914² - 220²) = 26.9 mm off
  // the line: more than the gauge, less than the 34 mm of two half bodies. Whoever stands there has not cleared the first turnout.
  const out = (x: number, hand: 1 | -1): Track => laid([arc(0.914, hand * 0.3), straight(1.5)], 0, 0, x);
  const [first, second] = [out(0.5, 1), out(0.72, -1)];
  const margins = (track: Track, tracks: readonly Track[]) =>
    assessRun(
      madeUpTrial(track, [coach], passing(0.15, track.length - 0.15, 0.01), {
        surroundings: { tracks, deckDepth: 0.017 },
      }),
      [risk],
    )[0];

  it('is no stranger to it: no train is said to be met where neither road is clear', () => {
    for (const tracks of [
      [line, first, second],
      [second, first, line],
      [line, reverseTrack(second), first],
    ]) {
      expect(margins(first, tracks)).toBeUndefined();
    }
  });

  it('leaves a road that runs along the first beyond to be met', () => {
    // From 600 mm behind the first one's curve on, 46 mm from it: 46 - 34 mm between coaches.
    const beyond = makeTrack({
      start: {
        x: 0.5 + 0.914 * Math.sin(0.3) + Math.cos(0.3) * 0.6 + Math.sin(0.3) * 0.046,
        y: 0.914 * (1 - Math.cos(0.3)) + Math.sin(0.3) * 0.6 - Math.cos(0.3) * 0.046,
        heading: 0.3,
      },
      elements: [straight(0.9)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    expect(margins(first, [line, first, second, beyond])?.worst?.margin).toBeCloseTo(0.012, 9);
  });
});
