import { makeJoint } from '../../stock/index.ts';
import type { RiskContext } from '../types.ts';

/**
 * What every joint of a run carries, as the risks need to know it.
 *
 * A risk that needs buff must not miss the blow between two frames, hence the peaks. A joint that floats in its slack
 * carries nothing at the moment; it counts as one in buff when it is about to close, as one in draft when it is about
 * to stretch, because the blow then finds the heads where they stand now. A joint that has parted is none any more.
 */
export interface JointLoads {
  /** Slack of each joint, m. */
  readonly slack: Float64Array;
  /** Whether the joint still is one at this frame. */
  coupled(frame: number, joint: number): boolean;
  /** Greatest buff (N, as a positive number) since the frame before; 0 when afloat and about to close; NaN otherwise. */
  buff(frame: number, joint: number): number;
  /** Greatest draft (N) since the frame before; 0 when afloat and about to stretch; NaN otherwise. */
  draft(frame: number, joint: number): number;
  /** Whether the joint is one and neither pulled nor pushed by more than `most` (N) since the frame before. */
  afloat(frame: number, joint: number, most: number): boolean;
  /** How much shorter (m, ≥ 0) the joint was at its greatest buff since the frame before, or will be once its slack has closed. */
  shorter(frame: number, joint: number): number;
  /**
   * Force (N, draft positive) to judge what a joint does to a vehicle by: its greatest draft since the frame before, or its greatest buff. Asked for draft
   * it answers 0 where it carried neither and where there is no joint (any more); NaN: it had none of that kind, but the other.
   */
  peak(frame: number, joint: number, draft: boolean): number;
}

/**
 * A floating joint that meets within this time at its present rate is about to, s: at 0.2 m/s the train moves 50 mm in it,
 * a fraction of a vehicle's length, so the heads will still stand as they do.
 */
const soon = 0.25;

/** Reads the loads of every joint from a run, in constant time a look-up. */
export function jointLoads({ run, train: { vehicles } }: RiskContext): JointLoads {
  const joints = vehicles.slice(1).map((trailing, j) => makeJoint(vehicles[j].rear.coupling, trailing.front.coupling));
  const slack = Float64Array.from(joints, (joint) => joint.slack);
  const width = joints.length;
  /** Frames after which, and from which again not, a joint is apart. */
  const apart = joints.map((): { from: number; to: number }[] => []);
  for (const event of run.events) {
    if (event.kind !== 'parting' && event.kind !== 'recoupling') continue;
    const frame = run.time.findIndex((time) => time >= event.time);
    if (frame < 0) continue;
    const gaps = apart[event.subject];
    if (event.kind === 'parting') gaps.push({ from: frame, to: run.frames });
    else gaps[gaps.length - 1].to = frame;
  }
  const alwaysWhole = apart.every((gaps) => gaps.length === 0);
  /** Speed at which a joint lengthens, m/s. */
  const openingRate = (frame: number, joint: number): number => {
    const row = frame * run.vehicles + joint;
    return run.speed[row] - run.speed[row + 1];
  };
  const loads: JointLoads = {
    slack,
    coupled: (frame, joint) => alwaysWhole || !apart[joint].some(({ from, to }) => frame > from && frame < to),
    buff(frame, joint) {
      if (!loads.coupled(frame, joint)) return Number.NaN;
      const at = frame * width + joint;
      const peak = run.buffPeak[at];
      if (peak < 0) return -peak;
      const closing = -openingRate(frame, joint);
      if (run.force[at] !== 0 || closing <= 0) return Number.NaN;
      return run.extension[at] + slack[joint] / 2 <= closing * soon ? 0 : Number.NaN;
    },
    draft(frame, joint) {
      if (!loads.coupled(frame, joint)) return Number.NaN;
      const at = frame * width + joint;
      const peak = run.draftPeak[at];
      if (peak > 0) return peak;
      const opening = openingRate(frame, joint);
      if (run.force[at] !== 0 || opening <= 0) return Number.NaN;
      return slack[joint] / 2 - run.extension[at] <= opening * soon ? 0 : Number.NaN;
    },
    afloat(frame, joint, most) {
      const at = frame * width + joint;
      return loads.coupled(frame, joint) && run.draftPeak[at] <= most && -run.buffPeak[at] <= most;
    },
    shorter(frame, joint) {
      const at = frame * width + joint;
      const squeezed = run.buffPeak[at] / joints[joint].buffStiffness - slack[joint] / 2;
      return Math.max(0, run.extension[at] - squeezed);
    },
    peak(frame, joint, draft) {
      const none = joint < 0 || joint >= width || !loads.coupled(frame, joint);
      const at = frame * width + joint;
      const pulled = none ? 0 : run.draftPeak[at];
      const pushed = none ? 0 : run.buffPeak[at];
      if (draft) return pulled > 0 || pushed === 0 ? pulled : Number.NaN;
      return pushed < 0 ? pushed : Number.NaN;
    },
  };
  return loads;
}
