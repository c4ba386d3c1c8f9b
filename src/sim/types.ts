import type { Path, Run, RunOptions, Script } from '../core/dynamics/types.ts';
import type { Cure, Finding } from '../core/findings/types.ts';
import type { RiskSeries, Surroundings } from '../core/risks/types.ts';
import type { Train } from '../core/stock/types.ts';
import type { JoinJump, Track } from '../core/track/types.ts';
import type { Scene, WayLeg } from '../scene/index.ts';
import type { Glance, GlanceRequest } from './glance/types.ts';
import type { Probe, ProbeRequest } from './study/types.ts';

/** A scene in SI, ready to run: what both the solver's host and the stage work from. */
export interface CompiledScene {
  readonly scene: Scene;
  /** By track id. */
  readonly tracks: ReadonlyMap<string, Track>;
}

/** One trial of a scene in SI: everything a run and its risks need. */
export interface CompiledTrial {
  readonly id: string;
  readonly name: string;
  /** Its track; of a route, the first. */
  readonly trackId: string;
  readonly trainId: string;
  readonly path: Path;
  /** What chainages of the scene's trial count along, see `wayOf`. */
  readonly way: readonly WayLeg[];
  /**
   * The trial it goes on from; absent: it begins by itself. Its script then starts where that one arrives, as if the train stopped dead there, until that has
   * been run: see `handOver`.
   */
  readonly follows?: CompiledTrial;
  /** The legs of its route, in order; absent: it runs on one track. */
  readonly legs?: readonly TrialLeg[];
  /** Where two legs do not quite meet, chainages along the route; absent: all do. */
  readonly joints?: readonly JoinJump[];
  readonly train: Train;
  readonly script: Script;
  /** Of every joint at the start, m, where the train is taken over from another trial. */
  readonly stretch?: readonly number[];
  readonly options: RunOptions;
  readonly propelled: boolean;
  /** The vehicle that the scene lists last leads: vehicle 0 of the run has the highest number. */
  readonly lastLeads: boolean;
  readonly surroundings: Surroundings;
}

/** One leg of a route: a track between two of its chainages, m, run from the first to the second. */
export interface TrialLeg {
  readonly trackId: string;
  readonly trackName: string;
  readonly from: number;
  readonly to: number;
  /** Where it starts along the route, m. */
  readonly start: number;
}

/** A solved trial. Plain data and typed arrays: it can cross a worker boundary as it is. */
export interface TrialResult {
  readonly trialId: string;
  readonly run: Run;
  readonly risks: readonly RiskSeries[];
  readonly findings: readonly Finding[];
}

export interface RunHooks {
  /** Share done, 0..1. */
  readonly onProgress?: (done: number) => void;
  readonly signal?: AbortSignal;
}

/** Runs trials somewhere: in this thread, or in a worker behind the same face. */
export interface SimHost {
  /** Rejects with an AbortError when cancelled, with the solver's own words when the scene cannot run. */
  runTrial(scene: Scene, trialId: string, hooks?: RunHooks): Promise<TrialResult>;
  /** The same trial with a cure applied; null when the cure cannot be applied to this scene. */
  tryCure(scene: Scene, trialId: string, cure: Cure, hooks?: RunHooks): Promise<TrialResult | null>;
  /** Some trials of the scene with some settings, measured and forgotten: what studies are made of. */
  probe(request: ProbeRequest, hooks?: RunHooks): Promise<Probe>;
  /** One trial of a railway that is being changed, judged in one go by the quasi-static pass. */
  glance(request: GlanceRequest): Promise<Glance>;
  dispose(): void;
}
