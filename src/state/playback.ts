import { createStore, type StoreApi } from 'zustand/vanilla';
import type { PlaybackState } from './types.ts';

/** Longest stretch of clock time one tick may cover, s: a tab that slept must not leap through the trial. */
const longestTick = 0.25;

export interface PlaybackActions {
  play(): void;
  pause(): void;
  toggle(): void;
  /** Moves to a time in s, held inside the trial. */
  seek(time: number): void;
  /** Seconds of trial per second of clock. */
  setRate(rate: number): void;
  /** Advances by a stretch of clock time in s while playing. */
  tick(clockSeconds: number): void;
}

/** Makes the store of the moment being looked at, with the few things one can do to it. */
export function createPlayback(): { playback: StoreApi<PlaybackState>; actions: PlaybackActions } {
  const playback = createStore<PlaybackState>(() => ({ time: 0, duration: 0, playing: false, rate: 1 }));

  const play = () => {
    const { time, duration } = playback.getState();
    if (duration <= 0) return;
    playback.setState(time >= duration ? { playing: true, time: 0 } : { playing: true });
  };
  const pause = () => playback.setState({ playing: false });

  return {
    playback,
    actions: {
      play,
      pause,
      toggle: () => (playback.getState().playing ? pause() : play()),
      seek: (time) => playback.setState({ time: Math.min(Math.max(time, 0), playback.getState().duration) }),
      setRate: (rate) => playback.setState({ rate }),
      tick: (clockSeconds) => {
        const { time, duration, playing, rate } = playback.getState();
        if (!playing) return;
        const next = time + Math.min(clockSeconds, longestTick) * rate;
        playback.setState(next >= duration ? { time: duration, playing: false } : { time: next });
      },
    },
  };
}
