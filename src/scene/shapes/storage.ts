import { cos, sin } from '../../core/math/index.ts';
import { tidy } from '../edits/tidy.ts';
import type { SceneElement, SceneTrack } from '../schema/trackSchema.ts';
import { supportsFor } from './pieces.ts';
import { type Proposed, type ShapeScale, upTo } from './scales.ts';
import { usualCoaches } from './shape.ts';
import { usualTrainMm } from './stock.ts';
import { type Hand, otherHand, type ShapeTurnout, wayBeside } from './turnouts.ts';

interface StorageSpec {
  /** Id of the level, straight track that the roads lead off, towards its end, and where, mm. */
  readonly main: string;
  readonly atMm: number;
  readonly hand: Hand;
  readonly turnout: ShapeTurnout;
  readonly roads: number;
  /** What the first road and its turnout keep clear of the main track by, at least, and from road to road, mm. */
  readonly clearMm: number;
  readonly spacingMm: number;
  readonly heightMm: number;
}

export interface Storage {
  /** The furthest road first: the ladder that the others lead off. */
  readonly tracks: readonly SceneTrack[];
  /** Along the main track, from the front joint of the first turnout to the stops, which lie in one line; and how far aside the furthest road is, mm. */
  readonly alongMm: number;
  readonly asideMm: number;
}

/** Room for the usual train on a track of its own, mm: a tenth more than its length. */
export const standFor = (scale: ShapeScale): Proposed => {
  const trainMm = Math.round(usualTrainMm(scale, usualCoaches));
  const mm = upTo(1.1 * trainMm, 50);
  return {
    mm,
    because: { what: `${mm} mm for a train of ${trainMm} mm`, source: 'common practice, no source: a tenth to spare' },
  };
};

/**
 * Storage roads off a ladder: the furthest road goes straight on at the angle of the crossing, the others lead off it parallel to the main track.
 * Every road takes the usual train clear of its turnout. Throws RangeError, in words, where the roads lie too close for the turnouts.
 */
export function storageRoads(scale: ShapeScale, spec: StorageSpec): Storage {
  const { main, atMm, hand, turnout, roads, clearMm, spacingMm, heightMm } = spec;
  const { angle, throughMm, divergingMm, offsetMm } = turnout;
  // A turnout on the ladder brings its road back by what it leads off, less what the ladder goes aside meanwhile.
  const [aside, along] = [
    throughMm * sin(angle) - offsetMm * cos(angle),
    throughMm * cos(angle) + offsetMm * sin(angle),
  ];
  const asideOf = (road: number): number => Math.ceil(clearMm + (roads > 1 ? aside : 0)) + (road - 1) * spacingMm;
  const ladder = wayBeside(turnout, hand, asideOf(roads));
  const alongMm = ladder.alongMm + standFor(scale).mm;
  // The last turnout on the ladder ends before the ladder bends back.
  const leastMm = Math.ceil(offsetMm * cos(angle) + turnout.radiusMm * (1 - cos(angle)));
  if (roads > 1 && spacingMm < leastMm) {
    throw new RangeError(
      `A ladder of turnouts of ${turnout.radiusMm} mm radius needs roads ${leastMm} mm apart or more, not ${spacingMm} mm.`,
    );
  }
  const road = (
    number: number,
    start: SceneTrack['start'],
    elements: readonly SceneElement[],
    lengthMm: number,
  ): SceneTrack => ({
    id: roadId(number),
    name: `Storage road ${number}`,
    start,
    alignment: [...elements, { kind: 'straight', id: 'stand', lengthMm: tidy(lengthMm) }],
    profile: [{ at: { endOf: 'track' }, heightMm }],
    supports: { everyMm: supportsFor(scale) },
  });
  const furthest = road(
    roads,
    { branchOf: main, atMm: tidy(atMm), towards: 'end', turnout: turnout.to(hand) },
    ladder.elements,
    alongMm - ladder.alongMm,
  );
  const others = Array.from({ length: roads - 1 }, (_, index) => {
    const onLadderMm = (asideOf(index + 1) - offsetMm - aside) / sin(angle);
    const heelAlongMm = throughMm + onLadderMm * cos(angle) + along;
    return road(
      index + 1,
      {
        branchOf: furthest.id,
        atMm: tidy(divergingMm + onLadderMm),
        towards: 'end',
        turnout: turnout.to(otherHand(hand)),
      },
      [],
      alongMm - heelAlongMm,
    );
  });
  return { tracks: [furthest, ...others], alongMm, asideMm: asideOf(roads) };
}

export const roadId = (number: number): string => `road-${number}`;
