import { framePoser } from './moments/framePoser.ts';
import { type ReadyRisk, readyRisks, sampleInFull, subjectChainage } from './moments/readyRisks.ts';
import { newSample } from './moments/sample.ts';
import { risks } from './registry.ts';
import type { RiskContext, RiskDefinition, RiskSeries, RiskSubject } from './types.ts';

interface Row extends ReadyRisk {
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
  for (const ready of readyRisks(context, definitions)) {
    const { definition, subjects } = ready;
    const chainages = places.get(definition.subject) ?? new Float64Array(frames * subjects);
    places.set(definition.subject, chainages);
    rows.push({
      ...ready,
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
