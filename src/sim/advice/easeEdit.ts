import { easeJoin, elementLengthMm, type Scene, type SceneTrack } from '../../scene/index.ts';
import type { AdviceEdit } from './types.ts';

/** Easements are proposed in steps of this, mm. */
const roundMm = 10;

/** Share of a neighbour's length that one easement may take: of each neighbour it takes half its own length. */
const ofNeighbour = 0.9;

/**
 * Easements over some joins of a track (each by the element behind it), as long as wanted (mm) or as their neighbours give room for; null where one
 * cannot be laid.
 */
export function easeEdit(
  scene: Scene,
  track: SceneTrack,
  joins: readonly number[],
  wantedMm: number,
): AdviceEdit | null {
  const taken = new Map<number, number>();
  for (const index of joins) {
    for (const side of [index - 1, index]) taken.set(side, (taken.get(side) ?? 0) + 1);
  }
  const laid = joins.map((index) => {
    const room = Math.min(
      ...[index - 1, index].map((side) => {
        const element = track.alignment[side];
        return element === undefined ? 0 : (2 * ofNeighbour * elementLengthMm(element)) / (taken.get(side) ?? 1);
      }),
    );
    const most = Math.floor(room / roundMm) * roundMm;
    return { index, lengthMm: Math.min(Math.ceil(wantedMm / roundMm) * roundMm, most) };
  });
  if (laid.some(({ lengthMm }) => !(lengthMm > 0))) return null;
  const edit = { kind: 'ease', joins: laid } as const;
  try {
    easedJoins(scene, track.id, edit.joins);
    return edit;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The scene with easements over some joins of a track. Throws RangeError in words. */
export function easedJoins(
  scene: Scene,
  trackId: string,
  joins: readonly { readonly index: number; readonly lengthMm: number }[],
): Scene {
  // From the end on, so that the earlier joins keep their numbers.
  return [...joins]
    .sort((a, b) => b.index - a.index)
    .reduce((made, { index, lengthMm }) => easeJoin(made, trackId, index, lengthMm), scene);
}
