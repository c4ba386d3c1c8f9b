import { framePoser } from './framePoser.ts';
import { risks } from './registry.ts';
import { newSample, toleranceRange } from './sample.ts';
import type { Frame, RiskContext, RiskDefinition, RiskSeries, RiskSubject, Sampler, Worst } from './types.ts';

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

interface Row {
  readonly definition: RiskDefinition;
  readonly sampler: Sampler;
  readonly subjects: number;
  readonly margins: Float64Array;
  readonly chainages: Float64Array;
  leastMargin: number;
  leastFrame: number;
  leastSubject: number;
}

/**
 * Margins of every registered risk at every frame of a run, with the least of each (SI; layouts in `RiskSeries`). Every
 * frame is posed once for all risks. A risk that cannot arise for this train on this track has no series.
 */
export function assessRun(context: RiskContext, definitions: readonly RiskDefinition[] = risks): RiskSeries[] {
  const { frames } = context.run;
  const rows: Row[] = [];
  /** Risks with the same subjects share where these are. */
  const places = new Map<RiskSubject, Float64Array>();
  for (const definition of definitions) {
    const subjects = subjectCount(definition.subject, context);
    const sampler = subjects > 0 ? definition.prepare(context) : null;
    if (sampler === null) continue;
    const chainages = places.get(definition.subject) ?? new Float64Array(frames * subjects);
    places.set(definition.subject, chainages);
    rows.push({
      definition,
      sampler,
      subjects,
      margins: new Float64Array(frames * subjects),
      chainages,
      leastMargin: Number.POSITIVE_INFINITY,
      leastFrame: -1,
      leastSubject: -1,
    });
  }
  const pose = framePoser(context);
  const sample = newSample();
  for (let f = 0; f < frames; f++) {
    const frame = pose(f);
    for (const [subject, chainages] of places) {
      const subjects = chainages.length / frames;
      for (let k = 0; k < subjects; k++) {
        chainages[f * subjects + k] = subjectChainage(subject, k, frame, context);
      }
    }
    for (const row of rows) {
      const { subjects, margins, sampler } = row;
      for (let k = 0; k < subjects; k++) {
        sampler.sample(frame, k, sample);
        const { margin } = sample;
        margins[f * subjects + k] = margin;
        if (margin < row.leastMargin) {
          row.leastMargin = margin;
          row.leastFrame = f;
          row.leastSubject = k;
        }
      }
    }
  }
  return rows.map((row) => ({
    risk: row.definition.id,
    subjects: row.subjects,
    margins: row.margins,
    chainages: row.chainages,
    worst:
      row.leastFrame < 0
        ? null
        : sampleInFull(row.definition, row.sampler, pose(row.leastFrame), row.leastSubject, context),
  }));
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
