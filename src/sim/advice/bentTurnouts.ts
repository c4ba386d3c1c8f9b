import { plannedHeight } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { profileHeights, type SceneTrack, startTurnout, trackLengthMm } from '../../scene/index.ts';
import type { CompiledScene } from '../types.ts';
import type { AdviceEdit, BentTurnoutFact } from './types.ts';
import { curveLengthsMm } from './verticalCurves.ts';

/** Heights off a plane by less than this are none, m: a sheet of paper under a sleeper. */
const flat = 1e-4;

/** Places looked at over a turnout. */
const places = 24;

/** Vertical curves end this far short of a turnout they are moved away from, mm: beyond its joints. */
const clearMm = 10;

/** One fact for each turnout whose main track, as planned, bends up or down under it. */
export function bentTurnouts({ scene, tracks }: CompiledScene): BentTurnoutFact[] {
  return scene.tracks.flatMap((branch): BentTurnoutFact[] => {
    const turnout = startTurnout(branch);
    if (turnout === null || !('branchOf' in branch.start)) return [];
    const { branchOf, atMm, towards } = branch.start;
    const track = tracks.get(branchOf);
    const main = scene.tracks.find(({ id }) => id === branchOf);
    if (track === undefined || main === undefined) return [];
    const front = atMm / 1000;
    const [from, to] = towards === 'end' ? [front, front + turnout.through] : [front - turnout.through, front];
    const { off, chainage } = offPlane(track, from, to);
    if (off < flat) return [];
    return [
      {
        kind: 'bent-turnout',
        trackId: branchOf,
        chainage,
        from,
        to,
        weight: 'near',
        value: off,
        limit: 0,
        edit: movedAway(main, from * 1000, to * 1000),
        branch: branch.id,
      },
    ];
  });
}

/** How far, and where, planned heights leave the line between two of their places, m. */
function offPlane(track: Track, from: number, to: number): { readonly off: number; readonly chainage: number } {
  const [first, last] = [plannedHeight(track, from), plannedHeight(track, to)];
  let most = { off: 0, chainage: (from + to) / 2 };
  for (let k = 1; k < places; k++) {
    const chainage = from + ((to - from) * k) / places;
    const off = Math.abs(plannedHeight(track, chainage) - first - ((last - first) * k) / places);
    if (off > most.off) most = { off, chainage };
  }
  return most;
}

/** The one grade point whose curve reaches into a stretch (mm), moved the shorter way out of it; null where several do or there is no room. */
function movedAway(track: SceneTrack, fromMm: number, toMm: number): AdviceEdit | null {
  const points = profileHeights(track);
  const halves = curveLengthsMm(track).map((lengthMm) => lengthMm / 2);
  const inside = points.flatMap(({ atMm }, point) =>
    point > 0 && point < points.length - 1 && atMm + halves[point] > fromMm && atMm - halves[point] < toMm
      ? [point]
      : [],
  );
  if (inside.length !== 1) return null;
  const [point] = inside;
  const half = halves[point];
  const least = points[point - 1].atMm + (halves[point - 1] ?? 0) + half;
  const most = (points[point + 1]?.atMm ?? trackLengthMm(track)) - (halves[point + 1] ?? 0) - half;
  const ways = [fromMm - clearMm - half, toMm + clearMm + half].filter((atMm) => atMm > least && atMm < most);
  const by = (atMm: number): number => Math.abs(atMm - points[point].atMm);
  const [nearest] = ways.sort((a, b) => by(a) - by(b));
  return nearest === undefined ? null : { kind: 'grade-point', point, atMm: Math.round(nearest) };
}
