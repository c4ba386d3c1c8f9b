import type { TrialResult } from '../sim/types.ts';

/** Events closer than this are one stop, s. */
const closest = 0.05;

/** Moments worth stopping at, in order of time, s: what the run reports, and each failing or near finding. */
export function eventTimes(result: TrialResult): number[] {
  const times = [
    ...result.run.events.map((event) => event.time),
    ...result.findings.filter((finding) => finding.verdict !== 'passes').map((finding) => finding.time),
  ].sort((a, b) => a - b);
  return times.filter((time, index) => index === 0 || time - times[index - 1] >= closest);
}

/** The next stop after `time`, or null. */
export function timeAfter(times: readonly number[], time: number): number | null {
  return times.find((stop) => stop > time + closest) ?? null;
}

/** The last stop before `time`, or null. */
export function timeBefore(times: readonly number[], time: number): number | null {
  return times.findLast((stop) => stop < time - closest) ?? null;
}
