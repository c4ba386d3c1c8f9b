import { always, type Command } from './command.ts';

export const openPalette: Command = {
  id: 'open-palette',
  label: () => 'Find a place, a vehicle, or something to do',
  key: '$mod+k',
  shownKey: 'Ctrl K',
  canRun: always,
  run: ({ actions }) => actions.setPalette(true),
};
