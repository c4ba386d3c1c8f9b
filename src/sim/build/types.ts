import type { CutPieces, Layers, SheetLayout, SheetOfWood, SupportRow, TurnByTurn } from '../../core/build/index.ts';

/** What is asked of a build plan. Lengths in m. */
export interface BuildWish {
  readonly sheet: SheetOfWood;
  /** Only this track; all of them when left out. */
  readonly trackId?: string;
  /** Supports this far apart on tracks that the scene gives none; it has none there when left out. */
  readonly every?: number;
}

/** What one track is built of. */
export interface TrackBuild {
  readonly trackId: string;
  readonly trackName: string;
  readonly layers: Layers;
  readonly supports: readonly SupportRow[];
  readonly helices: readonly TurnByTurn[];
  readonly pieces: readonly CutPieces[];
  /** Ids of tracks whose strips lie beside it at the same height and overlap its own somewhere: one deck may carry both. */
  readonly besides: readonly string[];
}

/** What a railway is built of: heights, pieces, and the sheets that the pieces come out of. */
export interface BuildPlan {
  readonly tracks: readonly TrackBuild[];
  readonly sheet: SheetOfWood;
  readonly layout: SheetLayout;
}
