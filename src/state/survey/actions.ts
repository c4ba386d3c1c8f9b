import type { ReadingsText } from '../../core/survey/index.ts';
import type { SceneSurvey } from '../../scene/index.ts';
import type { Exactness } from '../../sim/study/index.ts';
import type { Objective, PhoneTask, ReadingKind, SurveyPart, Tool, Walk } from './types.ts';

/** What the mending may do and must keep, as the scene has it. */
export type Wishes = NonNullable<SceneSurvey['mend']>;

/** What can be done with surveys. Everything that changes the scene goes through the session, as one undo step each. */
export interface SurveyActions {
  choose(id: string): void;
  setPart(part: SurveyPart): void;
  /** Makes ready for a new survey; it comes into the scene with its first reading. */
  begin(name: string): void;
  rename(name: string): void;
  remove(id: string): void;
  /** Sets an instrument up; what the survey says of its errors goes with it. */
  setTool(kind: ReadingKind, change: Partial<Tool>): void;
  /** Starts taking readings one after another, at a support (from 0) or at the first place. */
  startWalk(kind: ReadingKind, support?: number): void;
  setWalk(change: Partial<Pick<Walk, 'stop' | 'stride' | 'turned'>>): void;
  endWalk(): void;
  /** Takes a reading as typed and goes on to the next place; null, or what is wrong with it. */
  enter(text: string): string | null;
  /** Takes the last reading of the walk back and stands at its place again. */
  takeBack(): void;
  /** Begins to read the phone's own tilt; on a tap, since the person may be asked. */
  startPhone(): Promise<void>;
  endPhone(): void;
  /** Sets the length over which the phone lies on the track. */
  setPhoneBase(baseMm: number): void;
  /** Reads the phone as soon as it has lain still. */
  readWhenStill(task: PhoneTask): void;
  /** Forgets the calibration. */
  calibrateAnew(): void;
  /** Changes the number of a reading; null, or what is wrong with it. */
  setReading(index: number, text: string): string | null;
  removeReading(index: number): void;
  /** Reads a pasted table without taking it. */
  readTable(text: string): ReadingsText;
  /** Puts a table before the person, to be looked at before it is taken. */
  setTable(text: string): void;
  /** A table came from outside: goes to the chapter, with a new survey where there is none. */
  dropTable(text: string): void;
  /** Takes every line of the table that can be read; null, or why not. */
  takeTable(): string | null;
  /** Begins the reading that would tell most. */
  takeNext(): void;
  setObjective(objective: Objective): void;
  /** Changes what the mending may do and must keep. */
  setWishes(label: string, make: (wishes: Wishes) => Wishes): void;
  setFixed(supports: readonly number[]): void;
  /** Looks for the mending; `stop` calls it off. */
  mend(): Promise<void>;
  runTrains(exactness: Exactness): Promise<void>;
  stop(): void;
  /** Compares the survey on show with an earlier one; null: with none. */
  compareWith(id: string | null): Promise<void>;
  /** Makes the heights that the survey shows those of the railway as built. */
  putEstimate(): Promise<boolean>;
  /** Sets the supports to where the mending puts them. */
  putMended(): Promise<boolean>;
}
