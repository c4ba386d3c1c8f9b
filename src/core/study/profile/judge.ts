import { makeTrack, rulingGrade, trackPoint } from '../../track/index.ts';
import type { GradePoint, Track } from '../../track/types.ts';
import { signs } from './problem.ts';
import type { FoundProfile, ProfileTask } from './types.ts';

/**
 * What a profile comes to on the plan of a task, found on the track itself and not in the problem that it came from. Throws TrackError when the points
 * make no profile.
 */
export function judgeProfile(task: ProfileTask, points: readonly GradePoint[]): FoundProfile {
  const { start, elements } = task.track.spec;
  const track = makeTrack({ start, elements, profile: { points } });
  const { window, curveLength } = task;
  const ruling = signs(task.towards).map(
    (sign) => rulingGrade(track, { window, curveLength, towards: sign === 1 ? 'end' : 'start' }).grade,
  );
  const height = (s: number): number => trackPoint(track, s).z;
  const spares = task.clearances.map(
    ({ above, below, fixed, least }) =>
      (above === null ? fixed : height(above)) - (below === null ? fixed : height(below)) - least,
  );
  return {
    points,
    ruling: Math.max(...ruling),
    ...pieceExtremes(track),
    heightMissed: task.heights.reduce((most, one) => Math.max(most, Math.abs(height(one.chainage) - one.height)), 0),
    clearanceSpare: spares.reduce((least, spare) => Math.min(least, spare), Number.POSITIVE_INFINITY),
  };
}

/** Steepest grade and tightest radius: grade is linear within a piece, so the ends of pieces decide. */
function pieceExtremes({ profile, length }: Track): Pick<FoundProfile, 'steepest' | 'verticalRadius'> {
  const { startChainage, b, c } = profile;
  let [steepest, bend] = [0, 0];
  startChainage.forEach((from, k) => {
    const to = startChainage[k + 1] ?? length;
    // A piece of rounding between two curves that touch says nothing.
    if (to - from < 1e-9) return;
    steepest = Math.max(steepest, Math.abs(b[k]), Math.abs(b[k] + 2 * c[k] * (to - from)));
    bend = Math.max(bend, Math.abs(2 * c[k]));
  });
  return { steepest, verticalRadius: 1 / bend };
}
