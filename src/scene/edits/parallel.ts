import { cos, sin } from '../../core/math/index.ts';
import { elementCurvatures, elementLengthMm, placeMm, profileHeights } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneElement, ScenePlace, SceneTrack } from '../schema/trackSchema.ts';
import { bendOf } from './bendOf.ts';
import { chainageMap } from './chainageMap.ts';
import { newId } from './ids.ts';
import { parallelTransition } from './parallelTransition.ts';
import { elementName, trackOf } from './parts.ts';
import { sized } from './sized.ts';
import { mmText, tidy } from './tidy.ts';
import { addTrack } from './tracks.ts';

export interface ParallelOptions {
  /** What people call the new track. */
  readonly name: string;
}

/** A stretch of the new track short by less than this, mm, is of no length: rounding. */
const roundingMm = 1e-6;

/**
 * The scene with a track beside another at `spacingMm` to its left (negative: right), as high opposite each point of
 * its heights and evenly graded between. Curves keep their centres, so their radii
 * change by the spacing; an easement keeps the shift of its curve, which makes it longer outside and shorter inside, so straights and arcs
 * lie exactly at the spacing and in an easement the two are nearest to it within the difference of their shifts along the way.
 * Throws RangeError in words: for branches, curves sharper than the spacing, and where an outer easement has no room.
 */
export function parallelTrack(scene: Scene, trackId: string, spacingMm: number, { name }: ParallelOptions): Scene {
  const track = trackOf(scene, trackId);
  const { start } = track;
  if ('branchOf' in start) {
    throw new RangeError(`${track.name} begins at a turnout: lay the parallel along its main track.`);
  }
  if (!(Math.abs(spacingMm) > 0)) throw new RangeError('A track beside another needs a spacing other than 0.');
  const heading = (start.headingDeg * Math.PI) / 180;
  const { alignment, aheadMm } = parallelAlignment(track, spacingMm);
  const { rails: _rails, measured: _measured, crossLevels: _crossLevels, ...kept } = track;
  const beside: SceneTrack = {
    ...kept,
    id: newId(scene.tracks, name),
    name,
    start: {
      xMm: tidy(start.xMm - spacingMm * sin(heading) + aheadMm * cos(heading)),
      yMm: tidy(start.yMm + spacingMm * cos(heading) + aheadMm * sin(heading)),
      headingDeg: start.headingDeg,
    },
    alignment,
  };
  return addTrack(scene, withPlaces(track, beside));
}

/** Heights, supports and joints opposite to where they are on the track beside. Supports as built are its own: the new ones are true. */
function withPlaces(track: SceneTrack, beside: SceneTrack): SceneTrack {
  const fates = track.alignment.map((_, index) => ({ from: index, to: index + 1 }));
  const map = chainageMap(track, beside, fates);
  const opposite = (place: ScenePlace): { atMm: number } => ({ atMm: tidy(map.at(placeMm(track, place))) });
  const heights = profileHeights(track);
  const profile = track.profile.map((point, index) => {
    const { atMm, heightMm } = heights[index];
    const half = halfCurveMm(track, index);
    const at = map.at(atMm);
    // As much of the curve as fits opposite on both sides, so that curves that touch still do.
    const length = half === 0 ? 0 : 2 * Math.min(map.at(atMm + half) - at, at - map.at(atMm - half));
    const place = point.at === undefined ? { atMm: tidy(at) } : { at: point.at };
    return { ...place, heightMm: tidy(heightMm), ...(length > 0 && { verticalCurveLengthMm: tidy(length) }) };
  });
  const { supports, stripJoints } = track;
  const listed = Array.isArray(supports) ? supports.map(opposite) : undefined;
  const row = supports !== undefined && 'everyMm' in supports ? supports : undefined;
  return {
    ...beside,
    profile,
    ...(listed && { supports: listed }),
    ...(row && { supports: { everyMm: row.everyMm, ...(row.firstMm !== undefined && { firstMm: row.firstMm }) } }),
    ...(stripJoints && { stripJoints: stripJoints.map(opposite) }),
  };
}

