import type { Line } from '../../core/study/index.ts';
import type { Address, Scene } from '../../scene/index.ts';
import type { Compared, Exactness, Gauge, Probe } from '../../sim/study/index.ts';

/** One railway in the comparison: the scene as it is (id null) or one of its variants. */
export interface CompareRow {
  readonly id: string | null;
  readonly name: string;
  /** The scene it stands for; null when the variant leads nowhere, and then `compared` says why. */
  readonly scene: Scene | null;
  /** Null until it was worked out. */
  readonly compared: Compared | null;
}

/** A sweep of one number as the person asked for it. */
export interface SweepAsk {
  readonly at: Address;
  readonly from: number;
  readonly to: number;
  readonly points: number;
  /** In the unit of the field. */
  readonly edgeWithin: number;
}

/** A sweep under way or done: everything probed so far. */
export interface SweepState {
  readonly ask: SweepAsk;
  readonly gauge: Gauge;
  readonly trialIds: readonly string[];
  readonly exactness: Exactness;
  /** In the order they came. */
  readonly points: readonly { readonly at: number; readonly probe: Probe }[];
  /** With its edges once it has ended; null while it runs. */
  readonly line: Line<Probe> | null;
  /** Share of the probes known to be needed that are done, 0..1. */
  readonly progress: number;
}

/** What is being compared and swept. Nothing of it belongs to the scene but the variants themselves. */
export interface StudyState {
  readonly exactness: Exactness;
  readonly gauge: Gauge;
  readonly rows: readonly CompareRow[];
  /** Share of the comparison done; null when none runs. */
  readonly comparing: number | null;
  readonly sweep: SweepState | null;
  /** Why the last study failed, in words for the person. */
  readonly problem: string | null;
}
