import type { Comparison, Governing, RiskId, ValuePart } from '../risks/types.ts';

export type Verdict = 'fails' | 'near' | 'passes';

/**
 * Something that can be tried at once. `sim` turns it into a changed scene; lengths m, masses kg, chainages the scene's own. Supports and
 * joints are counted from 0 here and from 1 in words; a support that goes up has `by` > 0. On a route chainages are along it, and `leg` says
 * which of its legs is on the track meant; absent: the trial runs on one track.
 */
export type Cure = (
  | { readonly kind: 'set-support'; readonly support: number; readonly by: number; readonly leg?: number }
  | { readonly kind: 'splice-joint'; readonly chainage: number; readonly leg?: number }
  | { readonly kind: 'vertical-curve'; readonly chainage: number; readonly length: number; readonly leg?: number }
  | { readonly kind: 'easement'; readonly chainage: number; readonly length: number; readonly leg?: number }
  | { readonly kind: 'straight-between'; readonly chainage: number; readonly length: number; readonly leg?: number }
  | { readonly kind: 'change-working' }
  | { readonly kind: 'fewer-vehicles'; readonly by: number }
  | { readonly kind: 'match-heads'; readonly joint: number }
  | { readonly kind: 'add-engine-weight'; readonly by: number }
  | { readonly kind: 'setting'; readonly to: number }
) & {
  /** False: by all that can be told without running it, it helps but leaves the finding failing. Absent: it is enough. */
  readonly enough?: false;
};

/** Track features near a finding that explain it. Grades are as the train meets them, supports counted from 0, on a route those of `leg`. */
export type Cause =
  | { readonly kind: 'support-off'; readonly support: number; readonly departure: number; readonly leg?: number }
  | { readonly kind: 'kink'; readonly before: number; readonly after: number }
  | { readonly kind: 'vertical-curve'; readonly radius: number }
  | { readonly kind: 'heads-differ'; readonly by: number }
  /** Force as a positive number, N; 0: the joint floats and is about to close or stretch. Sudden: a run-in or run-out brought it. */
  | { readonly kind: 'buff'; readonly force: number; readonly sudden?: boolean }
  | { readonly kind: 'draft'; readonly force: number; readonly sudden?: boolean }
  | { readonly kind: 'reverse-curve'; readonly radius: number }
  | { readonly kind: 'curve-entry'; readonly radius: number }
  | { readonly kind: 'curve'; readonly radius: number }
  | { readonly kind: 'grade'; readonly grade: number }
  | { readonly kind: 'motor-limit' }
  | { readonly kind: 'grip-limit' }
  | { readonly kind: 'deck-above' }
  | { readonly kind: 'track-beside' }
  | { readonly kind: 'structure'; readonly name: string }
  /** Lean of the track under the vehicle, rad, either way. */
  | { readonly kind: 'cant'; readonly cant: number }
  /** Of the vehicle, m/s. */
  | { readonly kind: 'speed'; readonly speed: number };

/**
 * What a train can do on its route at its steady speed, whatever became of the run: where it has least in hand (scene chainage, m; forces N,
 * need and what is available), the most vehicles behind the engines that get over the whole of it, and the steepest even grade this train
 * climbs in the curve of the finding, as a share; null: not even the level.
 */
export interface Reach {
  readonly chainage: number;
  readonly needed: number;
  readonly available: number;
  readonly vehicles: number;
  readonly grade: number | null;
}

/** One finding: all the screen, the command line and the sheets need to say it. Chainages are the scene's own, along the route where there is one. */
export interface Finding {
  readonly risk: RiskId;
  readonly verdict: Verdict;
  readonly time: number;
  readonly frame: number;
  /** Along the track, m; along the route where the trial has one. */
  readonly chainage: number;
  /** Joint, vehicle or locomotive index as the risk's subject says. */
  readonly subject: number;
  readonly value: number;
  readonly limit: number;
  readonly margin: number;
  readonly range: readonly [number, number] | null;
  readonly parts: readonly ValuePart[];
  /** Which of the risk's ways to fail is the nearest; it says what `value` and `limit` are. */
  readonly governing?: Governing | null;
  /** The same moment judged other ways: without cant, at rest, by the sum over an axle, dragged up. Absent: there are none. */
  readonly compare?: readonly Comparison[];
  readonly causes: readonly Cause[];
  readonly cures: readonly Cure[];
  /** Of a finding about pull, where the train's script is known. */
  readonly reach?: Reach;
}
