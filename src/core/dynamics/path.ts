import { isJoint, type JoinJump, type RouteStretch, reverseTrack, routeTrack, type Track } from '../track/index.ts';
import type { Path } from './types.ts';

/** A route over stretches of several tracks as a path, and where two of them do not quite meet. Throws TrackError like `routeTrack`. */
export function routePath(stretches: readonly RouteStretch[]): {
  readonly path: Path;
  readonly misfits: readonly JoinJump[];
} {
  const { track, starts, misfits } = routeTrack(stretches);
  const legs = stretches.map((stretch, leg) => ({ ...stretch, start: starts[leg] as number }));
  return { path: { track, reversed: false, legs }, misfits };
}

/**
 * The same path with one of its tracks laid otherwise; `old` and `next` are the way the scene gives them. The other tracks stay where they are, so a route that no
 * longer closes gives null. Throws TrackError when a stretch no longer lies on its track.
 */
export function changedPath(path: Path, old: Track, next: Track): Path | null {
  if (path.legs === undefined) return { ...path, track: path.reversed ? reverseTrack(next) : next };
  const stretches = path.legs.map(({ track, from, to }): RouteStretch => {
    if (track !== old) return { track, from, to };
    const moved = (chainage: number): number => (chainage === old.length ? next.length : chainage);
    return { track: next, from: moved(from), to: moved(to) };
  });
  const changed = routePath(stretches);
  return changed.misfits.every(isJoint) ? changed.path : null;
}
