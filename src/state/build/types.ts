import type { SheetOfWood } from '../../core/build/index.ts';
import type { Thread } from '../../core/survey/index.ts';

export type BuildSheet = SheetOfWood;

/** What is wanted of the things to build. Lengths in m. */
export interface BuildingState {
  readonly sheet: BuildSheet;
  /** Supports this far apart where the railway has none. */
  readonly every: number;
  /** Nuts that heights are set with; null: by blocks and risers. */
  readonly thread: Thread | null;
  /** The track whose heights are shown; null: the one on show. */
  readonly trackId: string | null;
}
