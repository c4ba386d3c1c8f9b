import { useStore } from 'zustand';
import { useDesk } from '../context.tsx';

/** What Space does now. */
export function PlayWords() {
  const playing = useStore(useDesk().playback, (state) => state.playing);
  return playing ? 'Pause' : 'Play';
}
