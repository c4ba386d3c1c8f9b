import { cos } from '../../core/math/index.ts';
import {
  type Envelope,
  lengthOverBuffers,
  type Road,
  standsClearFrom,
  sweptKinds,
  sweptWidth,
  type Vehicle,
} from '../../core/stock/index.ts';
import { reverseTrack, routeTrack, type Track, trackPoint } from '../../core/track/index.ts';
import { type SceneTrack, shapeScaleOf, startTurnout, straightSpacingFor } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';
import { collectionOf } from './collection.ts';
import type { FoulingPointFact, StandsClear } from './types.ts';

/** Steps along a road, and between the places a vehicle is swept at, in gauges: 10 mm in H0, over which a curve of 400 mm bends by 0.03 mm. */
const stepInGauges = 0.6;

/** Places are found to this, m. */
const tolerance = 1e-4;

/** Two like reaches meet where middles are (1 + cos α)/2 of both apart: this share of it at a crossing of 37°, more at any that is built. */
const slanting = 0.9;

/** A road is looked at for this far beyond its turnout, in gauges: 2.5 m in H0, where a crossing of 1 in 20 is clear after a metre. */
const farInGauges = 150;

/** Tracks whose ends are this near are one line, m. */
const joint = 0.002;

/** Tracks that one road may run over one after the other: a crossover, and the line it leads to. */
const mostTracks = 4;

/** The last answer is kept with each branch, while it, its main track, the tracks its road goes on over and the collection are the very same. */
const known = new WeakMap<Track, { readonly of: readonly unknown[]; readonly fact: FoulingPointFact }>();

/** Where a vehicle stands clear of the other road of a turnout, on either: one fact for each turnout of the file. */
export function foulingPoints({ scene, tracks }: CompiledScene): FoulingPointFact[] {
  const collection = collectionOf(scene);
  const { vehicles, longest } = collection;
  const gauge = scene.scale.gaugeMm / 1000;
  const spacing = straightSpacingFor(shapeScaleOf(scene.scale), 'line').mm / 1000;
  const steps = { step: stepInGauges * gauge, tolerance, settled: lengthOverBuffers(longest) };
  const kinds = sweptKinds(vehicles);
  const touching = envelopeOf(kinds, steps.step, 0);
  const apart = envelopeOf(kinds, steps.step, spacing);
  return scene.tracks.flatMap((file): FoulingPointFact[] => {
    const turnout = startTurnout(file);
    const branch = tracks.get(file.id);
    if (turnout === null || branch === undefined || !('branchOf' in file.start)) return [];
    const { branchOf, atMm, towards } = file.start;
    const laid = tracks.get(branchOf);
    if (laid === undefined) return [];
    const main = towards === 'end' ? laid : reverseTrack(laid);
    const toe = towards === 'end' ? atMm / 1000 : laid.length - atMm / 1000;
    const most = Math.min(toe, 2 * steps.settled);
    const back = most > joint ? most : 0;
    const beyond = roadFrom(scene.tracks, tracks, file, branch);
    const of = [collection, gauge, spacing, laid, ...beyond.map(({ file: { id } }) => tracks.get(id))];
    const before = known.get(branch);
    if (before !== undefined && before.of.length === of.length && before.of.every((part, k) => part === of[k])) {
      return [before.fact];
    }
    const diverging = routeTrack([
      ...(back > 0 ? [{ track: main, from: toe - back, to: toe }] : []),
      ...beyond.map(({ track, from }) => ({ track, from, to: track.length })),
    ]).track;
    const own = (track: Track, start: number): Road => ({
      track,
      from: start + turnout.lead,
      to: Math.min(track.length, start + turnout.through + farInGauges * gauge),
    });
    const roads = [own(main, toe), own(diverging, back)] as const;
    const places = ([0, 1] as const).map((standing) => {
      const [road, other, start] = [roads[standing], roads[1 - standing], standing === 0 ? toe : back];
      const hit = standsClearFrom(road, other, touching, steps);
      // Where bodies touch the norm is not kept either.
      const clear = hit === null ? null : standsClearFrom({ ...road, from: hit }, other, apart, steps);
      return { clear: clear === null ? null : clear - start, hit: hit === null ? null : hit - start };
    });
    const onMain = (along: number | null): number | null =>
      along === null ? null : towards === 'end' ? atMm / 1000 + along : atMm / 1000 - along;
    const onBranch = (along: number | null): number | null => (along === null || along > branch.length ? null : along);
    const [alongMain, alongBranch] = places;
    const stands: readonly [StandsClear, StandsClear] = [
      { trackId: branchOf, clear: onMain(alongMain.clear), hit: onMain(alongMain.hit) },
      { trackId: file.id, clear: onBranch(alongBranch.clear), hit: onBranch(alongBranch.hit) },
    ];
    const chainage = stands[0].clear ?? stands[0].hit ?? atMm / 1000;
    const fact: FoulingPointFact = {
      kind: 'fouling-point',
      trackId: branchOf,
      chainage,
      from: Math.min(atMm / 1000, chainage),
      to: Math.max(atMm / 1000, chainage),
      weight: 'note',
      value: alongMain.clear ?? Number.POSITIVE_INFINITY,
      limit: spacing,
      edit: null,
      branch: file.id,
      stands,
    };
    known.set(branch, { of, fact });
    return [fact];
  });
}

