import { type Command, hasResult } from './command.ts';

/** Before an audience it plays what the stop is about, and holds a tour that runs by itself. */
export const togglePlay: Command = {
  id: 'toggle-play',
  label: ({ playback }) => (playback.getState().playing ? 'Pause the trial' : 'Play the trial'),
  key: 'Space',
  shownKey: 'Space',
  canRun: hasResult,
  run: ({ actions, session }) => {
    const { tour } = session.getState();
    if (tour.running) actions.holdTour();
    else if (tour.presenting) actions.playStop();
    else actions.toggle();
  },
};
