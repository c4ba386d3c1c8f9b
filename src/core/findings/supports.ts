import type { ProfileSpec, Track } from '../track/index.ts';
import { settable } from './explainer.ts';
import type { Situation } from './situation.ts';
import { marginIf } from './whatIf.ts';

/** A support that stands out of line with its neighbours. */
export interface SupportError {
  /** Counted from 0. */
  readonly support: number;
  /** Scene chainage, m. */
  readonly chainage: number;
  /** Height above the line through its neighbours' departures, m; at an end of the strip its own departure. */
  readonly departure: number;
}

/** Supports out of line that `take` accepts, the furthest out first. `take` is given a scene chainage. */
export function supportErrors(track: Track, take: (chainage: number) => boolean): SupportError[] {
  const supports = track.spec.profile.strip?.supports ?? [];
  const errors: SupportError[] = [];
  supports.forEach(({ chainage, departure }, support) => {
    if (!take(chainage)) return;
    const before = supports[support - 1];
    const after = supports[support + 1];
    let line = 0;
    if (before !== undefined && after !== undefined) {
      const share = (chainage - before.chainage) / (after.chainage - before.chainage);
      line = before.departure + share * (after.departure - before.departure);
    }
    if (Math.abs(departure - line) >= settable) errors.push({ support, chainage, departure: departure - line });
  });
  return errors.sort((a, b) => Math.abs(b.departure) - Math.abs(a.departure));
}

/** The profile with one support moved up by `by`, m. */
export function withSupportMoved(profile: ProfileSpec, support: number, by: number): ProfileSpec {
  if (profile.strip === undefined) return profile;
  const supports = profile.strip.supports.map((one, index) =>
    index === support ? { ...one, departure: one.departure + by } : one,
  );
  return { ...profile, strip: { ...profile.strip, supports } };
}

/** Setting one support back, with what it is expected to leave. */
export interface SupportCure {
  readonly error: SupportError;
  /** m, to a tenth of a millimetre, which is as fine as shims come. */
  readonly by: number;
  /** SI margin. */
  readonly expected: number;
}

const shim = 0.0001;

/** Supports tried before the rest is left alone: a place has two or three next to it. */
const mostTried = 4;

/** The support whose setting back helps this situation most; null when none helps. */
export function bestSupport(
  situation: Situation,
  take: (chainage: number) => boolean,
  reach: number,
): SupportCure | null {
  const { sceneTrack } = situation.trial;
  let best: SupportCure | null = null;
  for (const error of supportErrors(sceneTrack, take).slice(0, mostTried)) {
    const by = -Math.round(error.departure / shim) * shim;
    if (by === 0) continue;
    const expected = marginIf(
      situation,
      { profile: withSupportMoved(sceneTrack.spec.profile, error.support, by) },
      reach,
    );
    if (expected === null || !(expected > situation.worst.margin)) continue;
    if (best === null || expected > best.expected) best = { error, by, expected };
  }
  return best;
}
