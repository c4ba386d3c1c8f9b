import fc from 'fast-check';
import type { CantSpec, GradePoint, PlanElement, StripSpec, Track, TrackSpec } from '../../../src/core/track/index.ts';
import { arc, helix, makeTrack, straight, transition } from '../../../src/core/track/index.ts';

/** Model-railway tracks of every kind: radii from 0.2 m, grades to 5 %, supports a few millimetres off. */
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const sign = fc.constantFrom(-1, 1);

export const anyElement: fc.Arbitrary<PlanElement> = fc.oneof(
  between(0.02, 2).map(straight),
  fc.tuple(between(0.2, 3), between(0.05, 3), sign).map(([radius, angle, way]) => arc(radius, way * angle)),
  fc.tuple(between(0.3, 1), between(0.5, 4), sign).map(([radius, turns, way]) => helix(radius, way * turns)),
  fc.tuple(between(0.02, 1.5), between(-4, 4), between(-4, 4)).map(([length, k0, k1]) => transition(length, k0, k1)),
  // Nearly equal curvatures, down to the last bits.
  fc
    .tuple(between(0.1, 3), between(-3, 3), fc.integer({ min: 1, max: 15 }), sign)
    .map(([length, k, digits, way]) => transition(length, k, k + way * 10 ** -digits)),
);

const planLength = (elements: readonly PlanElement[]): number => elements.reduce((sum, { length }) => sum + length, 0);

/** Grade points at rising chainages over `length` with curves that just do not touch. */
function gradePoints(length: number, steps: readonly number[], grades: readonly number[], fill: number): GradePoint[] {
  const total = steps.reduce((sum, step) => sum + step, 0);
  const points: GradePoint[] = [{ chainage: 0, height: 0.1 }];
  steps.forEach((step, i) => {
    const last = points[points.length - 1];
    const run = (length * step) / total;
    points.push({ chainage: last.chainage + run, height: last.height + run * grades[i] });
  });
  return points.map((point, i) => {
    if (i === 0 || i + 1 === points.length) return point;
    const room = Math.min(point.chainage - points[i - 1].chainage, points[i + 1].chainage - point.chainage);
    const curveLength = fill * room * 0.999;
    const change = Math.abs(grades[i] - grades[i - 1]);
    if (curveLength === 0) return point;
    // Alternately by length and by radius.
    if (i % 2 === 0 && change > 1e-6) return { ...point, curve: { radius: curveLength / change } };
    return { ...point, curve: { length: curveLength } };
  });
}

/** Supports over the whole length, and hinges at a support or between with at least two supports to either side. */
function strip(length: number, departures: readonly number[], hingeKind: number, heavy: boolean): StripSpec {
  // At least 100 mm apart: closer, a strip 3 mm off bends as no wood does.
  const count = Math.max(2, Math.min(departures.length, Math.floor(length / 0.1) + 1));
  const span = length / (count - 1);
  const supports = departures.slice(0, count).map((departure, i) => ({ chainage: i * span, departure }));
  const hinges: number[] = [];
  for (let i = 2; i + 2 < count; i += 3) {
    if (hingeKind === 1) hinges.push(i * span);
    if (hingeKind === 2) hinges.push((i - 0.4) * span);
  }
  // A kilogram on supports more than half a metre apart bends 6 mm ply as nobody builds it.
  if (!heavy || span > 0.5) return { supports, hinges };
  // 9 mm ply that becomes 6 mm at some support, a step of 0.3 mm at every joint and a kilogram in the middle of the track.
  return {
    supports,
    hinges,
    steps: hinges.map((chainage) => ({ chainage, rise: 0.0003, over: 0.04 })),
    sections: [
      { from: 0, stiffness: 40, weight: 6 },
      { from: supports[count >> 1].chainage, stiffness: 12, weight: 4 },
    ],
    loads: [{ chainage: length / 2, force: 10 }],
    creep: 0.8,
    clampedEnd: true,
  };
}

/** Cant to 1 mm in 16.5 either way, at places spread over the track and beyond its end; by turning and by packing. */
function cantOver(length: number, cants: readonly number[]): CantSpec {
  const points = cants.map((cant, i) => ({ chainage: ((i - 0.3) * length * 1.2) / cants.length, cant }));
  return { points, lever: cants.length % 2 === 0 ? 0 : 0.00825 };
}

export const anySpec: fc.Arbitrary<TrackSpec> = fc
  .record({
    x: between(-2, 2),
    y: between(-2, 2),
    heading: between(-7, 7),
    elements: fc.array(anyElement, { minLength: 1, maxLength: 6 }),
    steps: fc.array(between(0.2, 1), { minLength: 1, maxLength: 6 }),
    grades: fc.array(between(-0.05, 0.05), { minLength: 6, maxLength: 6 }),
    fill: fc.constantFrom(0, 0.5, 1),
    departures: fc.array(between(-0.003, 0.003), { minLength: 2, maxLength: 20 }),
    bent: fc.boolean(),
    hingeKind: fc.constantFrom(0, 1, 2),
    heavy: fc.boolean(),
    cants: fc.array(between(-0.06, 0.06), { maxLength: 6 }),
  })
  .map(({ x, y, heading, elements, steps, grades, fill, departures, bent, hingeKind, heavy, cants }) => {
    const length = planLength(elements);
    const points = gradePoints(length, steps, grades, fill);
    const profile = bent ? { points, strip: strip(length, departures, hingeKind, heavy) } : { points };
    const cant = cants.length === 0 ? {} : { cant: cantOver(length, cants) };
    return { start: { x, y, heading }, elements, profile, ...cant };
  });

export const anyTrack: fc.Arbitrary<Track> = anySpec.map(makeTrack);

export const anyFraction = between(0, 1);

/** A level track of `elements` from the origin along x. */
export const levelTrack = (...elements: PlanElement[]): Track =>
  makeTrack({ start: { x: 0, y: 0, heading: 0 }, elements, profile: { points: [{ chainage: 0, height: 0 }] } });

/** Whether anything about the track changes within `reach` of `s`: finite differences must keep clear of it. */
export function isNearJoin(track: Track, s: number, reach: number): boolean {
  const places = [0, track.length, ...track.plan.startChainage, ...track.profile.startChainage];
  if (track.cant !== null) places.push(...track.cant.startChainage);
  return places.some((place) => Math.abs(place - s) <= reach);
}
