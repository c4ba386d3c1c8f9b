import { newPlacement, placeVehicle, standTrain } from '../../src/core/stock/index.ts';
import type { Placement, Vehicle } from '../../src/core/stock/types.ts';
import { arc, helix, makeTrack, straight, transition } from '../../src/core/track/index.ts';
import type { Track } from '../../src/core/track/types.ts';
import type { Solid } from '../../src/stage/solid/solid.ts';
import type { DrawnTrack } from '../../src/stage/way/drawnTrack.ts';
import { drawnTrack } from '../../src/stage/way/drawnTrack.ts';
import { wayMeasures } from '../../src/stage/way/measures.ts';
import { sampleCoupling, sampleVehicle } from '../core/stock/samples.ts';

/** 16.5 mm gauge on 9 mm of deck, 3 mm of underlay and 5 mm of track. */
export const measures = wayMeasures(0.0165, { thicknessMm: 9, underlayMm: 3, trackMm: 5 });

/** A circle of 600 mm radius turning left from the origin, level at 100 mm. */
export const levelCircle = (): Track =>
  makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [arc(0.6, 2 * Math.PI - 0.01)],
    profile: { points: [{ chainage: 0, height: 0.1 }] },
  });

/** Two turns of a falling helix with a support every 300 mm, one of them high; it starts at `x` (m) east. */
export function fallingHelix(x = 0): DrawnTrack {
  const length = 2 * 2 * Math.PI * 0.6;
  const supports = [];
  for (let i = 0; i * 0.3 < length; i++) supports.push({ chainage: i * 0.3, departure: i === 5 ? 0.0025 : 0 });
  return drawnTrack(
    'helix',
    makeTrack({
      start: { x, y: 0, heading: 0 },
      elements: [helix(0.6, 2)],
      profile: {
        points: [
          { chainage: 0, height: 0.26 },
          { chainage: length, height: 0.08 },
        ],
        strip: { supports, hinges: [1.5] },
      },
    }),
  );
}

/** Straight, easement, curve, with a grade and a vertical curve. */
export const windingTrack = (): Track =>
  makeTrack({
    start: { x: 0.2, y: -0.1, heading: 0.4 },
    elements: [straight(0.8), transition(0.3, 0, -1 / 0.6), arc(0.6, -1.5), straight(0.6)],
    profile: {
      points: [
        { chainage: 0, height: 0.05 },
        { chainage: 1, height: 0.05, curve: { length: 0.4 } },
        { chainage: 2.4, height: 0.092 },
      ],
    },
  });

/** A wagon of 80 mm with buffers, its head off its height by `headOff` m. */
export const bufferedWagon = (headOff = 0, change: Partial<Vehicle> = {}): Vehicle => {
  const buffers = { spacing: 0.02, height: 0.0122, headWidth: 0.0052, headHeight: 0.004, length: 0.006 };
  const end = {
    coupling: sampleCoupling({ kind: 'hook-and-bar', reach: 0.017, pivotInset: 0.0085, headHeight: 0.009 + headOff }),
    buffers,
  };
  return {
    ...sampleVehicle({ pivotSpacing: 0.04, overhang: 0.02, bogies: false }),
    kind: 'wagon',
    front: end,
    rear: end,
    ...change,
  };
};

/** A train standing on a track with its first vehicle's origin at a chainage, m. */
export function standing(track: Track, vehicles: readonly Vehicle[], at: number): Placement[] {
  const chainages = standTrain(track, vehicles, at);
  return vehicles.map((vehicle, i) => placeVehicle(track, vehicle, chainages[i], newPlacement()));
}

/** Vertices of a solid as triples. */
export function vertices(solid: Pick<Solid, 'position'>): [number, number, number][] {
  const list: [number, number, number][] = [];
  for (let i = 0; i < solid.position.length; i += 3) {
    list.push([solid.position[i], solid.position[i + 1], solid.position[i + 2]]);
  }
  return list;
}

/** Volume that a solid's triangles enclose, m³: positive when they face outward. */
export function enclosedVolume(solid: Solid): number {
  const at = vertices(solid);
  let six = 0;
  for (let i = 0; i < solid.index.length; i += 3) {
    const [a, b, c] = [at[solid.index[i]], at[solid.index[i + 1]], at[solid.index[i + 2]]];
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

/** Least and greatest of each axis. */
export function bounds(points: readonly (readonly number[])[]): { low: number[]; high: number[] } {
  const axes = [0, 1, 2];
  return {
    low: axes.map((axis) => Math.min(...points.map((point) => point[axis]))),
    high: axes.map((axis) => Math.max(...points.map((point) => point[axis]))),
  };
}
