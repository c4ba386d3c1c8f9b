import { contactFaces, contactLift, draggedLift, endHold } from './heads/endLift.ts';
import { couplingHalves, mismatchParts } from './heads/headMismatch.ts';
import { jointLoads } from './moments/jointLoads.ts';
import { greatestOffset, jointPassages } from './moments/jointPassages.ts';
import { newSample, sayNothing, saySpare } from './moments/sample.ts';
import type { RiskDefinition, Sampler } from './types.ts';

/**
 * Riding up in buff, m. Two ways, and the nearer one speaks: heads further apart in height than their facing, or an
 * end lifted by the lean of the contact faces, whose margin is the share of its hold that is left, in terms of the facing:
 * both are zero exactly where the head goes over. The offset is the greatest since the frame before, at the frames and where a running point
 * beside the joint stands on a corner of the track. Beside them, for comparison, what the mate could lift by dragging the head up with it. Nothing
 * to say while the joint is in draft.
 */
export const override: RiskDefinition = {
  id: 'override',
  subject: 'joint',
  unit: 'length',
  plenty: 0.0015,
  near: 0.0003,
  prepare(context) {
    const { vehicles } = context.train;
    const halves = couplingHalves(context);
    const loads = jointLoads(context);
    const passages = jointPassages(context);
    const facing = Float64Array.from(halves, ([a, b]) => (a.facingHeight + b.facingHeight) / 2);
    const faces = halves.map(([a, b]) => contactFaces(a, b));
    /** What a push of 1 N lifts, N. */
    const facesLift = Float64Array.from(faces, ({ tilt, friction }) => contactLift(1, tilt, friction));
    const hold = Float64Array.from(halves, (_, j) =>
      Math.min(endHold(vehicles[j], 'rear'), endHold(vehicles[j + 1], 'front')),
    );
    if (!facing.some(Number.isFinite)) return null;
    const inspected = newSample();
    /** Height between the heads of the joint last sampled, m. */
    let offset = 0;
    const sampler: Sampler = {
      sample(frame, joint, out) {
        const buff = loads.buff(frame.index, joint);
        const face = facing[joint];
        if (Number.isNaN(buff) || face === Number.POSITIVE_INFINITY) return sayNothing(out);
        offset = greatestOffset(frame, joint, passages, passages.stand(frame, joint));
        saySpare(out, Math.abs(offset), face, 'facing');
        const lift = buff * facesLift[joint];
        const spare = face * (1 - lift / hold[joint]);
        if (spare >= out.margin) return;
        out.value = lift;
        out.limit = hold[joint];
        out.margin = spare;
        out.governing = 'lift';
      },
      parts(frame, joint) {
        sampler.sample(frame, joint, inspected);
        if (inspected.governing !== 'facing') return [];
        return mismatchParts(offset, halves[joint]);
      },
      compare(frame, joint) {
        const buff = loads.buff(frame.index, joint);
        if (!(buff > 0) || facing[joint] === Number.POSITIVE_INFINITY) return [];
        const value = draggedLift(buff, faces[joint].tilt, faces[joint].friction);
        const limit = hold[joint];
        return [{ label: 'dragged-up', value, limit, margin: facing[joint] * (1 - value / limit) }];
      },
    };
    return sampler;
  },
};
