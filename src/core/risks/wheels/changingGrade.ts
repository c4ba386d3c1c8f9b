import { gradeBreaks, type Track } from '../../track/index.ts';

/** Less curvature than this is rounding, 1/m: a radius of a thousand kilometres. */
const straightest = 1e-6;

/** Whether the grade changes anywhere: where it does not, every vehicle lies on its rail as on the level straight. */
export function gradeChanges(track: Track): boolean {
  const { startChainage, c, d, e } = track.profile;
  for (let k = 0; k < startChainage.length; k++) {
    const end = k + 1 < startChainage.length ? startChainage[k + 1] : track.length;
    const t = end - startChainage[k];
    const atEnd = 2 * c[k] + t * (6 * d[k] + t * 12 * e[k]);
    // A strip that sags under its weight bends between its supports, also where both ends of a span are straight.
    if (e[k] !== 0) return true;
    if (Math.abs(2 * c[k]) > straightest || Math.abs(atEnd) > straightest) return true;
  }
  return gradeBreaks(track).length > 0;
}
