import type { Track } from '../../core/track/types.ts';

/** Greatest size of the planned grade between two chainages, m, as a ratio. Planned pieces are parabolas, so it is at an end of one. */
export function steepestPlanned(
  { plannedProfile: { startChainage, b, c }, length }: Track,
  from: number,
  to: number,
): number {
  let most = 0;
  for (let k = 0; k < startChainage.length; k++) {
    const [start, end] = [startChainage[k], startChainage[k + 1] ?? length];
    if (end <= from || start >= to) continue;
    for (const s of [Math.max(from, start), Math.min(to, end)]) {
      most = Math.max(most, Math.abs(b[k] + 2 * c[k] * (s - start)));
    }
  }
  return most;
}
