import type { ProfileSpec, Track } from '../../track/index.ts';
import { type Part, partsNear } from '../part.ts';
import type { Situation } from '../situation.ts';
import { settable } from './explainer.ts';
import { marginIf } from './whatIf.ts';

/** A support that stands out of line with its neighbours. */
export interface SupportError {
  /** Place among the strip's supports, and what the builder's list counts it as; both from 0. */
  readonly support: number;
  readonly number: number;
  /** Scene chainage, m. */
  readonly chainage: number;
  /** Height above the line through its neighbours' departures, m; at an end of the strip its own departure. */
  readonly departure: number;
}

/** Supports out of line that `take` accepts, the furthest out first. `take` is given a scene chainage. */
export function supportErrors(track: Track, take: (chainage: number) => boolean): SupportError[] {
  const supports = track.spec.profile.strip?.supports ?? [];
  const errors: SupportError[] = [];
  supports.forEach(({ chainage, departure, number: listed }, support) => {
    const number = listed ?? support;
    if (number < 0 || !take(chainage)) return;
    const before = supports[support - 1];
    const after = supports[support + 1];
    let line = 0;
    if (before !== undefined && after !== undefined) {
      const share = (chainage - before.chainage) / (after.chainage - before.chainage);
      line = before.departure + share * (after.departure - before.departure);
    }
    if (Math.abs(departure - line) >= settable) errors.push({ support, number, chainage, departure: departure - line });
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
  /** Whose support it is. */
  readonly part: Part;
  readonly error: SupportError;
  /** m, to a tenth of a millimetre, which is as fine as shims come. */
  readonly by: number;
  /** SI margin. */
  readonly expected: number;
}

const shim = 0.0001;

/** Supports of one track tried before the rest is left alone: a place has two or three next to it. */
const mostTried = 4;

/** The support, of those that `take` accepts, whose setting back helps this situation most; null when none helps. */
export function bestSupport(
  situation: Situation,
  parts: readonly Part[],
  take: (part: Part, chainage: number) => boolean,
  reach: number,
): SupportCure | null {
  let best: SupportCure | null = null;
  for (const part of parts) {
    const { profile } = part.track.spec;
    for (const error of supportErrors(part.track, (chainage) => take(part, chainage)).slice(0, mostTried)) {
      const by = -Math.round(error.departure / shim) * shim;
      if (by === 0) continue;
      const expected = marginIf(situation, { part, profile: withSupportMoved(profile, error.support, by) }, reach);
      if (expected === null || !(expected > situation.worst.margin)) continue;
      if (best === null || expected > best.expected) best = { part, error, by, expected };
    }
  }
  return best;
}

/** The same of the supports within `reach` (m) of the place itself. */
export function bestSupportNear(situation: Situation, reach: number): SupportCure | null {
  const { trial, worst } = situation;
  const near = ({ own }: Part, chainage: number): boolean => Math.abs(chainage - own(worst.chainage)) <= reach;
  return bestSupport(situation, partsNear(trial.parts, worst.chainage, reach), near, reach);
}
