import { changedPath } from '../../dynamics/index.ts';
import type { Path } from '../../dynamics/types.ts';
import { framePoser, newSample } from '../../risks/index.ts';
import type { RiskContext, Surroundings } from '../../risks/types.ts';
import type { Vehicle } from '../../stock/types.ts';
import { makeTrack, type PlanElement, type ProfileSpec, type Track, TrackError } from '../../track/index.ts';
import type { Part } from '../part.ts';
import type { Situation, Trial } from '../situation.ts';

/** What is changed, the rest of the trial staying as it ran. Profile and plan are those of one part, the scene's way round. */
export interface Change {
  /** Absent: the first. */
  readonly part?: Part;
  readonly profile?: ProfileSpec;
  readonly elements?: readonly PlanElement[];
  readonly vehicles?: readonly Vehicle[];
}

/** Frames looked at on the way past the place. */
const frames = 40;

/**
 * Least margin (SI) of the situation's risk and subject while it passes within `reach` (m) of the place, were the track or
 * the vehicles different and the train ran as it did: forces, speeds and chainages are kept. Infinity when the risk then
 * has nothing to say, null when such a track cannot be made or a route no longer closes. An estimate to rank cures with; trying a cure runs it in full.
 */
export function marginIf(situation: Situation, change: Change, reach: number): number | null {
  const { context, definition, worst } = situation;
  const changed = changedContext(situation.trial, change);
  if (changed === null) return null;
  const sampler = definition.prepare(changed);
  if (sampler === null) return Number.POSITIVE_INFINITY;
  const pose = framePoser(changed);
  const sample = newSample();
  let least = Number.POSITIVE_INFINITY;
  const [from, to] = passing(context, worst.frame, reach);
  const stride = Math.max(1, Math.floor((to - from) / frames));
  for (let f = worst.frame - stride * Math.floor((worst.frame - from) / stride); f <= to; f += stride) {
    sampler.sample(pose(f), worst.subject, sample);
    if (sample.margin < least) least = sample.margin;
  }
  return least;
}

/** First and last frame about `frame` in which the train is within `reach` of where it is then. */
function passing({ run }: RiskContext, frame: number, reach: number): [number, number] {
  const head = (f: number): number => run.chainage[f * run.vehicles];
  let from = frame;
  while (from > 0 && Math.abs(head(from - 1) - head(frame)) <= reach) from--;
  let to = frame;
  while (to + 1 < run.frames && Math.abs(head(to + 1) - head(frame)) <= reach) to++;
  return [from, to];
}

function changedContext(
  trial: Trial,
  { part = trial.parts[0], profile, elements, vehicles }: Change,
): RiskContext | null {
  const { context } = trial;
  const train = vehicles === undefined ? context.train : { ...context.train, vehicles };
  if (profile === undefined && elements === undefined) return { ...context, train };
  const old = part.track;
  let track: Track;
  let path: Path | null;
  try {
    const { spec } = old;
    track = makeTrack({ ...spec, elements: elements ?? spec.elements, profile: profile ?? spec.profile });
    path = changedPath(context.path, old, track);
  } catch (problem) {
    if (problem instanceof TrackError) return null;
    throw problem;
  }
  if (path === null) return null;
  return { ...context, train, path, surroundings: replaced(context.surroundings, old, track) };
}

/** The surroundings with the train's own track exchanged, found by where it starts, how it goes and how high. */
function replaced(around: Surroundings, own: Track, changed: Track): Surroundings {
  const same = (track: Track): boolean =>
    track.spec === own.spec ||
    (Math.abs(track.length - own.length) < sameWithin &&
      Math.abs(track.spec.start.x - own.spec.start.x) < sameWithin &&
      Math.abs(track.spec.start.y - own.spec.start.y) < sameWithin &&
      Math.abs(track.spec.profile.points[0].height - own.spec.profile.points[0].height) < sameWithin);
  return { ...around, tracks: around.tracks.map((track) => (same(track) ? changed : track)) };
}

/** Turning a track round twice moves its start by rounding only, m. */
const sameWithin = 1e-6;
