import type { Path, PathLeg } from '../dynamics/types.ts';
import { reverseTrack, type Track } from '../track/index.ts';

/** One track of a trial's way as the scene gives it, with what it takes to go between its own chainages and those of the way. All m. */
export interface Part {
  /** Which leg of the route it is; absent: the trial runs on this track alone. */
  readonly leg?: number;
  readonly track: Track;
  /** 1 where the train goes with the track's chainage, -1 against it. */
  readonly way: 1 | -1;
  /** Path chainages between which the train runs on it. */
  readonly from: number;
  readonly to: number;
  /** Own chainage of a path chainage, and the other way; both go on beyond the part's ends. */
  own(path: number): number;
  path(own: number): number;
  /** The chainage a finding tells of an own chainage: the scene's on a track alone, along the route on a route. */
  told(own: number): number;
}

/** The tracks a path runs over, in order. */
export function partsOf({ track, reversed, legs }: Path): readonly Part[] {
  if (legs !== undefined) return legs.map(legPart);
  const { length } = track;
  const other = (chainage: number): number => (reversed ? length - chainage : chainage);
  const sceneTrack = reversed ? reverseTrack(track) : track;
  return [
    { track: sceneTrack, way: reversed ? -1 : 1, from: 0, to: length, own: other, path: other, told: (own) => own },
  ];
}

function legPart({ track, from, to, start }: PathLeg, leg: number): Part {
  const way = to > from ? 1 : -1;
  const path = (own: number): number => start + way * (own - from);
  return {
    leg,
    track,
    way,
    from: start,
    to: start + Math.abs(to - from),
    own: (chainage) => from + way * (chainage - start),
    path,
    told: path,
  };
}

/** The parts that a stretch of the path lies on, `reach` m to either side of a path chainage. */
export const partsNear = (parts: readonly Part[], place: number, reach: number): Part[] =>
  parts.filter(({ from, to }) => from <= place + reach && to >= place - reach);

/** How a cause or cure names its track: by the leg of the route, and not at all on a track alone. */
export const ofLeg = ({ leg }: Part): { readonly leg?: number } => (leg === undefined ? {} : { leg });
