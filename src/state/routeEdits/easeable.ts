import { elementCurvatures, elementLengthMm, type SceneTrack } from '../../scene/index.ts';

/** Curvatures closer than this join without a jump that could be felt, 1/m: a radius of 100 km. */
const sameCurvature = 1e-5;

/** Whether the join before element `index` changes its curvature at once and has room for an easement. */
export function easeable(track: SceneTrack, index: number): boolean {
  const [before, after] = [track.alignment[index - 1], track.alignment[index]];
  if (!before || !after || before.kind === 'transition' || after.kind === 'transition') return false;
  return Math.abs(elementCurvatures(track, index)[0] - elementCurvatures(track, index - 1)[1]) >= sameCurvature;
}

/** An easement that is usually long enough, mm: one and a half bogie coaches of 00 or H0. */
const usualMm = 300;
/** Shares of the shorter neighbour that an easement proposed by itself may take. */
const mostOfNeighbour = 0.8;
/** Lengths are proposed in steps of this, mm. */
const roundMm = 10;

/** Length of the easement proposed for the join before element `index`, mm: the usual one, or what the shorter neighbour can give. */
export function easementFor(track: SceneTrack, index: number): number {
  const shorter = Math.min(elementLengthMm(track.alignment[index - 1]), elementLengthMm(track.alignment[index]));
  // Each neighbour gives half of it.
  const room = 2 * mostOfNeighbour * shorter;
  return Math.max(roundMm, Math.floor(Math.min(usualMm, room) / roundMm) * roundMm);
}
