import type { JointGeometry } from '../stock/types.ts';
import { jointLoads } from './moments/jointLoads.ts';
import { jointPassages } from './moments/jointPassages.ts';
import { sayNothing, saySpare } from './moments/sample.ts';
import type { RiskDefinition, Sample } from './types.ts';

/** A pair of facing heads at one joint: mean width and height, m. */
interface Heads {
  readonly width: number;
  readonly height: number;
}

/**
 * Overlap (m, sideways) that facing buffer heads have left when they stand `across` and `up` of each other; negative:
 * lost, by so much. Exact for round heads; flat-topped ones are taken as the ellipse inside them, which is never the
 * kinder reading. Once the heads miss each other in height the loss counts from there.
 */
function overlapAllowed(heads: Heads, up: number): number {
  const share = up / heads.height;
  return Math.abs(share) <= 1 ? heads.width * Math.sqrt(1 - share * share) : heads.height - Math.abs(up);
}

/**
 * Buffer locking: the sideways offset of facing heads against their overlap, m. Heads that have lost it slip behind each other
 * as soon as their faces meet, so it takes both, overlap lost and gap closed in buff: the margin of a pair is
 * the greater of overlap left and gap left. Value and limit are those of the one that governs: by overlap how far the heads
 * stand aside against their overlap, by gap how much of it the squeeze takes against the gap there is. A joint
 * held in draft keeps the gap it shows; in buff the gap at the greatest squeeze counts, afloat and closing the gap once the slack is gone. Judged at the frames and where
 * a running point beside the joint stands on a corner of the track since the frame before.
 */
export const bufferLock: RiskDefinition = {
  id: 'buffer-lock',
  subject: 'joint',
  unit: 'length',
  plenty: 0.004,
  near: 0.0015,
  prepare(context) {
    const { vehicles } = context.train;
    const loads = jointLoads(context);
    const heads = vehicles.slice(1).map((trailing, j): Heads | null => {
      const a = vehicles[j].rear.buffers;
      const b = trailing.front.buffers;
      if (a === null || b === null) return null;
      return { width: (a.headWidth + b.headWidth) / 2, height: (a.headHeight + b.headHeight) / 2 };
    });
    if (heads.every((pair) => pair === null)) return null;
    const passages = jointPassages(context);
    /** Takes the nearer pair of heads of one stand where it is nearer than what was found before. */
    const worse = (
      pair: Heads,
      { bufferLateral, bufferVertical, bufferGap }: JointGeometry,
      squeeze: number,
      out: Sample,
    ) => {
      for (let side = 0; side < 2; side++) {
        const aside = Math.abs(bufferLateral[side]);
        const overlap = overlapAllowed(pair, bufferVertical[side]);
        const gap = bufferGap[side];
        const margin = Math.max(overlap - aside, gap - squeeze);
        if (margin >= out.margin) continue;
        if (gap - squeeze > overlap - aside) saySpare(out, squeeze, gap, 'gap');
        else saySpare(out, aside, overlap, 'overlap');
      }
    };
    return {
      sample(frame, joint, out) {
        const pair = heads[joint];
        sayNothing(out);
        if (pair === null || !loads.coupled(frame.index, joint)) return;
        const meets = !Number.isNaN(loads.buff(frame.index, joint));
        const squeeze = meets ? loads.shorter(frame.index, joint) : 0;
        worse(pair, frame.joints[joint], squeeze, out);
        const passed = passages.stand(frame, joint);
        for (let k = 0; k < passed; k++) worse(pair, passages.joints[k], squeeze, out);
      },
      parts: () => [],
    };
  },
};
