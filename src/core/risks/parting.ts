import { couplingHalves, mismatchParts } from './headMismatch.ts';
import { jointLoads } from './jointLoads.ts';
import { newSample, sayNothing, saySpare } from './sample.ts';
import type { RiskDefinition, Sampler } from './types.ts';

const plenty = 0.001;

/**
 * Letting go in draft, m. Two ways, and the nearer one speaks: heads further apart in height than they engage, or a pull
 * beyond the release force, whose margin is the share of that force left, in terms of the engagement. Nothing to say in buff.
 */
export const parting: RiskDefinition = {
  id: 'parting',
  subject: 'joint',
  unit: 'length',
  plenty,
  near: 0.0003,
  prepare(context) {
    const halves = couplingHalves(context);
    const loads = jointLoads(context);
    // The shallower of two holds is the one that lets go.
    const engagement = Float64Array.from(halves, ([a, b]) => Math.min(a.engagement, b.engagement));
    const release = Float64Array.from(halves, ([a, b]) => Math.min(a.release, b.release));
    if (!engagement.some(Number.isFinite) && !release.some(Number.isFinite)) return null;
    const inspected = newSample();
    const sampler: Sampler = {
      sample(frame, joint, out) {
        sayNothing(out);
        const draft = loads.draft(frame.index, joint);
        if (Number.isNaN(draft)) return;
        const hold = engagement[joint];
        const held = hold < Number.POSITIVE_INFINITY;
        if (held) saySpare(out, Math.abs(frame.joints[joint].verticalOffset), hold, 'engagement');
        if (release[joint] === Number.POSITIVE_INFINITY) return;
        const spare = (held ? hold : plenty) * (1 - draft / release[joint]);
        if (spare >= out.margin) return;
        out.value = draft;
        out.limit = release[joint];
        out.margin = spare;
        out.governing = 'release';
      },
      parts(frame, joint) {
        sampler.sample(frame, joint, inspected);
        if (inspected.governing !== 'engagement') return [];
        return mismatchParts(frame.joints[joint].verticalOffset, halves[joint]);
      },
    };
    return sampler;
  },
};
