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
  const spares = task.clearances.map(({ above, below, fixed, least }) => ({
    by: (above === null ? fixed : height(above)) - (below === null ? fixed : height(below)) - least,
    at: above ?? below ?? 0,
  }));
  const missed = task.heights.map((one) => ({ by: Math.abs(height(one.chainage) - one.height), at: one.chainage }));
  const farthest = missed.reduce((most, one) => (one.by > most.by ? one : most), { by: 0, at: 0 });
  const closest = spares.reduce((least, one) => (one.by < least.by ? one : least), {
    by: Number.POSITIVE_INFINITY,
    at: 0,
  });
  const { steepest, bend } = pieceExtremes(track);
  return {
    points,
    ruling: Math.max(...ruling),
    steepest: steepest.by,
    verticalRadius: 1 / bend.by,
    heightMissed: farthest.by,
    clearanceSpare: closest.by,
    at: { steepest: steepest.at, verticalRadius: bend.at, heightMissed: farthest.at, clearanceSpare: closest.at },
  };
}

interface Met {
  readonly by: number;
  /** Chainage, m. */
  readonly at: number;
}

/** Steepest grade and greatest vertical curvature: grade is linear within a piece, so the ends of pieces decide. */
function pieceExtremes({ profile, length }: Track): { steepest: Met; bend: Met } {
  const { startChainage, b, c } = profile;
  let steepest: Met = { by: 0, at: 0 };
  let bend: Met = { by: 0, at: 0 };
  startChainage.forEach((from, k) => {
    const to = startChainage[k + 1] ?? length;
    // A piece of rounding between two curves that touch says nothing.
    if (to - from < 1e-9) return;
    for (const at of [from, to]) {
      const by = Math.abs(b[k] + 2 * c[k] * (at - from));
      if (by > steepest.by) steepest = { by, at };
    }
    if (Math.abs(2 * c[k]) > bend.by) bend = { by: Math.abs(2 * c[k]), at: (from + to) / 2 };
  });
  return { steepest, bend };
}
