import type { PathLeg } from '../../../core/dynamics/types.ts';
import { plannedHeight } from '../../../core/track/index.ts';
import type { GradePoint, SupportDeparture, Track } from '../../../core/track/types.ts';
import type { CompiledTrial, Surveyed } from '../../../state/types.ts';

/** Grade points nearer than this to the end of a leg are that end, m. */
const AT_END = 1e-6;

/** Chainage along the route of one on the track of a leg, m. */
export function legChainage(leg: Pick<PathLeg, 'start' | 'from' | 'to'> | undefined, own: number): number {
  if (leg === undefined) return own;
  return leg.start + (leg.to > leg.from ? own - leg.from : leg.from - own);
}

/**
 * A route as its section is drawn: the track that is run over, with the grade points and supports of its legs told along the route. Only heights and
 * names are read from those; where trains run stays what it is.
 */
export function drawnRoute(route: Track, legs: readonly PathLeg[]): Track {
  const supports = legs.flatMap(legSupports);
  const points = legs.flatMap((leg, index) => legPoints(route, leg, index === legs.length - 1));
  return {
    ...route,
    spec: {
      ...route.spec,
      profile: {
        ...route.spec.profile,
        points,
        ...(supports.length > 0 && { strip: { supports, hinges: [] } }),
      },
    },
  };
}

/** A survey of one track as it lies along the way of a trial: on a route wherever that runs over the track. Null where it does not. */
export function surveyedAlong(surveyed: Surveyed, { trackId, legs }: CompiledTrial): Surveyed | null {
  if (legs === undefined) return surveyed.trackId === trackId ? surveyed : null;
  const over = legs.filter((leg) => leg.trackId === surveyed.trackId);
  if (over.length === 0) return null;
  const along = (own: number): number[] =>
    over.flatMap((leg) =>
      own < Math.min(leg.from, leg.to) || own > Math.max(leg.from, leg.to) ? [] : [legChainage(leg, own)],
    );
  return {
    ...surveyed,
    supports: surveyed.supports.flatMap((one) => along(one.chainage).map((chainage) => ({ ...one, chainage }))),
    next: surveyed.next === null ? null : (along(surveyed.next)[0] ?? null),
  };
}

const ends = ({ start, from, to }: PathLeg): readonly [number, number] => [start, start + Math.abs(to - from)];

function legSupports(leg: PathLeg): SupportDeparture[] {
  const [begin, end] = ends(leg);
  const supports = leg.track.spec.profile.strip?.supports ?? [];
  return supports
    .map((support, index) => ({
      ...support,
      number: support.number ?? index,
      chainage: legChainage(leg, support.chainage),
    }))
    .filter(({ chainage, number }) => number >= 0 && chainage >= begin && chainage <= end)
    .sort((a, b) => a.chainage - b.chainage);
}

/** The grade points within a leg, and the planned height where it begins and, of the last, ends. */
function legPoints(route: Track, leg: PathLeg, last: boolean): GradePoint[] {
  const [begin, end] = ends(leg);
  const inside = leg.track.spec.profile.points
    .map((point) => ({ ...point, chainage: legChainage(leg, point.chainage) }))
    .filter(({ chainage }) => chainage > begin + AT_END && chainage < end - AT_END)
    .sort((a, b) => a.chainage - b.chainage);
  const at = (chainage: number): GradePoint => ({ chainage, height: plannedHeight(route, chainage) });
  return [at(begin), ...inside, ...(last ? [at(end)] : [])];
}
