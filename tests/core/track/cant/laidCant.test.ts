import { describe, expect, it } from 'vitest';
import {
  arc,
  type CantPoint,
  laidCant,
  makeTrack,
  reverseTrack,
  straight,
  type Track,
  transition,
} from '../../../../src/core/track/index.ts';

/** A straight of 0.5 m, an easement of 0.3 m, a left-hand arc of 1 m: 1.8 m, with cant as given. */
const lineWith = (points?: readonly CantPoint[]): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [straight(0.5), transition(0.3, 0, 2), arc(0.5, 2)],
    profile: { points: [{ chainage: 0, height: 0 }] },
    ...(points && { cant: { points, lever: 0 } }),
  });

const eased = [
  { chainage: 0.5, cant: 0 },
  { chainage: 0.8, cant: 0.06 },
];

describe('cant as laid', () => {
  it('has nothing to say of a track that is level across', () => {
    expect(laidCant(lineWith())).toBeNull();
  });

  it('is greatest where the run-in ends, and twists by its height over its length', () => {
    const laid = laidCant(lineWith(eased));
    expect(laid?.most.chainage).toBeCloseTo(0.8, 12);
    expect(laid?.most.cant).toBeCloseTo(0.06, 12);
    expect(laid?.steepest?.twist).toBeCloseTo(0.2, 12);
    expect([laid?.steepest?.from, laid?.steepest?.to]).toEqual([0.5, 0.8]);
    expect(laid?.offEasement).toEqual([]);
  });

  it('has no run-in where the cant never changes', () => {
    const laid = laidCant(lineWith([{ chainage: 0.2, cant: -0.03 }]));
    expect(laid).toEqual({ most: { chainage: 0, cant: -0.03 }, steepest: null, offEasement: [] });
  });

  it('is found between rows and by its amount, whichever way the track leans', () => {
    const laid = laidCant(
      lineWith([
        { chainage: 0.3, cant: 0.02 },
        { chainage: 0.31, cant: -0.05 },
        { chainage: 0.4, cant: 0.04 },
      ]),
    );
    expect(laid?.most.chainage).toBeCloseTo(0.31, 12);
    expect(laid?.most.cant).toBeCloseTo(-0.05, 12);
    expect(laid?.steepest?.twist).toBeCloseTo(-7, 9);
  });

  it('counts the cant that a cut-off run-in has reached at the end of the track', () => {
    const laid = laidCant(
      lineWith([
        { chainage: 1.6, cant: 0 },
        { chainage: 2, cant: 0.04 },
      ]),
    );
    expect(laid?.most.chainage).toBeCloseTo(1.8, 12);
    expect(laid?.most.cant).toBeCloseTo(0.02, 12);
    expect(laid?.steepest?.to).toBeCloseTo(1.8, 12);
  });

  it('names the parts of a run-in on the straight and in the arc, not that on the easement', () => {
    const laid = laidCant(
      lineWith([
        { chainage: 0.4, cant: 0 },
        { chainage: 0.9, cant: 0.05 },
      ]),
    );
    const stretches = laid?.offEasement.map(({ from, to }) => [from, to]) ?? [];
    expect(stretches).toHaveLength(2);
    [0.4, 0.5, 0.8, 0.9].forEach((place, i) => {
      expect(stretches.flat()[i]).toBeCloseTo(place, 12);
    });
  });

  it('mirrors with the track: chainages from the other end, cant of other sign', () => {
    const there = laidCant(lineWith(eased));
    const back = laidCant(reverseTrack(lineWith(eased)));
    // Full cant from 0.8 m on: seen from the end it is there at once.
    expect(back?.most.cant).toBeCloseTo(-(there?.most.cant ?? Number.NaN), 12);
    expect(back?.steepest?.from).toBeCloseTo(1, 12);
    expect(back?.steepest?.twist).toBeCloseTo(there?.steepest?.twist ?? Number.NaN, 9);
  });
});
