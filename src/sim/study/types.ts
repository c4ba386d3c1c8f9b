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
  /** Greatest force between an engine and what it moves, pulled or pushed, N. */
  readonly drawbar: number;
  /** Of the engines at the rail, J. */
  readonly work: number;
  /** s */
  readonly duration: number;
  /** Once the train has gone its own length, m/s; null: it never did. */
  readonly leastSpeed: number | null;
  /** Where its head is lowest, m/s; null: it begins there. */
  readonly footSpeed: number | null;
  /** How far the middle lines of bodies stand off the track at most, m: at their ends, and between their running points. */
  readonly endThrow: number;
  readonly centreThrow: number;
}

/** What some tracks take to build and ask of a train, together, SI. */
export interface Takes {
  /** Of strip, all tracks together, m. */
  readonly length: number;
  /** Room for the rails, along the wider and the narrower side, m. */
  readonly width: number;
  readonly depth: number;
  readonly rise: number;
  /** Steepest grade, and the ruling one with what curves are worth, ratios. */
  readonly steepest: number;
  readonly ruling: number;
  /** Tightest radius in plan and sharpest vertical one, m; Infinity where there is none. */
  readonly tightest: number;
  readonly sharpest: number;
  /** Least way between a rail and the deck over it, m; null where nothing passes over. */
  readonly headroom: number | null;
  /** Of deck, m². */
  readonly deck: number;
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
  | {
      readonly ok: true;
      readonly trials: readonly TrialMeasure[];
      /** What the tracks take that the trials run over; null: not asked. */
      readonly takes: Takes | null;
    }
  | {
      readonly ok: false;
      readonly reason: string;
      /** Where the tracks can be laid although nothing runs on them. */
      readonly takes?: Takes | null;
    };

/** What a probe asks: a scene, other values at some addresses, and the trials to be run with them. */
export interface ProbeRequest {
  readonly scene: Scene;
  readonly settings: readonly Setting[];
  readonly trialIds: readonly string[];
  readonly exactness: Exactness;
  /** Searches that look at thousands of railways measure the tracks themselves. */
  readonly withoutTakes?: true;
}
