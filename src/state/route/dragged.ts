import { easementLength, radiusWithoutEasement } from '../../core/stock/standards/index.ts';
import { fillet, trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import {
  bendOn,
  cornerPlace,
  elementLengthMm,
  elementStartsMm,
  extendToPose,
  extendTrack,
  layStraightOn,
  moveCorner,
  moveEnd,
  moveTurnout,
  type NewBend,
  offCornerLine,
  type Scene,
  type SceneBranch,
  type SceneElement,
  type SceneTrack,
  setBend,
  setEasement,
  setElement,
  setStart,
  turnoutNear,
  turnoutTowards,
} from '../../scene/index.ts';
import { nearestNorm } from '../../sim/advice/index.ts';
import { startBeside } from './besideLine.ts';
import { endNear, joinedTo, lineNear, type OpenEnd } from './ends.ts';
import type { Handle, Place } from './handles.ts';
import { type Snapping, toStep } from './snapping.ts';

/** What a hand holds: the railway as it was when it took hold. */
export interface Held {
  readonly scene: Scene;
  readonly trackId: string;
  readonly track: Track;
  readonly handle: Handle;
  readonly ends: readonly OpenEnd[];
  /** All tracks as they were, by id. */
  readonly tracks: ReadonlyMap<string, Track>;
}

/** What a place of the hand comes to: the railway with it, and what is to be called in the history. */
export interface Dragged {
  readonly label: string;
  readonly make: () => Made;
}

/** A railway, and what the hand was led to or kept on in making it, in words. */
export interface Made {
  readonly scene: Scene;
  readonly led: string | null;
}

/**
 * What the railway becomes when a handle is taken to a place. Nothing is made yet: `make` does, and throws RangeError in words that say what cannot be met
 * and by how much.
 */
export function dragged(held: Held, to: Place, snap: Snapping): Dragged {
  const { scene, trackId, handle } = held;
  const file = scene.tracks.find(({ id }) => id === trackId);
  if (file === undefined) throw new RangeError(`There is no track "${trackId}".`);
  const mm = (metres: number): number => toStep(metres * 1000, snap.lengthMm);
  const label = handle.name.charAt(0).toLowerCase() + handle.name.slice(1);
  switch (handle.kind) {
    case 'start':
      if ('branchOf' in file.start)
        return { label, make: () => withTurnoutAt(held, file.start as SceneBranch, to, snap) };
      return { label, make: () => withStart(held, to, snap) };
    case 'heading':
      if ('branchOf' in file.start) {
        const place = { xMm: to[0] * 1000, yMm: to[1] * 1000 };
        return { label, make: () => free(moveTurnout(scene, trackId, turnoutTowards(scene, trackId, place))) };
      }
      return { label, make: () => free(setStart(scene, trackId, { headingDeg: headingDeg(held, to, snap) })) };
    case 'corner':
      return { label, make: () => withCorner(held, file, { xMm: mm(to[0]), yMm: mm(to[1]) }) };
    case 'radius':
      return { label, make: () => free(withRadius(held, file, to, snap)) };
    case 'extend':
      return { label, make: () => extended(held, file, to, snap) };
    case 'end':
      return { label, make: () => free(withEnd(held, file, to, snap)) };
    default:
      throw new RangeError(`${handle.name} is not of a track's plan.`);
  }
}

const free = (scene: Scene): Made => ({ scene, led: null });

/** A start on whole steps, or at a standard's spacing from a track that it lies beside. */
function withStart(held: Held, to: Place, snap: Snapping): Made {
  const beside = startBeside(held, to, snap);
  const [xMm, yMm] =
    beside === null
      ? to.map((metres) => toStep(metres * 1000, snap.lengthMm))
      : beside.place.map((metres) => Math.round(metres * 1e6) / 1e3);
  return { scene: setStart(held.scene, held.trackId, { xMm, yMm }), led: beside?.led ?? null };
}

/** Off a line by less than this, mm, nothing is said. */
const quietOffMm = 1;

const offWords = (line: string, offMm: number): string | null =>
  offMm < quietOffMm ? null : `kept on ${line}: the hand is ${Math.round(offMm)} mm off it`;

function withTurnoutAt({ scene, trackId }: Held, start: SceneBranch, [x, y]: Place, snap: Snapping): Made {
  const { atMm, offMm } = turnoutNear(scene, trackId, { xMm: x * 1000, yMm: y * 1000 });
  const main = scene.tracks.find(({ id }) => id === start.branchOf);
  return {
    scene: moveTurnout(scene, trackId, { atMm: toStep(atMm, snap.lengthMm) }),
    led: offWords(main?.name ?? start.branchOf, offMm),
  };
}

function withCorner({ scene, trackId, handle }: Held, file: SceneTrack, to: { xMm: number; yMm: number }): Made {
  const held =
    'branchOf' in file.start && cornerIsFirst(file, handle.element) ? 'the line of the turnout' : 'its straight';
  return {
    scene: moveCorner(scene, trackId, handle.element, to),
    led: offWords(held, offCornerLine(scene, file, handle.element, to) * 1000),
  };
}

/** Whether nothing but a straight and an easement comes before a bend. */
const cornerIsFirst = ({ alignment }: SceneTrack, arc: number): boolean =>
  alignment.slice(1, arc).every(({ kind }) => kind === 'transition');

function headingDeg({ track }: Held, [x, y]: Place, snap: Snapping): number {
  const start = trackPoint(track, 0);
  if (Math.hypot(start.x - x, start.y - y) < 1e-6) throw new RangeError('The heading needs some way from the start.');
  return toStep((Math.atan2(start.y - y, start.x - x) * 180) / Math.PI, snap.angleDeg);
}

function withEnd(held: Held, file: SceneTrack, to: Place, snap: Snapping): Scene {
  const { scene, trackId, handle } = held;
  const index = handle.element;
  const element = file.alignment[index];
  if (handle.grows === null) {
    const place = { xMm: toStep(to[0] * 1000, snap.lengthMm), yMm: toStep(to[1] * 1000, snap.lengthMm) };
    return moveEnd(scene, trackId, place);
  }
  if (element.kind === 'arc' || element.kind === 'helix') return withAngle(held, element, to, snap);
  const [ux, uy] = handle.grows;
  const byMm = ((to[0] - handle.place[0]) * ux + (to[1] - handle.place[1]) * uy) * 1000;
  if (element.kind === 'straight') {
    return setElement(scene, trackId, index, { lengthMm: toStep(element.lengthMm + byMm, snap.lengthMm) });
  }
  // An easement grows to both sides, so its end goes half as far as its length.
  const lengthMm = toStep(element.lengthMm + 2 * byMm, snap.lengthMm);
  const [into, out] = [index + 1, index - 1];
  if (cornerPlace(scene, file, into) !== null) return setBend(scene, trackId, into, { easeInMm: lengthMm });
  if (cornerPlace(scene, file, out) !== null) return setBend(scene, trackId, out, { easeOutMm: lengthMm });
  return index > 0 && index < file.alignment.length - 1
    ? setEasement(scene, trackId, index, lengthMm)
    : setElement(scene, trackId, index, { lengthMm: toStep(element.lengthMm + byMm, snap.lengthMm) });
}

type Curve = Extract<SceneElement, { radiusMm: number }>;

/** A curve turned on to where its end is seen from its centre; a helix keeps its whole turns. */
function withAngle({ scene, trackId, track, handle }: Held, curve: Curve, [x, y]: Place, snap: Snapping): Scene {
  const hand = curve.turn === 'left' ? 1 : -1;
  const radius = curve.radiusMm / 1000;
  const end = trackPoint(track, endChainage(scene, trackId, handle.element));
  const [cx, cy] = [end.x - hand * radius * Math.sin(end.heading), end.y + hand * radius * Math.cos(end.heading)];
  const swing = hand * (Math.atan2(y - cy, x - cx) - Math.atan2(end.y - cy, end.x - cx));
  const more = swing - 2 * Math.PI * Math.round(swing / (2 * Math.PI));
  const degrees = ((elementLengthMm(curve) / curve.radiusMm + more) * 180) / Math.PI;
  const angleDeg = toStep(degrees, snap.angleDeg);
  return curve.kind === 'arc'
    ? setElement(scene, trackId, handle.element, { angleDeg })
    : setElement(scene, trackId, handle.element, { turns: angleDeg / 360 });
}

function endChainage(scene: Scene, trackId: string, element: number): number {
  const file = scene.tracks.find(({ id }) => id === trackId);
  return file === undefined ? 0 : elementStartsMm(file)[element + 1] / 1000;
}

/** A bend between straights keeps its corner, a free curve its start. */
function withRadius(held: Held, file: SceneTrack, to: Place, snap: Snapping): Scene {
  const { scene, trackId, track, handle } = held;
  const curve = file.alignment[handle.element] as Curve;
  const corner = cornerPlace(scene, file, handle.element);
  if (corner === null) {
    const start = trackPoint(track, elementStartsMm(file)[handle.element] / 1000);
    const hand = curve.turn === 'left' ? 1 : -1;
    const [dx, dy] = [to[0] - start.x, to[1] - start.y];
    const aside = hand * (dy * Math.cos(start.heading) - dx * Math.sin(start.heading));
    // The circle that leaves the start in its direction and passes the hand; a half turn on, the hand is a diameter aside.
    const radiusMm = (1000 * (dx * dx + dy * dy)) / (2 * aside);
    if (!(radiusMm > 0)) throw new RangeError('On this side of the track the curve would have to turn the other way.');
    return setElement(scene, trackId, handle.element, { radiusMm: toStep(radiusMm, snap.lengthMm) });
  }
  const wanted = Math.hypot(corner.xMm / 1000 - to[0], corner.yMm / 1000 - to[1]);
  const old = Math.hypot(corner.xMm / 1000 - handle.place[0], corner.yMm / 1000 - handle.place[1]);
  const radius = curve.radiusMm / 1000;
  // From the corner to the arc is in proportion to the radius but for the shift of easements, which hardly changes.
  const turn = turnOfBend(file, handle.element);
  const each = fillet({ radius, easeIn: 0, easeOut: 0 }, turn).external / radius;
  const radiusMm = toStep((radius + (wanted - old) / each) * 1000, snap.lengthMm);
  if (!(radiusMm > 0)) throw new RangeError('A bend this near to its corner would have no radius.');
  return setBend(scene, trackId, handle.element, { radiusMm });
}

/** Turning of a bend with its easements, rad. */
function turnOfBend({ alignment }: SceneTrack, arc: number): number {
  const own = alignment[arc] as Curve;
  const eased = [alignment[arc - 1], alignment[arc + 1]].reduce(
    (sum, one) => sum + (one?.kind === 'transition' ? one.lengthMm : 0),
    0,
  );
  return (elementLengthMm(own) + eased / 2) / own.radiusMm;
}

/** A hand is led onto the line of another track from no further than this, in gauges: tracks beside each other lie further apart. */
const lineReachInGauges = 1.2;

function extended(held: Held, file: SceneTrack, to: Place, snap: Snapping): Made {
  const { scene, trackId, track, ends, tracks } = held;
  const last = trackPoint(track, track.length);
  const bend = newBend(scene, file);
  const own = { trackId, x: last.x, y: last.y, heading: last.heading };
  const met = endNear(ends, to, snap.ends, own);
  if (met !== null) {
    const goal = { xMm: met.x * 1000, yMm: met.y * 1000, headingDeg: (met.heading * 180) / Math.PI };
    return { scene: extendToPose(scene, trackId, goal, bend), led: `meets ${nameOf(scene, met.trackId)} at its end` };
  }
  const line = lineNear(tracks, to, Math.min(snap.ends, (lineReachInGauges * scene.scale.gaugeMm) / 1000), own);
  if (line !== null) {
    try {
      const joined = joinedTo(scene, trackId, line, bend);
      return { scene: joined, led: `runs into ${nameOf(scene, line.trackId)}` };
    } catch (error) {
      // Where no fair way leads onto it the hand goes past: it is a place like any other.
      if (!(error instanceof RangeError)) throw error;
    }
  }
  const place = { xMm: toStep(to[0] * 1000, snap.lengthMm), yMm: toStep(to[1] * 1000, snap.lengthMm) };
  return free(extendTrack(scene, trackId, place, bend, snap.angleDeg));
}

/** What an arrow key does at the end of a track, as to one who runs along it. */
export interface Steer {
  /** Straight on, m; negative takes back. */
  readonly ahead: number;
  /** Bent on, degrees, to the left; negative to the right. */
  readonly leftDeg: number;
}

/** The railway with the end of a track laid on by a key. Throws RangeError in words. */
export function steered(scene: Scene, trackId: string, { ahead, leftDeg }: Steer): Scene {
  const file = scene.tracks.find(({ id }) => id === trackId);
  if (file === undefined) throw new RangeError(`There is no track "${trackId}".`);
  return leftDeg === 0
    ? layStraightOn(scene, trackId, ahead * 1000)
    : bendOn(scene, trackId, leftDeg, newBend(scene, file));
}

const nameOf = ({ tracks }: Scene, trackId: string): string => tracks.find(({ id }) => id === trackId)?.name ?? trackId;

/** Radius of new track where none bends yet, mm at 16.5 mm gauge: fit for coaches on a main line (NEM 111, group B: 660 mm). */
const usualRadiusMm = 660;

/** The bend that new track is laid with: that of the last curve of the track, else the usual one; easements by NEM 113. */
export function newBend(scene: Scene, file: SceneTrack): NewBend {
  const curve = file.alignment.findLast((element): element is Curve => 'radiusMm' in element);
  const { gaugeMm } = scene.scale;
  // A track that leaves by a turnout goes on as widely as that bends.
  const turnout = 'branchOf' in file.start ? file.start.turnout.radiusMm : null;
  const radiusMm = curve?.radiusMm ?? turnout ?? Math.round((usualRadiusMm * gaugeMm) / 16.5 / 10) * 10;
  const norm = nearestNorm(gaugeMm);
  const eased = radiusMm / 1000 <= radiusWithoutEasement(norm);
  return { radiusMm, easeMm: eased ? Math.ceil((easementLength(norm, radiusMm / 1000) * 1000) / 10) * 10 : 0 };
}
