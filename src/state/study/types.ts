import type { Area, Line, Proportion } from '../../core/study/index.ts';
import type { Scene } from '../../scene/index.ts';
import type { BestProfile } from '../../sim/study/bestProfile.ts';
import type { Compared, Exactness, Gauge, MeasureId, MeasureLimit, Probe } from '../../sim/study/index.ts';
import type { RoomKind, RouteAim, RouteAnswer, RouteFound, RouteQuestion } from '../../sim/study/route/types.ts';
import type { GradePoint, SteepestGrade } from '../../sim/study/steepestGrade.ts';

/** Parts of the chapter. */
export type StudyPart = 'variants' | 'sweep' | 'chance' | 'best';

/** One railway in the comparison: the scene as it is (id null) or one of its variants. */
export interface CompareRow {
  readonly id: string | null;
  readonly name: string;
  /** The variant that it differs from; null: the scene as it is. */
  readonly from: string | null;
  /** The scene it stands for; null when the variant leads nowhere, and then `compared` says why. */
  readonly scene: Scene | null;
  /** Null until it was worked out. */
  readonly compared: Compared | null;
  /** How exactly it was run; null until it was. */
  readonly exactness: Exactness | null;
}

/** One number over a range. */
export interface SweptRange {
  /** Key of the knob. */
  readonly at: string;
  readonly from: number;
  readonly to: number;
}

/** A sweep of one number as the person asked for it. */
export interface SweepAsk extends SweptRange {
  readonly points: number;
  /** In the unit of the field. */
  readonly edgeWithin: number;
}

/** What is run for each value, and what decides. */
export interface StudyTerms {
  /** The railway it starts from; null: the scene as it is. */
  readonly base: string | null;
  readonly gauge: Gauge;
  /** Limits of measures, which count too. */
  readonly limits: readonly MeasureLimit[];
  readonly trialIds: readonly string[];
  readonly exactness: Exactness;
}

/** A sweep under way or done: everything probed so far. */
export interface SweepState extends StudyTerms {
  readonly ask: SweepAsk;
  /** In the order they came. */
  readonly points: readonly { readonly at: number; readonly probe: Probe }[];
  /** With its edges once it has ended; null while it runs. */
  readonly line: Line<Probe> | null;
  /** Share of the probes known to be needed that are done, 0..1. */
  readonly progress: number;
  /** The question it answers, where it was asked as one; `full` is the answer confirmed by full runs, null where none passes. */
  readonly question: EasementQuestion | null;
}

export interface EasementQuestion {
  readonly kind: 'easement';
  /** How many trains go through, propelled. */
  readonly trains: number;
  /** Shortest length that passes in full, mm; undefined until it is known, null when none does. */
  readonly full?: number | null;
}

/** A map of two numbers as the person asked for it. */
export interface MapAsk {
  readonly across: SweptRange & { readonly points: number };
  readonly up: SweptRange & { readonly points: number };
  /** Halvings of every side of a cell that the verdict changes on. */
  readonly refine: number;
}

/** A map under way or done. */
export interface MapState extends StudyTerms {
  readonly ask: MapAsk;
  /** In the order they came. */
  readonly points: readonly { readonly across: number; readonly up: number; readonly probe: Probe }[];
  /** With its outline once it has ended; null while it runs. */
  readonly area: Area<Probe> | null;
  readonly progress: number;
}

/** The steepest even grade that the weakest engine takes with so many vehicles. */
export interface GradeQuestion {
  readonly engine: string;
  readonly kind: string;
  readonly count: number;
  readonly straight: SteepestGrade | null;
  /** The curve behind it: grades up to `toPercent`, in the order they came. */
  readonly toPercent: number | null;
  readonly points: readonly GradePoint[];
  /** The same in a curve of the tightest radius of the track or route, mm; null where it is straight. */
  readonly curve: { readonly radiusMm: number; readonly grade: SteepestGrade } | null;
  /** Null once it has ended. */
  readonly progress: number | null;
}