/** What vehicles sweep to either side of a road, each as if it were `spacing` wide (m) where it is less; those too long for a curve left out. */
function envelopeOf(kinds: readonly Vehicle[], step: number, spacing: number): Envelope {
  return {
    least: slanting * kinds.reduce((most, { bodyWidth }) => Math.max(most, bodyWidth), spacing),
    reach: (track, chainage, left) =>
      kinds.reduce((most, vehicle) => {
        const swept = sweptTo(track, vehicle, chainage, left, step);
        return Math.max(most, swept + Math.max(0, spacing - vehicle.bodyWidth) / 2);
      }, 0),
  };
}

/** 0 for a vehicle that is too long to stand there. */
function sweptTo(track: Track, vehicle: Vehicle, chainage: number, left: boolean, step: number): number {
  try {
    const swept = sweptWidth(track, vehicle, chainage, step);
    return left ? swept.left : swept.right;
  } catch (error) {
    if (error instanceof RangeError) return 0;
    throw error;
  }
}

/** One track of a road, the way it is gone over, from one of its chainages on. */
interface Part {
  readonly file: SceneTrack;
  readonly reversed: boolean;
  readonly track: Track;
  readonly from: number;
}

/** A branch with the tracks that go on from its end: of a crossover its other half and the line that leads to. */
function roadFrom(
  files: readonly SceneTrack[],
  tracks: ReadonlyMap<string, Track>,
  file: SceneTrack,
  branch: Track,
): Part[] {
  const road: Part[] = [];
  const passed = new Set<string>();
  let part: Part | null = { file, reversed: false, track: branch, from: 0 };
  while (part !== null && passed.size < mostTracks) {
    passed.add(part.file.id);
    road.push(part);
    part = goesOn(files, tracks, part, passed);
  }
  return road;
}

/** The track that goes on where one ends: the one that begins, or ends, there in its direction, or the line that a branch run backwards comes to. */
function goesOn(
  files: readonly SceneTrack[],
  tracks: ReadonlyMap<string, Track>,
  { file: { start }, reversed, track: ended }: Part,
  passed: ReadonlySet<string>,
): Part | null {
  const end = trackPoint(ended, ended.length);
  for (const file of files) {
    const laid = tracks.get(file.id);
    if (laid === undefined || passed.has(file.id)) continue;
    if (reversed && 'branchOf' in start) {
      if (start.branchOf !== file.id) continue;
      const at = start.atMm / 1000;
      const back = start.towards === 'end';
      const [track, from] = back ? [reverseTrack(laid), laid.length - at] : [laid, at];
      return track.length - from > joint ? { file, reversed: back, track, from } : null;
    }
    for (const back of [false, true]) {
      const track = back ? reverseTrack(laid) : laid;
      const { x, y, z, heading } = trackPoint(track, 0);
      const [dx, dy, dz] = [x - end.x, y - end.y, z - end.z];
      const near = dx * dx + dy * dy + dz * dz <= joint * joint;
      if (near && cos(heading - end.heading) > 0) return { file, reversed: back, track, from: 0 };
    }
  }
  return null;
}
