import { always, type Command } from './command.ts';

export const newRailway: Command = {
  id: 'new-railway',
  label: () => 'New railway…',
  key: 'n',
  shownKey: 'N',
  canRun: always,
  run: ({ actions }) => actions.setMaking(true),
};
