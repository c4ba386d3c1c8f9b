import type { TrialResult } from '../../../state/types.ts';

/** How far to either side of the place the trace reaches, m. */
const reach = 0.3;

/** Points of a trace of one risk at one joint: places as track chainage m, margins in the risk's unit. */
export interface Passing {
  readonly at: readonly number[];
  readonly margin: readonly number[];
  readonly frame: readonly number[];
}

/** The margin of one risk at one subject while it passes `chainage`, around the frame nearest to it. */
export function passingOf(
  result: TrialResult,
  risk: string,
  subject: number,
  chainage: number,
  toTrack: (path: number) => number,
): Passing | null {
  const series = result.risks.find((one) => one.risk === risk);
  if (!series || subject >= series.subjects) return null;
  const at: number[] = [];
  const margin: number[] = [];
  const frame: number[] = [];
  for (let index = 0; index < result.run.frames; index++) {
    const sample = index * series.subjects + subject;
    const place = toTrack(series.chainages[sample]);
    if (!Number.isFinite(series.margins[sample]) || Math.abs(place - chainage) > reach) continue;
    at.push(place);
    margin.push(series.margins[sample]);
    frame.push(index);
  }
  return at.length < 3 ? null : { at, margin, frame };
}
