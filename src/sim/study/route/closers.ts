import { sin } from '../../../core/math/index.ts';
import { itemName } from '../../../scene/address.ts';
import { type Address, planElement, type Scene } from '../../../scene/index.ts';

/** Two straights that lie nearer to each other in direction than this do not close a gap: a tenth of a right angle. */
const leastAngle = Math.PI / 20;

/** Measures that change the direction behind them. */
const turning = /\/(angleDeg|turns)$/;

/**
 * Addresses to be worked out so that a track ends where it does while other numbers are chosen: the lengths of the two of its straights that lie most across each
 * other, and, where a chosen number turns the line, an angle of a curve as well. Throws RangeError in words where the track has none.
 */
export function closersOf(scene: Scene, trackId: string, chosen: readonly Address[]): Address[] {
  const track = scene.tracks.find(({ id }) => id === trackId);
  if (track === undefined) throw new RangeError(`The scene has no track "${trackId}".`);
  const { alignment } = track;
  const way = (index: number, measure: string): Address =>
    `tracks/${trackId}/alignment/${itemName(alignment[index], index)}/${measure}`;
  const free = (at: Address): boolean => !chosen.includes(at);
  let heading = 0;
  const headings = alignment.map((_, index) => {
    const before = heading;
    const { length, startCurvature, endCurvature } = planElement(track, index);
    heading += 0.5 * (startCurvature + endCurvature) * length;
    return before;
  });
  const straights = alignment.flatMap(({ kind }, index) =>
    kind === 'straight' && free(way(index, 'lengthMm')) ? [index] : [],
  );
  let best: { readonly pair: readonly [number, number]; readonly across: number } | null = null;
  for (const one of straights) {
    for (const other of straights.filter((index) => index > one)) {
      const across = Math.abs(sin(headings[other] - headings[one]));
      if (best === null || across > best.across) best = { pair: [one, other], across };
    }
  }
  if (best === null || best.across < sin(leastAngle)) {
    throw new RangeError(
      `To end where it ends now, ${track.name} needs two straights that lie across each other and are not chosen themselves.`,
    );
  }
  const lengths = best.pair.map((index) => way(index, 'lengthMm'));
  if (!chosen.some((at) => at.startsWith(`tracks/${trackId}/alignment/`) && turning.test(at))) return lengths;
  const angles = alignment.flatMap((element, index) => {
    if (element.kind === 'arc' && 'angleDeg' in element) return [way(index, 'angleDeg')];
    return element.kind === 'helix' && 'turns' in element ? [way(index, 'turns')] : [];
  });
  const angle = angles.find(free);
  if (angle === undefined) {
    throw new RangeError(
      `To end in the direction it ends in now, ${track.name} needs a curve given by its angle that is not chosen itself.`,
    );
  }
  return [...lengths, angle];
}
