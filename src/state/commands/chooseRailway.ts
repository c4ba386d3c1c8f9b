import { always, type Command } from './command.ts';

export const chooseRailway: Command = {
  id: 'choose-railway',
  label: () => 'Choose a railway and a trial…',
  key: 'o',
  shownKey: 'O',
  canRun: always,
  run: ({ actions }) => actions.setChooser(true),
};
