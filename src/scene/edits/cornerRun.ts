import { atan2, cos, hypot, sin } from '../../core/math/index.ts';
import {
  chainEnd,
  fillet,
  type IntersectionAlignment,
  intersectionAlignment,
  type Pose,
} from '../../core/track/index.ts';
import { elementCurvatures, elementLengthMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { beginOf } from './beginOf.ts';
import { elementName } from './parts.ts';
import { planElement } from './planElements.ts';
import { shortestMm, sized } from './sized.ts';
import { mmText } from './tidy.ts';

type Bend = Parameters<typeof intersectionAlignment>[1][number];
export type Point = readonly [x: number, y: number];

/** A bend between two straights: its arc and, where it has them, its easements, by their indices. */
export interface Corner {
  readonly into: number | null;
  readonly arc: number;
  readonly out: number | null;
}

/**
 * A stretch of straights with a bend between each two, laid by the corners where the straights would meet. `points` (m) are the start of the first
 * straight, the corners, and the end of the last.
 */
export interface CornerRun {
  /** Indices of the straights: one more than corners. */
  readonly straights: readonly number[];
  readonly corners: readonly Corner[];
  readonly points: readonly Point[];
  readonly bends: readonly Bend[];
}

/** A bend turning further than this, rad, has its corner so far out that nobody works by it. */
const mostTurning = (150 * Math.PI) / 180;

/** The run of straights and bends that an element belongs to; null when it belongs to none. */
export function cornerRun(scene: Scene, track: SceneTrack, index: number): CornerRun | null {
  const { alignment } = track;
  for (let first = 0; first < alignment.length; first++) {
    if (alignment[first].kind !== 'straight') continue;
    const straights = [first];
    const corners: Corner[] = [];
    for (
      let next = cornerFrom(track, first + 1);
      next !== null;
      next = cornerFrom(track, straights[straights.length - 1] + 1)
    ) {
      corners.push(next);
      straights.push((next.out ?? next.arc) + 1);
    }
    const last = straights[straights.length - 1];
    if (corners.length > 0 && index >= first && index <= last) return placed(scene, track, straights, corners);
    first = last;
  }
  return null;
}

/** The bend that begins at an element and ends at a straight; null when none does. */
function cornerFrom(track: SceneTrack, index: number): Corner | null {
  const { alignment } = track;
  const into = alignment[index]?.kind === 'transition' ? index : null;
  const at = into === null ? index : index + 1;
  const arc = alignment[at];
  if (arc?.kind !== 'arc' || elementLengthMm(arc) / arc.radiusMm > mostTurning) return null;
  const out = alignment[at + 1]?.kind === 'transition' ? at + 1 : null;
  if (alignment[(out ?? at) + 1]?.kind !== 'straight') return null;
  const own = elementCurvatures(track, at)[0];
  const fits =
    (into === null || (elementCurvatures(track, into)[0] === 0 && elementCurvatures(track, into)[1] === own)) &&
    (out === null || (elementCurvatures(track, out)[0] === own && elementCurvatures(track, out)[1] === 0));
  return fits ? { into, arc: at, out } : null;
}

/** Where an element of a track starts, in plan; the number of elements gives its end. */
export function poseAt(scene: Scene, track: SceneTrack, index: number): Pose {
  return chainEnd(
    beginOf(scene, track),
    track.alignment.slice(0, index).map((_, k) => planElement(track, k)),
  );
}

const ahead = ({ x, y, heading }: Pose, by: number): Point => [x + by * cos(heading), y + by * sin(heading)];

function placed(scene: Scene, track: SceneTrack, straights: readonly number[], corners: readonly Corner[]): CornerRun {
  const bends = corners.map((corner) => bendOfCorner(track, corner));
  const begin = poseAt(scene, track, straights[0]);
  const points: Point[] = [[begin.x, begin.y]];
  corners.forEach((corner, i) => {
    points.push(ahead(poseAt(scene, track, straights[i] + 1), fillet(bends[i], turnOf(track, corner)).tangentIn));
  });
  const end = poseAt(scene, track, straights[straights.length - 1] + 1);
  points.push([end.x, end.y]);
  return { straights, corners, points, bends };
}

function bendOfCorner({ alignment }: SceneTrack, { into, arc, out }: Corner): Bend {
  const radius = (alignment[arc] as { radiusMm: number }).radiusMm / 1000;
  const ease = (index: number | null): number => (index === null ? 0 : elementLengthMm(alignment[index]) / 1000);
  return { radius, easeIn: ease(into), easeOut: ease(out) };
}

/** Turning of a whole bend, rad, left positive. */
function turnOf(track: SceneTrack, { into, arc, out }: Corner): number {
  const parts = [into, arc, out].flatMap((index) => (index === null ? [] : planElement(track, index)));
  return parts.reduce(
    (sum, { length, startCurvature, endCurvature }) => sum + (length * (startCurvature + endCurvature)) / 2,
    0,
  );
}

/**
 * The elements of a track laid anew through other points, or with other bends. Only lengths, angles, hands and radii change. Throws
 * RangeError that says what is short, and by how much.
 */
export function laidAnew(
  track: SceneTrack,
  run: CornerRun,
  points: readonly Point[],
  bends: readonly Bend[],
): { readonly alignment: SceneTrack['alignment']; readonly start: Pose } {
  const solved: IntersectionAlignment = intersectionAlignment(points, bends);
  const lacking = solved.shortfalls[0];
  if (lacking !== undefined) {
    const { where, number, missing } = lacking;
    if (where === 'corner') {
      const name = elementName(track, run.corners[number - 1].arc);
      const degrees = Math.round((missing * 1800) / Math.PI) / 10;
      throw new RangeError(`The easements of ${name} turn ${degrees}° further than this corner does.`);
    }
    throw new RangeError(
      `${elementName(track, run.straights[number - 1])} is ${mmText(missing * 1000)} too short for its bends.`,
    );
  }
  const alignment = [...track.alignment];
  const lengths = points.slice(1).map(([x, y], i) => 1000 * hypot(x - points[i][0], y - points[i][1]));
  run.straights.forEach((index, i) => {
    const used = 1000 * ((solved.fillets[i - 1]?.tangentOut ?? 0) + (solved.fillets[i]?.tangentIn ?? 0));
    const left = lengths[i] - used;
    if (left < shortestMm) {
      throw new RangeError(`${elementName(track, index)} is ${mmText(shortestMm - left)} too short for its bends.`);
    }
    alignment[index] = sized(alignment[index], left);
  });
  let bearing = solved.start.heading;
  run.corners.forEach(({ into, arc, out }, i) => {
    const solvedBend = solved.fillets[i];
    if (solvedBend === null || solvedBend.arcAngle * bends[i].radius * 1000 < shortestMm) {
      throw new RangeError(`${elementName(track, arc)} has no turning left: take the bend out instead.`);
    }
    const next = headingOf(points, i + 1);
    const turn = wrapped(next - bearing) > 0 ? 'left' : 'right';
    bearing = next;
    const radiusMm = bends[i].radius * 1000;
    const element = {
      ...(alignment[arc] as Extract<SceneTrack['alignment'][number], { kind: 'arc' }>),
      radiusMm,
      turn,
    } as const;
    alignment[arc] = sized(element, solvedBend.arcAngle * radiusMm);
    for (const [side, length] of [[into, bends[i].easeIn] as const, [out, bends[i].easeOut] as const]) {
      if (side === null) continue;
      const easement = alignment[side];
      if (easement.kind !== 'transition') continue;
      // Its ends are the straight's and the arc's again, whatever they were called.
      const { from: _from, to: _to, ...open } = easement;
      alignment[side] = sized(open, length * 1000);
    }
  });
  return { alignment, start: solved.start };
}

const headingOf = (points: readonly Point[], leg: number): number =>
  atan2(points[leg + 1][1] - points[leg][1], points[leg + 1][0] - points[leg][0]);

const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
