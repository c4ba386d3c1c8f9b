import type { Path, Run } from '../dynamics/types.ts';
import { riskById } from '../risks/index.ts';
import type { RiskId } from '../risks/types.ts';
import { couplerPivot } from '../stock/index.ts';
import type { Train } from '../stock/types.ts';

/** What of a solved trial tells where its vehicles and joints are. */
export interface PlacedTrial {
  readonly path: Path;
  readonly train: Train;
  readonly run: Run;
}

/**
 * Track chainage (m) of a risk's subject at a frame of the run: of the vehicle's or engine's origin, or midway between the two pivots of the
 * joint. It is what a finding's own chainage is at the finding's frame, to the difference between rail and plan
 * over a pivot's reach: 0.1 mm on 5 %. Frames beyond the run count as its ends.
 */
export function subjectChainage(
  { path, train, run }: PlacedTrial,
  risk: RiskId,
  subject: number,
  frame: number,
): number {
  const row = Math.min(Math.max(Math.trunc(frame), 0), run.frames - 1) * run.vehicles;
  const { subject: kind } = riskById(risk);
  let place: number;
  if (kind === 'joint') {
    const ahead = run.chainage[row + subject] + couplerPivot(train.vehicles[subject], 'rear').ahead;
    const behind = run.chainage[row + subject + 1] + couplerPivot(train.vehicles[subject + 1], 'front').ahead;
    place = (ahead + behind) / 2;
  } else {
    place = run.chainage[row + (kind === 'vehicle' ? subject : run.locomotives[subject])];
  }
  return path.reversed ? path.track.length - place : place;
}
