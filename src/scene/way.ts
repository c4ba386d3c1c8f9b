import { trackLengthMm } from './places.ts';
import type { SceneTrack } from './schema/trackSchema.ts';
import type { SceneLeg, SceneTrial } from './schema/trialSchema.ts';

/** What a trial's way is read from. */
type Tracks = { readonly tracks: readonly SceneTrack[] };
type Way = Pick<SceneTrial, 'track' | 'towards' | 'route'>;

/** One track of a trial's way, run from one of its chainages to another, mm, backwards where the second is the smaller. */
export interface WayLeg {
  readonly track: SceneTrack;
  readonly fromMm: number;
  readonly toMm: number;
}

/** Ids of the tracks that a trial runs over, in order, each as often as it does. */
export const trackIdsOf = ({ track, route }: Way): readonly string[] =>
  route === undefined ? (track === undefined ? [] : [track]) : route.map((leg) => leg.track);

export const runsOn = (trial: Way, trackId: string): boolean => trackIdsOf(trial).includes(trackId);

/**
 * The way that chainages of a trial count along: its whole track, from the start whichever way the train goes, or the legs of its
 * route. A leg whose ends the file leaves out goes from where the train comes onto it to where it leaves it: the turnout
 * between it and its neighbour, else the end of the track. Null when a track is not there.
 */
export function wayOf({ tracks }: Tracks, trial: Way): readonly WayLeg[] | null {
  const found = trackIdsOf(trial).map((id) => tracks.find((track) => track.id === id));
  if (!found.every((track) => track !== undefined)) return null;
  const { route } = trial;
  if (route === undefined) return found.map((track) => ({ track, fromMm: 0, toMm: trackLengthMm(track) }));
  return found.map((track, index) => {
    const { towards, fromMm, toMm } = route[index];
    const before = route[index - 1]?.towards === 'start' ? found[index - 1] : undefined;
    const after = route[index + 1]?.towards === 'end' ? found[index + 1] : undefined;
    const [near, far] = towards === 'end' ? [0, trackLengthMm(track)] : [trackLengthMm(track), 0];
    return {
      track,
      fromMm: fromMm ?? turnoutMm(track, before) ?? near,
      toMm: toMm ?? turnoutMm(track, after) ?? far,
    };
  });
}

/** Chainage on a track of the turnout by which another branches off it, mm. */
function turnoutMm(track: SceneTrack, branch: SceneTrack | undefined): number | undefined {
  if (branch === undefined || !('branchOf' in branch.start) || branch.start.branchOf !== track.id) return undefined;
  return branch.start.atMm;
}

export const wayLengthMm = (way: readonly WayLeg[]): number =>
  way.reduce((sum, { fromMm, toMm }) => sum + Math.abs(toMm - fromMm), 0);

/** The same route from its other end. */
export const reversedRoute = (route: readonly SceneLeg[]): SceneLeg[] =>
  route.toReversed().map(({ track, towards, fromMm, toMm }) => ({
    track,
    towards: towards === 'end' ? 'start' : 'end',
    ...(toMm !== undefined && { fromMm: toMm }),
    ...(fromMm !== undefined && { toMm: fromMm }),
  }));

/**
 * Which way a trial goes, so that the two ways over the same tracks differ: on a route towards the end when its last track stands further down in the
 * file than its first, or, when they are one track, as the first leg goes.
 */
export function towardsOf({ tracks }: Tracks, trial: Way): 'end' | 'start' {
  const { route, towards = 'end' } = trial;
  if (route === undefined) return towards;
  const place = (leg: SceneLeg | undefined): number => tracks.findIndex(({ id }) => id === leg?.track);
  const onward = place(route[route.length - 1]) - place(route[0]);
  if (onward === 0) return route[0]?.towards ?? 'end';
  return onward > 0 ? 'end' : 'start';
}

/** Whether two trials run over the same tracks between the same places, either way. */
export function sameWay(one: Way, other: Way): boolean {
  if (one.route === undefined || other.route === undefined)
    return one.track === other.track && one.route === other.route;
  const text = (route: readonly SceneLeg[]): string =>
    JSON.stringify(route.map(({ track, towards, fromMm, toMm }) => [track, towards, fromMm, toMm]));
  const wanted = text(other.route);
  return text(one.route) === wanted || text(reversedRoute(one.route)) === wanted;
}
