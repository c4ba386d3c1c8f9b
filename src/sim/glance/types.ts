import type { Scene } from '../../scene/index.ts';
import type { TrialMeasure } from '../study/types.ts';

/** What a trial comes to by the quasi-static pass, as far as a verdict needs it. */
export type Glimpse = Pick<TrialMeasure, 'trialId' | 'outcome' | 'passes' | 'risks'>;

/** A question asked while something is dragged: one trial of a railway that is no file yet. */
export interface GlanceRequest {
  readonly scene: Scene;
  readonly trialId: string;
  /** Every station of the pass is judged, not only those near which the least margin seems to lie. */
  readonly thorough: boolean;
}

/** What is seen at a glance, or why it cannot be run, in words. */
export type Glance = { readonly ok: true; readonly measure: Glimpse } | { readonly ok: false; readonly reason: string };
