import type { Scene } from '../../scene/index.ts';
import type { Glimpse } from '../../sim/glance/index.ts';
import type { RoomTool } from '../room/hand/index.ts';

/** What the quasi-static pass says of the railway as it is being changed; or why it cannot be run, in words. */
export type DraftVerdict =
  | { readonly ok: true; readonly scene: Scene; readonly measure: Glimpse }
  | { readonly ok: false; readonly scene: Scene; readonly reason: string };

/** Supports of a track chosen from one, which stays, up to another; counted from 0. */
export interface ChosenSupports {
  readonly trackId: string;
  readonly anchor: number;
  readonly head: number;
}

/** What of the railway a hand works at on the stage: the line of a track, or the room around it. */
export type Works = 'line' | 'room';

/** What is in hand on the plan. */
export interface RouteState {
  /** Track whose handles are shown; null: the one that the trial runs on. */
  readonly chosenTrack: string | null;
  readonly works: Works;
  /** What of the room the next pull on the stage draws, or null. */
  readonly drawing: RoomTool | null;
  /** Key of the handle that the keyboard moves, or null. */
  readonly chosenHandle: string | null;
  /** Neighbouring supports that are changed together, or null. */
  readonly chosenSupports: ChosenSupports | null;
  /** Number of the support, from 0, that the stage offers to a hand: the one it points at, or where the keyboard is. */
  readonly atSupport: number | null;
  /** Whether a tap on a support takes in all up to it: Shift for a finger. */
  readonly takesSeveral: boolean;
  /** Key of the handle that a hand holds now. */
  readonly held: string | null;
  /** Why the place of the hand cannot be met, and by how much; null when it is. */
  readonly refusal: string | null;
  /** What the hand was led to or kept on, in words; null where it goes as it likes. */
  readonly led: string | null;
  /** Margins, found the same way, of the railway as the trial on show has it; null until they are there. */
  readonly before: Glimpse | null;
  /** A place of a track that is pointed out, or null. */
  readonly pointed: { readonly trackId: string; readonly chainage: number } | null;
  /** Margins of the railway as it is being changed; null when the trial on show is that of the railway as it is. */
  readonly verdict: DraftVerdict | null;
}
