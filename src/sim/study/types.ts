import type { Outcome } from '../../core/dynamics/types.ts';
import type { RiskId, RiskUnit } from '../../core/risks/types.ts';
import type { Address, Json, Scene } from '../../scene/index.ts';

/** What one risk came to over a whole trial. */
export interface RiskMeasure {
  readonly risk: RiskId;
  /** SI, in `unit`; negative fails. */
  readonly margin: number;
  readonly unit: RiskUnit;
  /** The margin in terms of the risk's own plenty: what different risks are compared by. */
  readonly share: number;
  /** Track chainage, m, and joint, vehicle or locomotive index in running order. */
  readonly chainage: number;
  readonly subject: number;
}

/** What a trial came to, in the few numbers that studies compare. */
export interface TrialMeasure {
  readonly trialId: string;
  readonly outcome: Outcome;
  /** It arrived, and no margin is negative. */
  readonly passes: boolean;
  /** Least margin first, by share. */
  readonly risks: readonly RiskMeasure[];
  /** Greatest pull and greatest push on any joint, N, both ≥ 0. */
  readonly greatestDraft: number;
  readonly greatestBuff: number;
  /** s */
  readonly duration: number;
}

/** How exactly a study works: every trial run in full, or by the quasi-static pass alone (no run-ins, no starts). */
export type Exactness = 'run' | 'steady';

/** A number of the scene, and what it is to be. */
export interface Setting {
  readonly at: Address;
  readonly to: Json;
}

/**
 * What a scene with some settings came to: its trials measured, or why it could not be run, in words. A railway that cannot be
 * laid does not pass.
 */
export type Probe =
  | { readonly ok: true; readonly trials: readonly TrialMeasure[] }
  | { readonly ok: false; readonly reason: string };

/** What a probe asks: a scene, other values at some addresses, and the trials to be run with them. */
export interface ProbeRequest {
  readonly scene: Scene;
  readonly settings: readonly Setting[];
  readonly trialIds: readonly string[];
  readonly exactness: Exactness;
}
