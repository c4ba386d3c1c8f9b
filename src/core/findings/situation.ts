import { framePoser, riskById, sampleInFull } from '../risks/index.ts';
import type { Frame, RiskContext, RiskDefinition, RiskId, Sampler, Worst } from '../risks/types.ts';
import { frontReach, rearReach } from '../stock/index.ts';
import { type Part, partsOf } from './part.ts';
import type { Driven } from './settingsAlong.ts';

/** A trial made ready for explaining. */
export interface Trial {
  readonly context: RiskContext;
  /** How the train was driven; null where that is not known. */
  readonly driven: Driven | null;
  /** The tracks it runs over, the way the scene gives them, in order. */
  readonly parts: readonly Part[];
  /** Path chainage to the chainage that findings tell and back, m: the same sum both ways. */
  otherWay(chainage: number): number;
  pose(frame: number): Frame;
  /** The sampler of a risk, prepared once; null when the risk cannot arise here. */
  samplerOf(risk: RiskId): Sampler | null;
}

/** One sample of one risk, with what is needed to explain it. */
export interface Situation {
  readonly trial: Trial;
  readonly context: RiskContext;
  readonly definition: RiskDefinition;
  readonly worst: Worst;
  /** The train at that moment. Overwritten when the trial poses another frame. */
  readonly frame: Frame;
}

export function trialOf(context: RiskContext, driven: Driven | null = null): Trial {
  const { track, reversed } = context.path;
  const samplers = new Map<RiskId, Sampler | null>();
  return {
    context,
    driven,
    parts: partsOf(context.path),
    otherWay: (chainage) => (reversed ? track.length - chainage : chainage),
    pose: framePoser(context),
    samplerOf(risk) {
      let sampler = samplers.get(risk);
      if (sampler === undefined) {
        sampler = riskById(risk).prepare(context);
        samplers.set(risk, sampler);
      }
      return sampler;
    },
  };
}

/** Poses one sample again and looks at it closely; null when the risk cannot arise or says nothing there. */
export function situationAt(trial: Trial, risk: RiskId, frame: number, subject: number): Situation | null {
  const { context } = trial;
  const definition = riskById(risk);
  const sampler = trial.samplerOf(risk);
  if (sampler === null) return null;
  const posed = trial.pose(frame);
  const worst = sampleInFull(definition, sampler, posed, subject, context);
  return Number.isNaN(worst.margin) ? null : { trial, context, definition, worst, frame: posed };
}

/** How far from a joint (m) the track still moves its two heads: to the far running points of both vehicles. */
export function jointReach({ context, worst }: Situation): number {
  const leading = context.train.vehicles[worst.subject];
  const trailing = context.train.vehicles[worst.subject + 1];
  return Math.max(leading.pivotSpacing + leading.rearOverhang, trailing.pivotSpacing + trailing.frontOverhang);
}

/** How far from a vehicle's middle (m) the track still lies under it. */
export function vehicleReach({ context, worst }: Situation): number {
  const vehicle = context.train.vehicles[worst.subject];
  return Math.max(frontReach(vehicle), rearReach(vehicle));
}
