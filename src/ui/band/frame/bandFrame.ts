import type { Track } from '../../../core/track/types.ts';
import type { Reference } from '../../../state/index.ts';
import type { ChosenSupports } from '../../../state/route/index.ts';
import type { Pass, SceneTrack } from '../../../state/routeEdits/index.ts';
import type { Surveyed } from '../../../state/types.ts';
import type { BandActions } from '../actions.ts';
import type { Inks } from '../carpet/colourScales.ts';
import type { Ground } from '../section/ground.ts';
import type { Show } from '../words.ts';
import type { AxisScale, Span } from './axis.ts';
import type { Layout } from './layout.ts';
import type { Live } from './live.ts';
import type { TrialView } from './trialView.ts';

/** How the heavy rows are painted: in colour, for more contrast, or in patterns of one colour. */
export type PaintMode = 'plain' | 'contrast' | 'pattern';

export interface Fonts {
  /** Family lists, ready to stand after a size in a font shorthand. */
  readonly letter: string;
  readonly ui: string;
}

/** A support that a failing finding blames. */
export interface BadSupport {
  /** Number among the supports of its track, counted from 0. */
  readonly support: number;
  /** Leg of the route that is on its track; absent: the trial runs on one track. */
  readonly leg?: number;
  readonly chainage: number;
  /** Built minus planned, m. */
  readonly departure: number;
}

/** The track of the trial as the railway now is, while its route is being made. */
export interface SectionEdit {
  readonly file: SceneTrack;
  readonly track: Track;
  /** Everything of the railway that passes over or under the track. */
  readonly passes: readonly Pass[];
  readonly chosen: ChosenSupports | null;
  /** Whether a tap on a support takes in all up to it. */
  readonly takesSeveral: boolean;
}

/** Another railway's trial, and what that railway is called. */
export interface Beside {
  readonly name: string;
  readonly view: TrialView;
}

/** All that the rows share between two changes of trial, size or axis. The playhead is not in it: see `Live`. */
export interface BandFrame {
  readonly view: TrialView;
  readonly ghost: TrialView | null;
  /** The same trial of another railway, shown in the same rows; null when none is. */
  readonly beside: Beside | null;
  /** What a survey of this track shows; null when none is looked at. */
  readonly surveyed: Surveyed | null;
  readonly axis: AxisScale;
  /** All of the axis: the whole track, or the whole trial. */
  readonly full: Span;
  readonly ground: Ground | null;
  /** Where what the playhead rides on is by frame, track chainage m; null without a run. */
  readonly reference: Float64Array | null;
  /** What that is, and which vehicle stands for it. */
  readonly rides: Reference;
  readonly vehicle: number;
  readonly chosenJoint: number | null;
  readonly chosenFinding: number | null;
  readonly bad: readonly BadSupport[];
  readonly layout: Layout;
  readonly show: Show;
  /** The original is this many times as large; null when the scene does not say. */
  readonly ratio: number | null;
  readonly trackName: string;
  readonly live: Live;
  readonly inks: Inks;
  readonly paint: PaintMode;
  readonly fonts: Fonts;
  readonly actions: BandActions;
  readonly setSpan: (span: Span | null) => void;
}
