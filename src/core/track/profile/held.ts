import { inMetres, TrackError } from '../problem.ts';
import type { HeightPieces, HeldHeights, JoinJump } from '../types.ts';
import { CHAINAGE_ROUNDING } from './pieces.ts';

/** A step in height smaller than this, m, is rounding of heights carried over from another track. */
const HEIGHT_JUMP_TOLERANCE = 1e-9;

/** Refuses held stretches that overlap, have no length or leave the track. */
export function checkHeld(held: readonly HeldHeights[], length: number): void {
  held.forEach(({ from, to }, index) => {
    const overlap = index === 0 ? -from : held[index - 1].to - from;
    const beyond = to - length;
    if (!(to > from) || !(overlap <= CHAINAGE_ROUNDING) || !(beyond <= CHAINAGE_ROUNDING)) {
      const sentence = `Heights held from chainage ${inMetres(from)} to ${inMetres(to)} must lie on the track, each stretch after the one before.`;
      throw new TrackError('bad-held', sentence, from, Math.max(overlap, beyond));
    }
  });
}

/** Where the heights of another track and of this one's own do not meet. */
export function heightJumps(profile: HeightPieces, held: readonly HeldHeights[]): JoinJump[] {
  const seams = held.flatMap(({ from, to }) => [from, to]);
  const jumps: JoinJump[] = [];
  const { startChainage, a, b, c, d, e } = profile;
  for (let k = 1; k < startChainage.length; k++) {
    const chainage = startChainage[k];
    if (!seams.some((seam) => Math.abs(seam - chainage) <= CHAINAGE_ROUNDING)) continue;
    const t = chainage - startChainage[k - 1];
    const before = a[k - 1] + t * (b[k - 1] + t * (c[k - 1] + t * (d[k - 1] + t * e[k - 1])));
    const position = Math.abs(a[k] - before);
    if (position > HEIGHT_JUMP_TOLERANCE) jumps.push({ chainage, position, heading: 0, curvature: 0 });
  }
  return jumps;
}