/** Half the plan length of the vertical curve at a point, mm. */
function halfCurveMm(track: SceneTrack, index: number): number {
  const point = track.profile[index];
  if (point.verticalCurveLengthMm !== undefined) return point.verticalCurveLengthMm / 2;
  const [before, here, after] = [index - 1, index, index + 1].map((k) => profileHeights(track)[k]);
  if (point.verticalCurveRadiusMm === undefined || before === undefined || after === undefined) return 0;
  const arriving = (here.heightMm - before.heightMm) / (here.atMm - before.atMm);
  const leaving = (after.heightMm - here.heightMm) / (after.atMm - here.atMm);
  return (point.verticalCurveRadiusMm * Math.abs(leaving - arriving)) / 2;
}

/** What an easement gives to or takes from its neighbours: turning for an arc, rad; length for a straight, m. */
interface Share {
  readonly turn: number;
  readonly length: number;
}

/** The elements beside those of a track, and how much further on they begin where the track begins with an easement, mm. */
function parallelAlignment(
  track: SceneTrack,
  spacingMm: number,
): { readonly alignment: SceneElement[]; readonly aheadMm: number } {
  const shares = new Map<number, Share>();
  const give = (index: number, { turn, length }: Share): void => {
    const had = shares.get(index) ?? { turn: 0, length: 0 };
    shares.set(index, { turn: had.turn + turn, length: had.length + length });
  };
  const transitions = new Map<number, SceneElement>();
  track.alignment.forEach((element, index) => {
    if (element.kind !== 'transition') return;
    const [from, to] = elementCurvatures(track, index);
    const length = elementLengthMm(element) / 1000;
    const beside = parallelTransition({ from, to, length }, spacingMm / 1000, elementName(track, index));
    give(index - 1, beside.before);
    give(index + 1, beside.after);
    const named = { from: bendOf(beside.from), to: bendOf(beside.to) };
    transitions.set(index, { ...element, lengthMm: tidy(beside.length * 1000), ...named });
  });
  const first = shares.get(-1) ?? { turn: 0, length: 0 };
  if (first.turn !== 0) throw new RangeError(`${track.name} begins within a curve: give it a piece of arc before.`);
  const alignment = track.alignment.map((element, index) => {
    const eased = transitions.get(index);
    const { turn, length } = shares.get(index) ?? { turn: 0, length: 0 };
    if (eased !== undefined) {
      if (Math.abs(turn) + Math.abs(length) > 1e-12) {
        throw new RangeError(
          `${elementName(track, index)} meets another easement with nothing between: the track beside it has no room for both.`,
        );
      }
      return eased;
    }
    return besideElement(track, index, element, spacingMm, turn, length * 1000);
  });
  return { alignment, aheadMm: first.length * 1000 };
}

function besideElement(
  track: SceneTrack,
  index: number,
  element: SceneElement,
  spacingMm: number,
  turn: number,
  lengthMm: number,
): SceneElement {
  const name = elementName(track, index);
  if (element.kind !== 'arc' && element.kind !== 'helix') {
    const left = elementLengthMm(element) + lengthMm;
    if (left < roundingMm)
      throw new RangeError(`${name} is ${mmText(-left)} too short for the easements of the track beside it.`);
    return sized(element, left);
  }
  const hand = element.turn === 'left' ? 1 : -1;
  const radiusMm = tidy(element.radiusMm - hand * spacingMm);
  if (!(radiusMm > 0)) {
    throw new RangeError(`${name}, ${mmText(element.radiusMm)}, has no inside at ${mmText(Math.abs(spacingMm))}.`);
  }
  const angle = elementLengthMm(element) / element.radiusMm + hand * turn;
  if (angle * radiusMm < roundingMm) {
    throw new RangeError(`${name} turns too little for the easements of the track beside it.`);
  }
  return sized({ ...element, radiusMm }, angle * radiusMm);
}