/** How far things may be off, either way. */
export interface ToleranceAsk {
  /** Coupling heads by what their kind is allowed. */
  readonly heads: boolean;
  /** mm; 0: not at all. */
  readonly supportsMm: number;
  /** Of every vehicle's mass, per cent; 0: not at all. */
  readonly massPercent: number;
  readonly draws: number;
}

/** How sure one trial is to pass. */
export interface TrialChance {
  readonly trialId: string;
  readonly name: string;
  readonly passing: Proportion;
}

export interface ChanceState extends StudyTerms {
  readonly ask: ToleranceAsk;
  /** By trial, over the draws so far. */
  readonly trials: readonly TrialChance[];
  readonly drawn: number;
  /** What decides, the strongest first: words and the rank correlation with the closest call. Empty while it runs. */
  readonly decides: readonly { readonly words: string; readonly by: number }[];
  /** Null once it has ended. */
  readonly progress: number | null;
}

/** What is asked of the best profile. */
export interface ProfileAsk {
  readonly verticalRadiusMm: number;
  readonly steepestPercent: number;
}

export interface BestState {
  readonly ask: ProfileAsk;
  readonly base: string | null;
  readonly trackId: string;
  /** Ruling grade as it is, a ratio. */
  readonly present: number;
  /** Null while it is looked for. */
  readonly found: BestProfile | null;
}

/** What is asked of the best route: numbers of the base to be chosen, each over a range in steps that can be set. */
export interface RouteAsk {
  readonly numbers: readonly (SweptRange & { readonly step: number })[];
  /** What they are chosen for; all that no other beats in grade, room and margin when left out. */
  readonly aim?: RouteAim;
  /** Railways looked at at most, by even running. */
  readonly probes: number;
  /** The track ends where it ends now: straights, and an angle where it takes one, are worked out for it. */
  readonly endKept: boolean;
  /** Numbers worked out for it, three at most; those that close it best when left out. */
  readonly solved?: readonly string[];
  /** Null: heights as they are. Else the best are found for every plan, within these limits. */
  readonly heights: ProfileAsk | null;
  /** What of the room limits the decks. */
  readonly within: readonly RoomKind[];
  /** Tightest radius, mm; null: any. */
  readonly leastRadiusMm: number | null;
  /** Rail to rail where the line passes over itself or another, mm; null: any. */
  readonly headroomMm: number | null;
}

/** A search for routes that no other beats in grade, room and margin together. */
export interface RouteState {
  readonly ask: RouteAsk;
  readonly question: RouteQuestion;
  readonly base: string | null;
  /** It was stopped and ends with what it has. */
  readonly stopping: boolean;
  /** The best so far by even running; at the end those of the answer. */
  readonly routes: readonly RouteFound[];
  /** Null while it is looked for. */
  readonly answer: RouteAnswer | null;
  readonly progress: number;
}

/** What is being compared and swept. Nothing of it belongs to the scene but the variants themselves. */
export interface StudyState {
  readonly part: StudyPart;
  readonly exactness: Exactness;
  readonly gauge: Gauge;
  readonly limits: readonly MeasureLimit[];
  /** What the curve of a sweep and the contours of a map are of; null: the margins. */
  readonly drawn: MeasureId | null;
  /** The railway that sweeps, maps and searches start from: a variant, or null for the scene as it is. */
  readonly base: string | null;
  readonly rows: readonly CompareRow[];
  /** Share of the comparison done; null when none runs. */
  readonly comparing: number | null;
  /** The variant that is asked for beside the railway, and the share of its own run done (null: done). */
  readonly beside: { readonly id: string; readonly progress: number | null } | null;
  readonly sweep: SweepState | null;
  readonly map: MapState | null;
  readonly grade: GradeQuestion | null;
  readonly chance: ChanceState | null;
  readonly best: BestState | null;
  readonly route: RouteState | null;
  /** Why the last study failed, in words for the person. */
  readonly problem: string | null;
}
