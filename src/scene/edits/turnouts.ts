import { atan2, cos, hypot, sin } from '../../core/math/index.ts';
import { trackPoint } from '../../core/track/index.ts';
import { profileHeights } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneBranch, SceneElement, SceneTrack } from '../schema/trackSchema.ts';
import { turnoutFor } from '../shapes/turnouts.ts';
import { beginOf, levelTrack } from './beginOf.ts';
import type { RoomPlace } from './chainEnds.ts';
import { newId } from './ids.ts';
import { trackOf } from './parts.ts';
import { heightOn } from './profile.ts';
import { putTrack } from './putTrack.ts';
import { tidy } from './tidy.ts';
import { addTrack } from './tracks.ts';

/** What may be said anew of the turnout that a track begins with. */
export interface TurnoutChange {
  /** Chainage of its front joint on the main track, mm. */
  readonly atMm?: number;
  readonly hand?: SceneBranch['turnout']['hand'];
  readonly towards?: SceneBranch['towards'];
}

function branchOf(scene: Scene, trackId: string): { readonly track: SceneTrack; readonly start: SceneBranch } {
  const track = trackOf(scene, trackId);
  const { start } = track;
  if (!('branchOf' in start)) throw new RangeError(`${track.name} begins in the room, at no turnout.`);
  return { track, start };
}

/**
 * The scene with the turnout of a branch elsewhere on its main track, of the other hand, or leading the other way; the branch goes along as one piece and
 * stays tangent to it. With the hand its curves change theirs, so that it lies as in a mirror. Throws RangeError that says by how much the turnout has no room.
 */
export function moveTurnout(scene: Scene, trackId: string, { atMm, hand, towards }: TurnoutChange): Scene {
  const { track, start } = branchOf(scene, trackId);
  const mirrored = hand !== undefined && hand !== start.turnout.hand;
  const next: SceneTrack = {
    ...track,
    start: {
      ...start,
      atMm: tidy(atMm ?? start.atMm),
      towards: towards ?? start.towards,
      turnout: { ...start.turnout, hand: hand ?? start.turnout.hand },
    },
    alignment: mirrored ? track.alignment.map(mirror) : track.alignment,
  };
  // Refuses what has no room on the main track.
  beginOf(scene, next);
  return putTrack(scene, next);
}

function mirror(element: SceneElement): SceneElement {
  if (element.kind === 'straight') return element;
  if (element.kind !== 'transition') return { ...element, turn: otherTurn(element.turn) };
  const { from, to, ...rest } = element;
  const turned = (bend: NonNullable<typeof from>): typeof bend =>
    bend === 'straight' ? bend : { ...bend, turn: otherTurn(bend.turn) };
  return { ...rest, ...(from !== undefined && { from: turned(from) }), ...(to !== undefined && { to: turned(to) }) };
}

const otherTurn = (turn: 'left' | 'right'): 'left' | 'right' => (turn === 'left' ? 'right' : 'left');

/** Crossing of a new turnout, 1 in so many: of those that shapes begin with. Common practice, no source. */
const usualOneIn = 6;
/** Straight track after a new turnout, in gauges. */
const tailInGauges = 6;

/** A new turnout: where its front joint lies on the main track, mm, and how it leads off. */
export interface NewTurnout {
  readonly name: string;
  readonly atMm: number;
  readonly hand: 'left' | 'right';
  readonly towards: 'end' | 'start';
}

/** The scene with a turnout of 1 in 6 in a track, and a short, level track from there. Throws RangeError that says by how much there is no room. */
export function layTurnout(scene: Scene, mainId: string, { name, atMm, hand, towards }: NewTurnout): Scene {
  const main = trackOf(scene, mainId);
  const turnout = turnoutFor(scene.scale, usualOneIn);
  const tailMm = tailInGauges * scene.scale.gaugeMm;
  // The strip begins on the sleepers of the turnout: it needs one support beyond them, and the file two.
  const beyondMm = turnout.divergingMm + tailMm / 2;
  const track: SceneTrack = {
    id: newId(scene.tracks, name),
    name,
    start: { branchOf: mainId, atMm: tidy(atMm), towards, turnout: turnout.to(hand) },
    alignment: [{ kind: 'straight', lengthMm: tailMm }],
    profile: [{ at: { endOf: 'track' }, heightMm: 0 }],
    ...(main.supports && 'everyMm' in main.supports && { supports: rowThrough(beyondMm, main.supports.everyMm) }),
  };
  beginOf(scene, track);
  const heelMm = atMm + (towards === 'end' ? turnout.throughMm : -turnout.throughMm);
  const heightMm = tidy(heightOn(profileHeights(main), heelMm));
  return addTrack(scene, { ...track, profile: [{ at: { endOf: 'track' }, heightMm }] });
}

/** Supports at a distance, mm, or nearer where there would not be two of them up to `lastMm`, of which one stands there. */
function rowThrough(lastMm: number, wantedMm: number): { everyMm: number; firstMm: number } {
  const everyMm = Math.min(wantedMm, Math.floor(lastMm / 2));
  return { everyMm, firstMm: tidy(lastMm % everyMm) };
}

/** Places on a line are looked for this far apart first, m. */
const lookEvery = 0.01;

/** The nearest place of a track's line to one in plan, m; of places as near, that nearest to `about`. */
export function nearestOn(
  line: ReturnType<typeof levelTrack>,
  [x, y]: readonly [number, number],
  about?: number,
): { readonly chainage: number; readonly off: number } {
  const away = (s: number): number => {
    const at = trackPoint(line, s);
    return hypot(at.x - x, at.y - y);
  };
  // A helix passes over itself: a step along the line weighs a thousandth of one aside.
  const score = (s: number): number => away(s) + (about === undefined ? 0 : Math.abs(s - about) / 1000);
  const count = Math.max(1, Math.ceil(line.length / lookEvery));
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= count; k++) {
    const s = (line.length * k) / count;
    const its = score(s);
    if (its >= least) continue;
    least = its;
    best = s;
  }
  for (let round = 0; round < 4; round++) {
    const at = trackPoint(line, best);
    const on = (x - at.x) * cos(at.heading) + (y - at.y) * sin(at.heading);
    best = Math.min(line.length, Math.max(0, best + Math.min(lookEvery, Math.max(-lookEvery, on))));
  }
  return { chainage: best, off: away(best) };
}

/** Where on its main track the turnout of a branch comes when it is taken to a place: chainage and how far off it the place lies, mm. */
export function turnoutNear(
  scene: Scene,
  trackId: string,
  to: RoomPlace,
): { readonly atMm: number; readonly offMm: number } {
  const { start } = branchOf(scene, trackId);
  const line = levelTrack(scene, trackOf(scene, start.branchOf));
  const { chainage, off } = nearestOn(line, [to.xMm / 1000, to.yMm / 1000], start.atMm / 1000);
  return { atMm: chainage * 1000, offMm: off * 1000 };
}

/** Which way a turnout leads that is to lead towards a place, seen from its front joint. */
export function turnoutTowards(
  scene: Scene,
  trackId: string,
  to: RoomPlace,
): { readonly hand: 'left' | 'right'; readonly towards: 'end' | 'start' } {
  const { start } = branchOf(scene, trackId);
  const { x, y, heading } = trackPoint(levelTrack(scene, trackOf(scene, start.branchOf)), start.atMm / 1000);
  const bearing = atan2(to.yMm / 1000 - y, to.xMm / 1000 - x) - heading;
  const towards = cos(bearing) >= 0 ? 'end' : 'start';
  const left = sin(bearing) >= 0 === (towards === 'end');
  return { hand: left ? 'left' : 'right', towards };
}
