import type { Proportion } from '../../core/study/index.ts';
import type { Face, Steadiness } from '../../core/survey/index.ts';
import type { SurveyChange } from '../../core/survey/types.ts';
import type { SceneReading } from '../../scene/index.ts';
import type { Probe } from '../../sim/study/index.ts';
import type { Objective, SurveyAnswer } from '../../sim/survey/index.ts';
import type { TiltTrouble } from './tiltPort.ts';

export type { SurveyChange } from '../../core/survey/types.ts';
export type { SceneReading, SceneSurvey } from '../../scene/index.ts';
export type { Exactness } from '../../sim/study/index.ts';
export type { Objective, SurveyAnswer } from '../../sim/survey/index.ts';

export type ReadingKind = SceneReading['kind'];

/** What a level reads. */
export type LevelKind = Extract<ReadingKind, 'grade' | 'cross'>;

/** An instrument as it is held and set up: what every reading taken with it shares. Units as in a scene. */
export interface Tool {
  /** Of a level. */
  readonly unit: 'percent' | 'degree';
  /** Smallest step it shows and deviation of one reading apart from that: per cent or degrees for a level (by `unit`; the error always per cent), mm for the rest. */
  readonly step: number;
  readonly error: number;
  /** Length of a level or straightedge. */
  readonly baseMm: number;
  /** Where a level is stood. */
  readonly places: 'supports' | 'spans';
  /** Laser line or water level that heights are counted from; empty: the datum of the plan. */
  readonly line: string;
  /** A spacer reaches to the deck above: this many supports further on. */
  readonly further: number;
  /** Board between that is not in the spacer's reading, mm. */
  readonly boardMm: number;
}

export type Tools = Readonly<Record<ReadingKind, Tool>>;

/** A survey that has no reading yet, and so no place in the scene. */
export interface Draft {
  readonly name: string;
  readonly trackId: string;
}

/** Readings being taken one after another. */
export interface Walk {
  readonly kind: ReadingKind;
  /** Index of the place that is next. */
  readonly stop: number;
  /** Places from one reading to the next. */
  readonly stride: number;
  /** The level stands end for end. */
  readonly turned: boolean;
  /** Places and numbers of the readings taken on this walk, the last one last. */
  readonly taken: readonly { readonly stop: number; readonly words: string }[];
}

/** What a phone that serves as the level is to be read for: the two faces of its calibration, or a reading of the walk. */
export type PhoneTask = 'first-face' | 'second-face' | 'reading';

/** The phone as the level. */
export interface Phone {
  readonly state: 'off' | 'asking' | 'on';
  /** Why it cannot serve. */
  readonly trouble: TiltTrouble | null;
  /** How it lies; null before it was seen, and while it stands up. */
  readonly steady: Steadiness | null;
  /** Length over which it lies on the track. */
  readonly baseMm: number;
  /** First face of a calibration whose second is still to come. */
  readonly firstFace: Face | null;
  /** What it shows on the level and the deviation of that; null: it cannot be read yet. */
  readonly calibration: { readonly bias: number; readonly deviation: number } | null;
  /** Ids of the survey's instruments that this calibration is, along the track and across it; none before its first reading. */
  readonly instruments: Readonly<Partial<Record<LevelKind, string>>>;
  /** What it is read for as soon as it lies still. */
  readonly waits: PhoneTask | null;
  /** What was wrong with the last try. */
  readonly said: string | null;
}

/** What the trains make of the line: one run as told, and drawn lines as the readings leave them open. */
export interface TrainsOutcome {
  readonly probe: Probe | null;
  /** How many drawn lines are worked out, how many of them pass, and the share with its 95 % range. */
  readonly draws: number;
  readonly passed: number;
  readonly share: Proportion | null;
}

export interface Trains {
  readonly trialName: string;
  readonly before: TrainsOutcome;
  /** Null where there is no mending to run. */
  readonly after: TrainsOutcome | null;
  /** Share of all runs done; null when it is over. */
  readonly progress: number | null;
}

/** The parts of the job in their order. */
export type SurveyPart = 'read' | 'find' | 'mend' | 'trains';

/** Surveys as they are worked with. Readings and wishes themselves belong to the scene. */
export interface SurveyState {
  /** Id of the survey on show. */
  readonly chosen: string | null;
  readonly draft: Draft | null;
  readonly part: SurveyPart;
  readonly tools: Tools;
  readonly walk: Walk | null;
  readonly phone: Phone;
  /** Text of a table that is being looked at before it is taken; empty: none. */
  readonly table: string;
  /** The survey on show worked out; null before, and while its readings are none. */
  readonly worked: SurveyAnswer | null;
  /** Everything that it was worked out from. */
  readonly workedFrom: string;
  /** True while it is being worked out anew. */
  readonly working: boolean;
  readonly objective: Objective;
  /** With its mend; null until asked for. */
  readonly mended: SurveyAnswer | null;
  /** Everything that it, or the mending under way, follows from. */
  readonly mendedFrom: string;
  readonly mending: boolean;
  readonly trains: Trains | null;
  /** Id of an earlier survey that the one on show is compared with, and what changed. */
  readonly against: { readonly id: string; readonly changes: readonly SurveyChange[] | null } | null;
  /** Why the last work failed, in words for the person. */
  readonly problem: string | null;
}
