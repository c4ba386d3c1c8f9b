import { type Command, hasResult } from './command.ts';

export const togglePlay: Command = {
  id: 'toggle-play',
  label: ({ playback }) => (playback.getState().playing ? 'Pause the trial' : 'Play the trial'),
  key: 'Space',
  shownKey: 'Space',
  canRun: hasResult,
  run: ({ actions }) => actions.toggle(),
};
