import type { Frame, RiskContext, RiskDefinition, RiskSubject, Sampler, Worst } from '../types.ts';
import { newSample, toleranceRange } from './sample.ts';

/** A risk made ready for a trial, with how many subjects it has there. */
export interface ReadyRisk {
  readonly definition: RiskDefinition;
  readonly sampler: Sampler;
  readonly subjects: number;
}

/** Makes risks ready for a trial. One that cannot arise for this train on this track is left out. */
export function readyRisks(context: RiskContext, definitions: readonly RiskDefinition[]): ReadyRisk[] {
  return definitions.flatMap((definition) => {
    const subjects = subjectCount(definition.subject, context);
    const sampler = subjects > 0 ? definition.prepare(context) : null;
    return sampler === null ? [] : [{ definition, sampler, subjects }];
  });
}

/** How many subjects a risk has on this train. */
function subjectCount(subject: RiskSubject, context: RiskContext): number {
  const { run } = context;
  if (subject === 'joint') return Math.max(0, run.vehicles - 1);
  return subject === 'vehicle' ? run.vehicles : run.locomotives.length;
}

/** Path chainage (m) of one subject at a posed frame: between the pivots of a joint, else the vehicle's origin. */
export function subjectChainage(subject: RiskSubject, index: number, frame: Frame, context: RiskContext): number {
  if (subject === 'joint') return frame.joints[index].chainage;
  const vehicle = subject === 'vehicle' ? index : context.run.locomotives[index];
  return context.run.chainage[frame.index * context.run.vehicles + vehicle];
}

/** One sample with everything that explains it: parts, tolerance range, place. */
export function sampleInFull(
  definition: RiskDefinition,
  sampler: Sampler,
  frame: Frame,
  subject: number,
  context: RiskContext,
): Worst {
  const sample = newSample();
  sampler.sample(frame, subject, sample);
  const parts = sampler.parts(frame, subject);
  const compare = sampler.compare?.(frame, subject) ?? [];
  return {
    frame: frame.index,
    subject,
    chainage: subjectChainage(definition.subject, subject, frame, context),
    value: sample.value,
    limit: sample.limit,
    margin: sample.margin,
    range: sampler.range === undefined ? toleranceRange(sample, parts) : sampler.range(frame, subject),
    parts,
    governing: sample.governing,
    ...(compare.length === 0 ? {} : { compare }),
  };
}
