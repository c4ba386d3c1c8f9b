import type { Cure } from '../core/findings/types.ts';
import type { Scene } from '../scene/index.ts';
import type { CompiledScene, CompiledTrial, TrialResult } from '../sim/types.ts';
import type { KeepOutcome, RailwayFile } from './ports.ts';
import type { TourState } from './show/types.ts';

export type { Scene } from '../scene/index.ts';
export type { CompiledScene, CompiledTrial, TrialLeg, TrialResult } from '../sim/types.ts';

export type CameraName = 'walk' | 'eye' | 'ride' | 'down' | 'follow';
export type LensView = 'side' | 'above' | 'along';
export type Axis = 'chainage' | 'time';
/** A chapter of the job by its name in the register of chapters that the screen is made with. */
export type Chapter = string;

/** What a cure came to, computed beside the trial it would change. */
export interface CureOutcome {
  readonly cure: Cure;
  readonly state: 'waiting' | 'running' | 'done' | 'impossible';
  /** Margin of the finding's own risk with the cure, SI; null until done. */
  readonly margin: number | null;
  /** The trial as it would run with the cure; null until done. */
  readonly result: TrialResult | null;
  /** Share of the cure's own run done, 0..1. */
  readonly progress: number;
}

/** What went wrong and where. `places` name what in a file is not as it must be. */
export interface Problem {
  readonly title: string;
  readonly lines: readonly string[];
  readonly places?: readonly {
    readonly path: string;
    readonly found: string;
    readonly allowed: string;
    readonly example: string;
    /** A line of the file and, under it, a caret at the place. */
    readonly excerpt?: readonly [line: string, caret: string];
  }[];
}

/** Where a scene came from, and under which name: `shape` is a starting shape that the person gave its numbers. */
export interface Opened {
  readonly from: 'program' | 'file' | 'machine' | 'shape' | 'copy';
  readonly name: string;
  /** Under which it is kept on this machine, where it came from there. */
  readonly id?: string;
}

/** What a survey says of one support, over the comb of departures. */
export interface SurveyedSupport {
  /** m */
  readonly chainage: number;
  /** Built less planned, m; null where the readings tell nothing. */
  readonly departure: number | null;
  /** Its standard deviation, m. */
  readonly deviation: number;
  /** Shown to be off. */
  readonly wrong: boolean;
  /** Departure once mended, m; null where nothing is to be done. */
  readonly mended: number | null;
}

/** A survey as it is shown along its track. */
export interface Surveyed {
  readonly trackId: string;
  readonly supports: readonly SurveyedSupport[];
  /** Supports that a hand is needed at: those of the next reading, else those shown to be off. From 0. */
  readonly pointed: readonly number[];
  /** Place of the next reading, m; null when none is being taken. */
  readonly next: number | null;
}

/** Another railway beside the one on show: the same trial of one of its variants, solved in full. */
export interface Beside {
  readonly variantId: string;
  readonly name: string;
  readonly compiled: CompiledScene;
  readonly trial: CompiledTrial;
  readonly result: TrialResult;
}

/** How two railways share one stage: both in one place, either side of a line, or one at a time. */
export type BesideView = 'ghost' | 'split' | 'flip';

/** Where the other railway's train stands: as far on in time as this one's, or as far along its track. */
export type BesideMatch = 'moment' | 'place';

export interface BesideLook {
  readonly view: BesideView;
  readonly match: BesideMatch;
  /** Where the line between the two lies, as a share of the stage's width. */
  readonly divider: number;
  /** The other one is shown now, where they take turns. */
  readonly flipped: boolean;
}

/**
 * The scene and its trial as the person sees them now. Changes rarely; React may select from it.
 *
 * `compiled`, `trial` and `result` always belong together. After an edit they still show the last solved state until the new run is
 * there: `scene` is then newer than `compiled.scene`.
 */
export interface SessionState {
  readonly scene: Scene | null;
  /** Where the scene came from: with the program, out of a file, or from what was kept on this machine. */
  readonly opened: Opened | null;
  /** The file that the railway came from or was written to; null when there is none that can be written again. */
  readonly file: RailwayFile | null;
  /** When the scene was last kept on this machine, ms since 1970; null when it was not changed. */
  readonly savedAt: number | null;
  /** Why the machine would not keep the last change; null when it did. */
  readonly notKept: Exclude<KeepOutcome, 'kept'> | null;
  /** The trial the person means: while its run is under way it is newer than `trial`. */
  readonly trialId: string | null;
  readonly compiled: CompiledScene | null;
  readonly trial: CompiledTrial | null;
  readonly result: TrialResult | null;
  /** Share of the running trial done, or null when nothing runs. */
  readonly progress: number | null;
  /** A hand holds something of the railway: the trial is solved when it lets go. */
  readonly holding: boolean;
  /** Why the last file or run failed, in words for the person. */
  readonly problem: Problem | null;
  /** Index into result.findings, or null. */
  readonly chosenFinding: number | null;
  /** Joint the lens and ride camera look at, or null. */
  readonly chosenJoint: number | null;
  /** Outcomes by finding index, then by cure index. */
  readonly cures: ReadonlyMap<number, readonly CureOutcome[]>;
  /** A cure being shown as a ghost before it is kept: its compiled trial and result. */
  readonly ghost: {
    readonly finding: number;
    readonly cure: number;
    readonly trial: CompiledTrial;
    readonly result: TrialResult;
  } | null;
  /** A variant that is looked at together with the railway; null when none is. */
  readonly beside: Beside | null;
  readonly besideLook: BesideLook;
  /** The survey that is being looked at; null when none is. */
  readonly surveyed: Surveyed | null;
  /** Where the tour of the railway is. */
  readonly tour: TourState;
  readonly camera: CameraName;
  readonly lens: { readonly open: boolean; readonly view: LensView };
  readonly axis: Axis;
  readonly lengthUnit: 'mm' | 'in';
  readonly gradeForm: 'one-in' | 'percent';
  readonly chapter: Chapter;
  /** The command palette is open. */
  readonly palette: boolean;
  /** The sheet with all railways and their trials is open. */
  readonly chooser: boolean;
  /** The sheet that makes a new railway is open. */
  readonly making: boolean;
  /** How often the whole railway was asked for: the stage goes back to it each time. */
  readonly wholeAsked: number;
}

/** A step that can be taken back: the scene and trial before it (in the past) or after it (in the future). */
export interface HistoryStep {
  /** What was done, in words that follow "Undo" and "Redo". */
  readonly label: string;
  readonly scene: Scene;
  readonly trialId: string;
}

/** The document's past and future; its present is `SessionState.scene`. */
export interface HistoryState {
  readonly past: readonly HistoryStep[];
  readonly future: readonly HistoryStep[];
}

/**
 * The moment being looked at. Changes every frame while playing: read it with `getState()` in frame loops and
 * subscribe imperatively; never select `time` into React. The app's clock alone advances it while `playing`.
 */
export interface PlaybackState {
  /** s */
  readonly time: number;
  readonly duration: number;
  readonly playing: boolean;
  /** Seconds of trial per second of clock. */
  readonly rate: number;
}
