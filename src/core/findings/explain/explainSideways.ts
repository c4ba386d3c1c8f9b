import type { RiskContext } from '../../risks/types.ts';
import { trackPoint } from '../../track/index.ts';
import type { Situation } from '../situation.ts';
import type { Cause } from '../types.ts';
import { bestCures, type Candidate, type Explainer } from './explainer.ts';
import { beyondJoint, buffCause, draftCause } from './loads.ts';
import { changedWorking, fewerVehicles } from './working.ts';

/** Wider than this a curve presses nothing aside that counts, m. */
const widest = 20;

/** The curve a vehicle stands in, at its tighter running gear. */
export function curveOfVehicle({ context, frame, worst }: Situation): Cause[] {
  const { frontChainage, rearChainage } = frame.placements[worst.subject];
  const front = Math.abs(trackPoint(context.path.track, frontChainage).curvature);
  const rear = Math.abs(trackPoint(context.path.track, rearChainage).curvature);
  const sharpest = Math.max(front, rear);
  return sharpest * widest < 1 ? [] : [{ kind: 'curve', radius: 1 / sharpest }];
}

/** The joint of a vehicle that carries more at a frame, of pulls or of pushes; null where neither carries any. */
function loadedJoint({ run }: RiskContext, frame: number, vehicle: number, peaks: Float64Array): number | null {
  const width = run.vehicles - 1;
  let most: number | null = null;
  for (let joint = Math.max(0, vehicle - 1); joint <= Math.min(width - 1, vehicle); joint++) {
    const force = Math.abs(peaks[frame * width + joint]);
    if (force > 0 && (most === null || force > Math.abs(peaks[frame * width + most]))) most = joint;
  }
  return most;
}

/** The two ways to work a train, and which of a vehicle's joints bears the more of it. */
export type Way = 'draft' | 'buff';

export function loadOf(situation: Situation, way: Way): { readonly joint: number; readonly cause: Cause } | null {
  const { context, worst } = situation;
  const { draftPeak, buffPeak } = context.run;
  const joint = loadedJoint(context, worst.frame, worst.subject, way === 'draft' ? draftPeak : buffPeak);
  if (joint === null) return null;
  const atJoint = { ...situation, worst: { ...worst, subject: joint } };
  return { joint, cause: way === 'draft' ? draftCause(atJoint) : buffCause(atJoint) };
}

/** Fewer vehicles until the side force leaves more than near; it falls as the force in the coupling does. */
export function fewer(situation: Situation, joint: number): Candidate[] {
  const { context, worst, definition } = situation;
  const left = (force: number): number => 1 - force / worst.limit;
  return fewerVehicles(situation, beyondJoint(context, joint), (1 - definition.near) * worst.limit, left);
}

/** What pulls or pushes a vehicle off sideways: a coupling force and a curve; worked the other way that force is gone, not the run-ins. */
const explainer = (way: Way): Explainer => ({
  causes(situation) {
    const load = loadOf(situation, way);
    return [...curveOfVehicle(situation), ...(load === null ? [] : [load.cause])];
  },
  cures(situation) {
    const load = loadOf(situation, way);
    if (load === null) return [];
    return bestCures(situation, [...fewer(situation, load.joint), changedWorking(situation)]);
  },
});

export const explainStringLining = explainer('draft');

export const explainJackKnife = explainer('buff');

export const explainWheelClimb: Explainer = {
  causes(situation) {
    const loads = [loadOf(situation, 'draft'), loadOf(situation, 'buff')].filter((load) => load !== null);
    // Pulled and pushed within one frame: the greater of the two is named.
    const size = ({ cause }: { cause: Cause }): number => ('force' in cause ? cause.force : 0);
    const [most] = loads.sort((a, b) => size(b) - size(a));
    return [...curveOfVehicle(situation), ...(most === undefined ? [] : [most.cause])];
  },
  cures(situation, causes) {
    const pushed = causes.some(({ kind }) => kind === 'buff');
    const load = loadOf(situation, pushed ? 'buff' : 'draft');
    if (load === null) return [];
    const cures = fewer(situation, load.joint);
    return bestCures(situation, pushed ? [changedWorking(situation), ...cures] : cures);
  },
};
