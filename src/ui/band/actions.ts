import type { SessionActions } from '../../state/index.ts';
import type { ChosenSupports } from '../../state/route/index.ts';
import type { Axis } from '../../state/types.ts';

/** What the band asks of the rest of the screen. All times in s from the start of the trial. */
export interface BandActions
  extends Pick<SessionActions, 'attempt' | 'beginGesture' | 'settleGesture' | 'bailGesture'> {
  /** Grade point of the route that the sheet goes to, from 0. */
  choosePoint(point: number): void;
  /** Neighbouring supports of the route to be changed together; null lets go of them. */
  chooseSupports(chosen: ChosenSupports | null): void;
  /** Plays, or stops where it is. */
  toggle(): void;
  seek(time: number): void;
  previousEvent(): void;
  nextEvent(): void;
  /** Seconds of trial per second of clock. */
  setRate(rate: number): void;
  setAxis(axis: Axis): void;
  /** Index into `result.findings`: goes to its place and moment and chooses it. */
  seekToFinding(index: number): void;
  /** Joint index, or null for none. */
  chooseJoint(joint: number | null): void;
}
