import type { RiskId, ValuePart } from '../risks/types.ts';

export type Verdict = 'fails' | 'near' | 'passes';

/** Something that can be tried at once. `sim` turns it into a changed scene; lengths m. */
export type Cure =
  | { readonly kind: 'set-support'; readonly support: number; readonly by: number }
  | { readonly kind: 'splice-joint'; readonly chainage: number }
  | { readonly kind: 'vertical-curve'; readonly chainage: number; readonly length: number }
  | { readonly kind: 'easement'; readonly chainage: number; readonly length: number }
  | { readonly kind: 'straight-between'; readonly chainage: number; readonly length: number }
  | { readonly kind: 'change-working' }
  | { readonly kind: 'fewer-vehicles'; readonly by: number }
  | { readonly kind: 'match-heads'; readonly joint: number }
  | { readonly kind: 'add-engine-weight'; readonly by: number }
  | { readonly kind: 'setting'; readonly to: number };

/** Track features near a finding that explain it. */
export type Cause =
  | { readonly kind: 'support-off'; readonly support: number; readonly departure: number }
  | { readonly kind: 'kink'; readonly before: number; readonly after: number }
  | { readonly kind: 'vertical-curve'; readonly radius: number }
  | { readonly kind: 'heads-differ'; readonly by: number }
  | { readonly kind: 'buff'; readonly force: number }
  | { readonly kind: 'draft'; readonly force: number }
  | { readonly kind: 'reverse-curve'; readonly radius: number }
  | { readonly kind: 'curve-entry'; readonly radius: number }
  | { readonly kind: 'curve'; readonly radius: number }
  | { readonly kind: 'grade'; readonly grade: number }
  | { readonly kind: 'motor-limit' }
  | { readonly kind: 'grip-limit' }
  | { readonly kind: 'deck-above' };

/** One finding: all the screen, the command line and the sheets need to say it. Chainages are the scene's own. */
export interface Finding {
  readonly risk: RiskId;
  readonly verdict: Verdict;
  readonly time: number;
  readonly frame: number;
  /** Track chainage, m. */
  readonly chainage: number;
  /** Joint, vehicle or locomotive index as the risk's subject says. */
  readonly subject: number;
  readonly value: number;
  readonly limit: number;
  readonly margin: number;
  readonly range: readonly [number, number] | null;
  readonly parts: readonly ValuePart[];
  readonly causes: readonly Cause[];
  readonly cures: readonly Cure[];
}
