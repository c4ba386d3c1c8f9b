import { gradeBreaks, trackPoint } from '../../track/index.ts';
import { ofLeg } from '../part.ts';
import { jointReach, type Situation } from '../situation.ts';
import type { Cause } from '../types.ts';
import { bestSupportNear, type SupportCure } from './supports.ts';

/** A part of the offset smaller than this share of what holds is not worth a word. */
const telling = 0.1;

/** Gentler than this a vertical curve does nothing to a coupling, m. */
const gentlest = 100;

/** What brought two heads out of level at a joint: the supports, breaks and vertical curves about it, and the heads themselves. */
export function headCauses(situation: Situation): Cause[] {
  const { worst } = situation;
  const causes: Cause[] = [];
  const fitted = worst.parts.find((part) => part.label === 'fitted-heads')?.value ?? 0;
  const byTrack = worst.parts.find((part) => part.label === 'track-geometry')?.value ?? 0;
  if (byTrack > telling * worst.limit) causes.push(...heightCauses(situation, jointReach(situation)));
  if (fitted > telling * worst.limit) causes.push({ kind: 'heads-differ', by: fitted });
  if (fitted > byTrack) causes.reverse();
  return causes;
}

/** What in the track's heights within `reach` (m) of the place is to blame: a support, else a break of grade, else a vertical curve. */
export function heightCauses(situation: Situation, reach: number): Cause[] {
  const { context, worst } = situation;
  const support = bestSupportNear(situation, reach);
  if (support !== null) {
    const { part, error } = support;
    return [
      { kind: 'support-off', support: error.number, departure: error.departure, ...ofLeg(part) },
      gradesAbout(situation, support),
    ];
  }
  const { track } = context.path;
  const breaks = gradeBreaks(track)
    .filter(({ chainage }) => Math.abs(chainage - worst.chainage) <= reach)
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before));
  if (breaks.length > 0) return [{ kind: 'kink', before: breaks[0].before, after: breaks[0].after }];
  let sharpest = 0;
  for (let step = -8; step <= 8; step++) {
    const bend = Math.abs(trackPoint(track, worst.chainage + (reach * step) / 8).verticalCurvature);
    if (bend > sharpest) sharpest = bend;
  }
  return sharpest * gentlest > 1 ? [{ kind: 'vertical-curve', radius: 1 / sharpest }] : [];
}

/** Mean grades from support to support before and after one of them, as the train meets them. */
function gradesAbout({ context }: Situation, { part, error: { support } }: SupportCure): Cause {
  const { track } = context.path;
  const { way } = part;
  const supports = part.track.spec.profile.strip?.supports ?? [];
  const at = (index: number): number => part.path(supports[Math.min(supports.length - 1, Math.max(0, index))].chainage);
  return {
    kind: 'kink',
    before: meanGrade(track, at(support - way), at(support)),
    after: meanGrade(track, at(support), at(support + way)),
  };
}

/** Rise over plan distance between two chainages; the grade itself where they fall together. */
function meanGrade(track: Situation['context']['path']['track'], from: number, to: number): number {
  if (from === to) return trackPoint(track, from).grade;
  return (trackPoint(track, to).z - trackPoint(track, from).z) / (to - from);
}
