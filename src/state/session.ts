import type { StoreApi } from 'zustand/vanilla';
import type { Scene } from '../scene/index.ts';
import type { PlaybackActions } from './playback.ts';
import type { Sight, TourActions } from './show/types.ts';
import type { Working } from './trialEdits.ts';
import type {
  Axis,
  CameraName,
  Chapter,
  HistoryState,
  LensView,
  Opened,
  PlaybackState,
  Problem,
  SessionState,
} from './types.ts';

/** What can be done to the scene and its trials. Everything that changes the scene is one undo step. */
export interface DocumentActions {
  /** Opens a scene at its first trial, or at the named one; the last good state stays when it cannot be compiled. */
  openScene(scene: Scene, opened?: Opened, trialId?: string): Promise<void>;
  /** Opens the text of a scene file; what is wrong with it goes to `problem` and nothing else changes. */
  openFileText(name: string, text: string): Promise<void>;
  chooseTrial(trialId: string): Promise<void>;
  /** Chooses the trial of the same train and track worked this way, or adds one to the scene. */
  setWorking(working: Partial<Working>): Promise<void>;
  /** Sets the running speed setting of the trial, above 0 to 1. */
  setSetting(setting: number): Promise<void>;
  /**
   * Changes the scene by what `make` makes of it and solves the trial again: one step of the history, called `label`. False, with the
   * reason in `problem`, when the result is no scene that can be used or `make` throws a RangeError.
   */
  change(label: string, make: (scene: Scene) => Scene): Promise<boolean>;
  /**
   * Changes the scene like `change`, for a field that itself says what is wrong: why it cannot be done, in words, or null once it is done. The trial
   * is solved again in the background; a change that changes nothing is no step.
   */
  attempt(label: string, make: (scene: Scene) => Scene): string | null;
  /** Opens a gesture: all edits until `settleGesture` are one undo step, all until `bailGesture` never were. */
  beginGesture(): void;
  settleGesture(): void;
  bailGesture(): void;
  /** Solves the trial again as the scene now is. */
  run(): Promise<void>;
  /** Stops the run and the cures that are being worked out; what is on show stays. */
  cancel(): void;
  /** Shows a cure as a ghost beside what is; works it out first if need be. */
  tryCure(finding: number, cure: number): Promise<void>;
  /** Makes the ghost's cure part of the scene. */
  keepCure(): void;
  dropGhost(): void;
  undo(): Promise<void>;
  redo(): Promise<void>;
}

/** Ways to the moments and places of the trial on show. */
export interface MomentActions {
  /** Goes to a finding: its time, its place, its joint. */
  seekToFinding(index: number): void;
  /** Goes to the moment when what the playhead rides on is at a place, track chainage in m. */
  goToPlace(chainage: number): void;
  nextEvent(): void;
  previousEvent(): void;
}

/** How all of it is looked at. */
export interface ViewActions {
  /** Joint index for the lens and the ride camera, or null for none. */
  chooseJoint(joint: number | null): void;
  setCamera(camera: CameraName): void;
  /** Goes back to walking round with the whole railway in the picture. */
  showWhole(): void;
  /** Opens the lens on the chosen joint, or goes to the gravest finding that is about a joint. */
  openLens(view?: LensView): void;
  closeLens(): void;
  setLensView(view: LensView): void;
  setAxis(axis: Axis): void;
  setLengthUnit(unit: SessionState['lengthUnit']): void;
  setGradeForm(form: SessionState['gradeForm']): void;
  setChapter(chapter: Chapter): void;
  setPalette(open: boolean): void;
  setChooser(open: boolean): void;
  setMaking(open: boolean): void;
  dismissProblem(): void;
  report(problem: Problem): void;
}

export interface SessionActions extends PlaybackActions, DocumentActions, MomentActions, ViewActions, TourActions {
  /** Stops everything and lets the host go. */
  dispose(): void;
}

export interface Session {
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
  readonly history: StoreApi<HistoryState>;
  readonly actions: SessionActions;
  /** Filled by the stage, for who wants to keep what it shows. */
  readonly sight: Sight;
}
