import type { CouplingKind } from '../stock/types.ts';
import { headsAside } from './heads/headAside.ts';
import { couplingHalves, mismatchParts } from './heads/headMismatch.ts';
import { jointLoads } from './moments/jointLoads.ts';
import { greatestOffset, jointPassages } from './moments/jointPassages.ts';
import { newSample, sayNothing, saySpare } from './moments/sample.ts';
import type { Governing, RiskDefinition, Sample, Sampler } from './types.ts';

const plenty = 0.001;

/** Couplings that hold by a hook or a link which only its own weight keeps down. */
const hooks: ReadonlySet<CouplingKind> = new Set<CouplingKind>(['hook-and-bar', 'loop', 'link']);

/**
 * Pull or push below which friction holds a hook no better than its own weight does, N: a hook of 0.3 g that rubs with 0.3. An
 * assumption; a few times more or less changes which frames count as afloat, not what is left there.
 */
const holdsHook = 0.01;

/**
 * Letting go, m. In draft by height (heads further apart than they engage), by side (further apart across than they hold, past their free swing) or by force,
 * whose margin is the share of the release force left, in terms of the engagement. A hook or link that floats, with neither pull nor push to hold it down, lifts out by height too,
 * wherever the slack is going. By height the worst since the frame before counts, at the frames and where a running point beside the joint stands on a corner of the track. The nearest speaks; nothing to say in buff.
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
    const passages = jointPassages(context);
    // The shallower of two holds is the one that lets go.
    const least = (pick: (half: (typeof halves)[number][0]) => number): Float64Array =>
      Float64Array.from(halves, ([a, b]) => Math.min(pick(a), pick(b)));
    const engagement = least((half) => half.engagement);
    const sideHold = least((half) => half.sideHold ?? Number.POSITIVE_INFINITY);
    const release = least((half) => half.release);
    const hooked = halves.map(([a, b]) => hooks.has(a.kind) && hooks.has(b.kind));
    if (![...engagement, ...sideHold, ...release].some(Number.isFinite)) return null;
    const inspected = newSample();
    /** Height between the heads of the joint last sampled, m. */
    let offset = 0;

    const consider = (value: number, limit: number, margin: number, governing: Governing, out: Sample): void => {
      if (margin >= out.margin) return;
      out.value = value;
      out.limit = limit;
      out.margin = margin;
      out.governing = governing;
    };
    const sampler: Sampler = {
      sample(frame, joint, out) {
        sayNothing(out);
        const hold = engagement[joint];
        const held = hold < Number.POSITIVE_INFINITY;
        const loose = held && hooked[joint] && loads.afloat(frame.index, joint, holdsHook);
        const draft = loads.draft(frame.index, joint);
        if (!loose && Number.isNaN(draft)) return;
        offset = greatestOffset(frame, joint, passages, passages.stand(frame, joint));
        const apart = Math.abs(offset);
        if (loose) saySpare(out, apart, hold, 'float');
        if (Number.isNaN(draft)) return;
        if (held && !loose) saySpare(out, apart, hold, 'engagement');
        if (sideHold[joint] < Number.POSITIVE_INFINITY) {
          const aside = headsAside(halves[joint][0], halves[joint][1], frame.joints[joint]);
          const spare = sideHold[joint] - aside;
          consider(aside, sideHold[joint], spare, 'side-hold', out);
        }
        if (release[joint] === Number.POSITIVE_INFINITY) return;
        const spare = (held ? hold : plenty) * (1 - draft / release[joint]);
        consider(draft, release[joint], spare, 'release', out);
      },
      parts(frame, joint) {
        sampler.sample(frame, joint, inspected);
        if (inspected.governing !== 'engagement' && inspected.governing !== 'float') return [];
        return mismatchParts(offset, halves[joint]);
      },
    };
    return sampler;
  },
};
