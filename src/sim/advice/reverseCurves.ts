import {
  jointGeometry,
  lengthOverBuffers,
  newJointGeometry,
  newPlacement,
  placeCoupled,
  placeVehicle,
} from '../../core/stock/index.ts';
import type { Track } from '../../core/track/types.ts';
import { insertElement, type Scene, type SceneTrack, setElement } from '../../scene/index.ts';
import { byTrack } from './byTrack.ts';
import { collectionOf, type Pair } from './collection.ts';
import { easeEdit } from './easeEdit.ts';
import { type Reversal, reversalsOf } from './reversals.ts';
import type { AdviceEdit, ReverseCurveFact } from './types.ts';

const placedLeading = newPlacement();
const placedTrailing = newPlacement();
const geometry = newJointGeometry();

/** What a pair comes to at the worst of the places looked at. */
interface Through {
  readonly pair: Pair;
  readonly buffers: ReverseCurveFact['buffers'];
  readonly swing: ReverseCurveFact['swing'];
  /** The least that is left of buffers and swing, as a share of what there is; below 0 it goes wrong. */
  readonly left: number;
}

/** Places a pair is looked at, first over the whole of a reversal, then about the worst of these. */
const places = 24;
const closer = 8;

/**
 * One fact for each place where a curve turns into its reverse and the trains of the collection lose their buffers' overlap or their couplings' swing, or
 * where the norm's condition is not met: easements, or a straight longer than the longest vehicle (NEM 111, 2016, par. 3.2).
 */
export const reverseCurves = byTrack(({ scene, tracks }, file): readonly ReverseCurveFact[] => {
  const { pairs, longest } = collectionOf(scene);
  const longestOver = lengthOverBuffers(longest);
  const track = tracks.get(file.id);
  if (track === undefined) return [];
  return reversalsOf(track).flatMap((reversal): ReverseCurveFact[] => {
    const between = reversal.to - reversal.from;
    const met = reversal.eased || between >= longestOver;
    if (between >= 2 * longestOver) return [];
    const worst = pairs
      .map((pair) => throughReversal(track, reversal, pair, longestOver))
      .filter((one) => one !== null)
      .reduce<Through | null>((least, one) => (least === null || one.left < least.left ? one : least), null);
    if (worst === null || (met && worst.left >= 0)) return [];
    return [
      {
        kind: 'reverse-curve',
        trackId: file.id,
        chainage: (reversal.from + reversal.to) / 2,
        from: reversal.from,
        to: reversal.to,
        weight: worst.left < 0 ? 'wrong' : 'near',
        value: between,
        limit: longestOver,
        edit: answer(scene, file, track, reversal, longestOver),
        eased: reversal.eased,
        radii: reversal.radii,
        pair: [worst.pair.leading.name, worst.pair.trailing.name],
        buffers: worst.buffers,
        swing: worst.swing,
      },
    ];
  });
});

/** A pair pushed through a reversal, at the worst of its places; null where it cannot stand. */
function throughReversal(track: Track, { from, to }: Reversal, pair: Pair, reach: number): Through | null {
  let worst: Through | null = null;
  let at = Number.NaN;
  const look = (chainage: number): void => {
    const here = standing(track, pair, chainage);
    if (here === null || (worst !== null && here.left >= worst.left)) return;
    worst = here;
    at = chainage;
  };
  const [low, high] = [from - reach / 2, to + 1.5 * reach];
  const step = (high - low) / places;
  for (let k = 0; k <= places; k++) look(low + k * step);
  const middle = at;
  for (let k = 1; k <= closer; k++) {
    const aside = (step * k) / closer;
    look(middle - aside);
    look(middle + aside);
  }
  return worst;
}

/** A pair with the leading vehicle at a chainage, the joint closed by its slack as far as the track lets it. */
function standing(track: Track, pair: Pair, chainage: number): Through | null {
  const { leading, trailing } = pair;
  const [ahead, behind] = [leading.rear, trailing.front];
  const slack = ahead.coupling.slack + behind.coupling.slack;
  try {
    const place = placeCoupled(track, leading, trailing, chainage, -slack / 2);
    placeVehicle(track, leading, chainage, placedLeading);
    placeVehicle(track, trailing, place, placedTrailing);
    jointGeometry(leading, trailing, placedLeading, placedTrailing, geometry);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
  const swings = [
    { value: Math.abs(geometry.swingLeading), limit: ahead.coupling.freeSwing },
    { value: Math.abs(geometry.swingTrailing), limit: behind.coupling.freeSwing },
  ];
  const swing = swings[0].value / swings[0].limit > swings[1].value / swings[1].limit ? swings[0] : swings[1];
  const swingLeft = 1 - swing.value / swing.limit;
  if (ahead.buffers === null || behind.buffers === null) return { pair, buffers: null, swing, left: swingLeft };
  const overlap = (ahead.buffers.headWidth + behind.buffers.headWidth) / 2;
  const sides = geometry.bufferLateral.map((lateral, side) => {
    const [aside, gap] = [Math.abs(lateral), geometry.bufferGap[side]];
    // Heads past each other lock only where their faces also meet.
    return { aside, overlap, gap, left: Math.max(1 - aside / overlap, gap / overlap) };
  });
  const { left, ...buffers } = sides[0].left < sides[1].left ? sides[0] : sides[1];
  return { pair, buffers, swing, left: Math.min(left, swingLeft) };
}

/** Easements over the joins of the two curves; where there is no room for them, a straight between as long as the longest vehicle. */
function answer(
  scene: Scene,
  file: SceneTrack,
  track: Track,
  { before, after, eased }: Reversal,
  longest: number,
): AdviceEdit | null {
  const laid = track.spec.elements.length - file.alignment.length;
  const [first, second] = [before - laid, after - laid];
  // One clothoid through no curvature leaves nothing to put a straight between.
  if (first < 0 || second >= file.alignment.length || first === second) return null;
  if (!eased) {
    const joins = Array.from({ length: second - first }, (_, k) => first + 1 + k);
    const plain = joins.every(
      (index) => file.alignment[index].kind !== 'transition' && file.alignment[index - 1].kind !== 'transition',
    );
    const ease = plain ? easeEdit(scene, file, joins, longest * 1000) : null;
    if (ease !== null) return ease;
  }
  const lengthMm = Math.ceil(longest * 1000);
  const straight = file.alignment.findIndex((one, k) => k > first && k < second && one.kind === 'straight');
  const edit = { kind: 'straight-between', element: straight < 0 ? second : straight, lengthMm } as const;
  try {
    withStraight(scene, file.id, edit.element, lengthMm);
    return edit;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The scene with a straight of this length, mm, in place of one at an element, or put in before what is no straight. Throws RangeError in words. */
export function withStraight(scene: Scene, trackId: string, element: number, lengthMm: number): Scene {
  const file = scene.tracks.find(({ id }) => id === trackId);
  return file?.alignment[element]?.kind === 'straight'
    ? setElement(scene, trackId, element, { lengthMm })
    : insertElement(scene, trackId, element, { kind: 'straight', lengthMm });
}
