import type { StoreApi } from 'zustand/vanilla';
import { eventTimes, timeAfter, timeBefore } from './events.ts';
import { timeAtPlace } from './passing.ts';
import type { PlaybackActions } from './playback.ts';
import { referenceOf, referencePlaces } from './reference.ts';
import type { MomentActions } from './session.ts';
import type { PlaybackState, SessionState } from './types.ts';
import { jointOf } from './words.ts';

/** Ways to moments. All of them stand still there. */
export function createMomentActions(
  session: StoreApi<SessionState>,
  playback: StoreApi<PlaybackState>,
  { pause, seek }: PlaybackActions,
): MomentActions {
  const standAt = (time: number) => {
    pause();
    seek(time);
  };
  const goToEvent = (pick: typeof timeAfter) => {
    const { result } = session.getState();
    const time = result && pick(eventTimes(result), playback.getState().time);
    if (time !== null) standAt(time);
  };
  return {
    seekToFinding(index) {
      const finding = session.getState().result?.findings[index];
      if (!finding) return;
      standAt(finding.time);
      session.setState({ chosenFinding: index, chosenJoint: jointOf(finding) });
    },
    goToPlace(chainage) {
      const state = session.getState();
      const { result, trial } = state;
      if (!result || !trial) return;
      const places = referencePlaces(trial, result, referenceOf(state));
      standAt(timeAtPlace(result.run.time, places, chainage, playback.getState().time));
    },
    nextEvent: () => goToEvent(timeAfter),
    previousEvent: () => goToEvent(timeBefore),
  };
}
