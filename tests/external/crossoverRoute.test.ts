import { describe, expect, it } from 'vitest';
import { routePath } from '../../src/core/dynamics/index.ts';
import { jointGeometry, placeCoupled, placeVehicle } from '../../src/core/stock/index.ts';
import { branchStart, makeTrack, reverseTrack, straight, trackPoint, turnout } from '../../src/core/track/index.ts';
import { sampleVehicle } from '../core/stock/samples.ts';

/** Full size, m. */
const gauge = 1.435;
const length = 260;
const toe = 60;

/** Two parallel straight tracks joined by a crossover of two turnouts whose curves meet half-way, run from one track to the other. */
function crossing(radius: number, spacing: number) {
  const road = (y: number) =>
    makeTrack({
      start: { x: 0, y, heading: 0 },
      elements: [straight(length)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
  const [near, far] = [road(0), road(spacing)];
  const turned = Math.acos(1 - spacing / (2 * radius));
  const laid = turnout({ hand: 'left', gauge, radius, front: 0, heel: 0 });
  const half = (main: typeof near, at: number) => {
    const { start, elements, held } = branchStart(main, at, laid);
    const curve = elements[elements.length - 1];
    const whole = { ...curve, length: radius * turned };
    return makeTrack({ start, elements: [whole], profile: { points: [{ chainage: 0, height: 0 }], held: [held] } });
  };
  const along = 2 * radius * Math.sin(turned);
  const [out, home] = [half(near, toe), half(reverseTrack(far), length - toe - along)];
  const { path, misfits } = routePath([
    { track: near, from: 0, to: toe },
    { track: out, from: 0, to: out.length },
    { track: home, from: home.length, to: 0 },
    { track: far, from: toe + along, to: length },
  ]);
  return { path, misfits, along };
}

describe('a crossover run over as a route of four tracks', () => {
  it('closes, parallel, on the other track', () => {
    const { path, misfits } = crossing(190, 8);
    expect(misfits).toEqual([]);
    const end = trackPoint(path.track, path.track.length);
    expect(end.y).toBeCloseTo(8, 9);
    expect(end.heading).toBeCloseTo(0, 12);
  });

  it.each([
    [190, 8],
    [300, 10],
    [150, 6],
  ])('of two curves of %f m between tracks %f m apart is √(d(4R - d)) long', (radius, spacing) => {
    // Surveying courses: the length of a reverse curve of equal radii between parallel tangents; from memory.
    expect(crossing(radius, spacing).along).toBeCloseTo(Math.sqrt(spacing * (4 * radius - spacing)), 9);
  });
});

describe('two coaches of 26.4 m over buffers, bogies 19 m apart, on the reverse curve of a crossover', () => {
  const buffers = { spacing: 1.75, height: 1.05, headWidth: 0.6, headHeight: 0.35, length: 0.5 };
  const coupling = { pivotInset: 0.3, reach: 0.8 };
  const coach = sampleVehicle({ pivotSpacing: 19, overhang: 3.2, buffers, coupling }, { gauge });

  /** Greatest sideways distance of the ends of two such coaches that face each other, m. */
  function offset(radius: number): number {
    const { path } = crossing(radius, 5);
    let most = 0;
    for (let s = 60; s < 200; s += 0.1) {
      const leading = placeVehicle(path.track, coach, s);
      const trailing = placeVehicle(path.track, coach, placeCoupled(path.track, coach, coach, s));
      most = Math.max(most, Math.abs(jointGeometry(coach, coach, leading, trailing).bufferLateral[0]));
    }
    return most;
  }

  // End throw (L² - a²)/8R to one side and to the other: 0.560, 0.442 and 0.280 m on 150, 190 and 300 m, worked out by hand.
  it.each([
    [150, 0.56],
    [190, 0.442],
    [300, 0.28],
  ])('on %f m stand %f m aside', (radius, expected) => {
    expect(Math.abs(offset(radius) / expected - 1)).toBeLessThan(0.03);
  });

  it('keep within the 300 mm of a training page on buffer locking on 300 m, and not on 190 m', () => {
    // A British training page (trainweb.us, railway engineering, buffer locking): to be laid out anew when the ends stand more than 300 mm aside.
    expect(offset(300)).toBeLessThan(0.3);
    expect(offset(190)).toBeGreaterThan(0.3);
  });
});
