import { cos, hypot, sin } from '../../core/math/index.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { splicedFates } from './chainageMap.ts';
import { type CornerRun, cornerRun, laidAnew, type Point, poseAt } from './cornerRun.ts';
import { elementName, trackOf } from './parts.ts';
import { putAlignment } from './putTrack.ts';
import { tidy } from './tidy.ts';

function runWith(scene: Scene, track: SceneTrack, arc: number): { readonly run: CornerRun; readonly corner: number } {
  const run = cornerRun(scene, track, arc);
  const corner = run?.corners.findIndex((one) => one.arc === arc) ?? -1;
  if (run === null || corner < 0) {
    throw new RangeError(`${elementName(track, arc)} is no bend between two straights.`);
  }
  return { run, corner };
}

/** Where the straights beside a bend meet, mm; null when it is no bend between straights. */
export function cornerPlace(
  scene: Scene,
  track: SceneTrack,
  arc: number,
): { readonly xMm: number; readonly yMm: number } | null {
  const run = cornerRun(scene, track, arc);
  const corner = run?.corners.findIndex((one) => one.arc === arc) ?? -1;
  if (run === null || corner < 0) return null;
  const [x, y] = run.points[corner + 1];
  return { xMm: x * 1000, yMm: y * 1000 };
}

/**
 * The scene with the corner of a bend (the arc by its index) moved: straights, angles and, where the track begins with the first of them, its heading follow; radii and easements
 * stay, and so do the other corners and the end of the stretch. Where something else comes before the first straight, a turnout too, its corner moves along that
 * straight. Throws RangeError that says what is short and by how much.
 */
export function moveCorner(scene: Scene, trackId: string, arc: number, to: { xMm: number; yMm: number }): Scene {
  const track = trackOf(scene, trackId);
  const { run, corner } = runWith(scene, track, arc);
  const wanted: Point = [to.xMm / 1000, to.yMm / 1000];
  const fixed = corner === 0 && firstIsHeld(track, run);
  const points = run.points.with(corner + 1, fixed ? along(scene, track, run, wanted) : wanted);
  return relaid(scene, track, run, points, run.bends);
}

/** Whether something before the first straight of a run, an element or a turnout, says where it lies. */
const firstIsHeld = ({ start }: SceneTrack, { straights }: CornerRun): boolean =>
  straights[0] > 0 || 'branchOf' in start;

/** How far a place lies off the line that the corner of a bend (the arc by its index) has to keep to, m; 0 for a corner that goes anywhere. */
export function offCornerLine(scene: Scene, track: SceneTrack, arc: number, to: { xMm: number; yMm: number }): number {
  const { run, corner } = runWith(scene, track, arc);
  if (corner !== 0 || !firstIsHeld(track, run)) return 0;
  const wanted: Point = [to.xMm / 1000, to.yMm / 1000];
  const kept = along(scene, track, run, wanted);
  return hypot(kept[0] - wanted[0], kept[1] - wanted[1]);
}

/** The nearest place to `wanted` on the line of the first straight, which what comes before it holds. */
function along(scene: Scene, track: SceneTrack, run: CornerRun, [x, y]: Point): Point {
  const pose = poseAt(scene, track, run.straights[0]);
  const by = (x - pose.x) * cos(pose.heading) + (y - pose.y) * sin(pose.heading);
  return [pose.x + by * cos(pose.heading), pose.y + by * sin(pose.heading)];
}

/** What may be said anew of a bend between two straights, mm. */
export interface BendChange {
  readonly radiusMm?: number;
  readonly easeInMm?: number;
  readonly easeOutMm?: number;
}

/**
 * The scene with another radius or other easements of a bend (the arc by its index): the straights beside it give or take what it needs, and everything else
 * stays where it is. An easement that is not there cannot be made long here: put it in first. Throws RangeError that says what is short.
 */
export function setBend(scene: Scene, trackId: string, arc: number, change: BendChange): Scene {
  const track = trackOf(scene, trackId);
  const { run, corner } = runWith(scene, track, arc);
  const { radius, easeIn, easeOut } = run.bends[corner];
  const metres = (mm: number | undefined, usual: number): number => (mm === undefined ? usual : mm / 1000);
  const bend = {
    radius: metres(change.radiusMm, radius),
    easeIn: metres(change.easeInMm, easeIn),
    easeOut: metres(change.easeOutMm, easeOut),
  };
  if (!(bend.radius > 0 && bend.easeIn >= 0 && bend.easeOut >= 0)) {
    throw new RangeError(`${elementName(track, arc)} needs a radius of more than 0.`);
  }
  return relaid(scene, track, run, run.points, run.bends.with(corner, bend));
}

function relaid(
  scene: Scene,
  track: SceneTrack,
  run: CornerRun,
  points: readonly Point[],
  bends: CornerRun['bends'],
): Scene {
  const { alignment, start } = laidAnew(track, run, points, bends);
  const next = putAlignment(scene, track.id, alignment, splicedFates(alignment.length, 0, 0, 0));
  if (firstIsHeld(track, run) || 'branchOf' in track.start) return next;
  const begun = { ...track.start, headingDeg: tidy((start.heading * 180) / Math.PI) };
  return { ...next, tracks: next.tracks.map((one) => (one.id === track.id ? { ...one, start: begun } : one)) };
}
