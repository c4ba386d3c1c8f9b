import type { NewTourStop, SceneTourView, TourStopChange } from '../../scene/index.ts';

export type { NewTourStop, SceneTourStop, SceneTourView, TourStopChange } from '../../scene/index.ts';

/** Where the tour of the railway is. */
export interface TourState {
  /** Id of the stop on show; null: none is. */
  readonly stop: string | null;
  /** How often a stop was gone to: the stage goes to its view each time. */
  readonly went: number;
  /** It goes on from stop to stop by itself. */
  readonly running: boolean;
  /** The stage fills the window, with the stop's words under it. */
  readonly presenting: boolean;
  /** The audience guesses first: a verdict stays covered until it is asked for. */
  readonly guessFirst: boolean;
  /** The verdict of the stop on show is told. */
  readonly told: boolean;
}

/** What the stage shows now, taken by whoever wants it; null in it: there is nothing to take. */
export interface Sight {
  take: (() => SceneTourView | null) | null;
}

export interface TourActions {
  /** Goes to a stop: its trial, solved first if need be, its moment and its view; then plays its stretch. */
  goToStop(stopId: string): Promise<void>;
  /** Goes on: to the verdict where that is still covered, else to the next stop. */
  nextStop(): void;
  previousStop(): void;
  /** Plays the stretch of the stop on show, once more where it is over; or pauses. */
  playStop(): void;
  /** Goes through the tour by itself from the stop on show, or from the first. */
  runTour(): void;
  /** Stays where the tour is. */
  holdTour(): void;
  /** The stage fills the window; the tour begins where it is, or at its first stop. */
  present(): void;
  stopPresenting(): void;
  setGuessFirst(on: boolean): void;
  tellVerdict(): void;
  /** Makes a tour of what the trial on show came to. Why not, in words, or null. */
  proposeTour(): string | null;
  /** Adds what the stage shows now, behind the stop on show. Why not, in words, or null. */
  addView(): string | null;
  /** Shows what the stage shows now at a stop of the tour. */
  retakeView(stopId: string): string | null;
  changeStop(stopId: string, what: string, change: TourStopChange): string | null;
  moveStop(stopId: string, by: number): string | null;
  removeStop(stopId: string): string | null;
}

/** What is on show at a moment, as a stop of a tour that has no title yet. */
export type ShownNow = Omit<NewTourStop, 'title'>;
