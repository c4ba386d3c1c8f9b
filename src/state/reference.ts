import { subjectChainage } from '../core/findings/index.ts';
import { riskById } from '../core/risks/index.ts';
import type { RiskId } from '../core/risks/types.ts';
import { frontReach, rearReach } from '../core/stock/index.ts';
import type { CompiledTrial, TrialResult } from '../sim/types.ts';
import type { SessionState } from './types.ts';

/** What of the train the playhead, the cameras and the readouts speak of: a joint, what a chosen finding is about, or the middle. */
export type Reference =
  | { readonly kind: 'joint'; readonly joint: number }
  | { readonly kind: 'subject'; readonly risk: RiskId; readonly subject: number }
  | { readonly kind: 'middle' };

/** A joint that was chosen comes first, then the vehicle or engine of the chosen finding, then the middle of the train. */
export function referenceOf(
  state: Pick<SessionState, 'trial' | 'result' | 'chosenJoint' | 'chosenFinding'>,
): Reference {
  const { trial, result, chosenJoint, chosenFinding } = state;
  if (chosenJoint !== null && chosenJoint < (trial?.train.vehicles.length ?? 1) - 1)
    return { kind: 'joint', joint: chosenJoint };
  const finding = chosenFinding === null ? undefined : result?.findings[chosenFinding];
  if (finding !== undefined && riskById(finding.risk).subject !== 'joint')
    return { kind: 'subject', risk: finding.risk, subject: finding.subject };
  return { kind: 'middle' };
}

/** The vehicle (index in the running train) that a reference stands for: the leading one of a joint. */
export function referenceVehicle({ run }: TrialResult, reference: Reference): number {
  if (reference.kind === 'joint') return reference.joint;
  if (reference.kind === 'middle') return Math.floor((run.vehicles - 1) / 2);
  return riskById(reference.risk).subject === 'locomotive'
    ? (run.locomotives[reference.subject] ?? 0)
    : reference.subject;
}

/** Track chainage (m) of a reference in every recorded frame, F. */
export function referencePlaces(trial: CompiledTrial, result: TrialResult, reference: Reference): Float64Array {
  const { run } = result;
  const placed = { path: trial.path, train: trial.train, run };
  const places = new Float64Array(run.frames);
  if (reference.kind === 'middle') {
    const last = run.vehicles - 1;
    const shift = (frontReach(trial.train.vehicles[0]) - rearReach(trial.train.vehicles[last])) / 2;
    for (let frame = 0; frame < run.frames; frame++) {
      const at = frame * run.vehicles;
      const place = (run.chainage[at] + run.chainage[at + last]) / 2 + shift;
      places[frame] = trial.path.reversed ? trial.path.track.length - place : place;
    }
    return places;
  }
  // Every risk of joints places a joint midway between its pivots.
  const { risk, subject } = reference.kind === 'joint' ? { risk: jointRisk, subject: reference.joint } : reference;
  for (let frame = 0; frame < run.frames; frame++) places[frame] = subjectChainage(placed, risk, subject, frame);
  return places;
}

const jointRisk: RiskId = 'override';
