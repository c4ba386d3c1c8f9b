import type { Run } from '../core/dynamics/types.ts';
import { frontReach, newPlacement, placeVehicle } from '../core/stock/index.ts';
import { chainageAtRail, railAt } from '../core/track/index.ts';
import { acrossMm, sharedStretches, standingOn } from '../scene/index.ts';
import type { CompiledTrial } from './types.ts';

const mm = 1e-3;

/** How a run ended that a following trial does not begin from. */
const endings: Readonly<Record<Exclude<Run['outcome'], 'arrived'>, string>> = {
  stalled: 'stalls',
  parted: 'parts its train',
  'end-of-track': 'runs off the end of its track before it stands',
  'time-limit': 'has not come to a stand when its time is over',
};

/** A trial does not begin: the one it goes on from does not end with its whole train at a stand on this one's way. */
export class NotReached extends RangeError {}

/**
 * A trial with the train as the one before it left it: at rest on the same rails, every joint stretched or bunched as it was, whichever end now leads.
 *
 * The place of the leading vehicle is taken over along the rails that both ways share, and from there the extension of every joint, so the forces in the
 * couplings are the same to rounding. Throws NotReached in words where the trial before did not end with its whole train at a stand, or not on this way.
 */
export function handOver(trial: CompiledTrial, before: CompiledTrial, run: Run): CompiledTrial {
  const whose = `Trial "${trial.id}" goes on from "${before.id}"`;
  if (run.outcome !== 'arrived') {
    throw new NotReached(
      `Trial "${trial.id}" is not reached: "${before.id}", which it goes on from, ${endings[run.outcome]}.`,
    );
  }
  const { vehicles } = before.train;
  const n = run.vehicles;
  const last = (run.frames - 1) * n;
  const lengthMm = before.path.track.length / mm;
  /** Chainage along the way as the scene counts it, mm, of one along the path, m. */
  const counted = (chainage: number): number => (before.path.reversed ? lengthMm - chainage / mm : chainage / mm);
  const placed = newPlacement();
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  vehicles.forEach((vehicle, i) => {
    placeVehicle(before.path.track, vehicle, run.chainage[last + i], placed);
    for (const chainage of [placed.frontChainage, placed.rearChainage]) {
      low = Math.min(low, counted(chainage));
      high = Math.max(high, counted(chainage));
    }
  });
  const standing = standingOn(sharedStretches(before.way, trial.way), low, high);
  if (standing === null) {
    throw new NotReached(`${whose}, but where that one's train comes to its stand is not on its way.`);
  }
  const { stretch, outBeforeMm, outAfterMm } = standing;
  const [rearOutMm, headOutMm] = before.path.reversed ? [outAfterMm, outBeforeMm] : [outBeforeMm, outAfterMm];
  if (rearOutMm > 0 || headOutMm > 0) {
    const out = [
      ...(rearOutMm > 0 ? [`the last wheels stand ${rearOutMm.toFixed(1)} mm short of it`] : []),
      ...(headOutMm > 0 ? [`the first wheels stand ${headOutMm.toFixed(1)} mm beyond it`] : []),
    ].join(' and ');
    throw new NotReached(`${whose}, but not the whole train comes to its stand on its way: ${out}.`);
  }
  const sameEnd = trial.lastLeads === before.lastLeads;
  const { track, reversed } = trial.path;
  const lead = sameEnd ? 0 : n - 1;
  const alongMm = acrossMm(stretch, counted(run.chainage[last + lead]));
  const origin = reversed ? track.length - alongMm * mm : alongMm * mm;
  const start = chainageAtRail(track, railAt(track, origin) + frontReach(trial.train.vehicles[0]));
  const ended = [...run.extension.subarray((run.frames - 1) * (n - 1))];
  return { ...trial, script: { ...trial.script, start }, stretch: sameEnd ? ended : ended.reverse() };
}
