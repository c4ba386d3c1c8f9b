import { always, type Command } from './command.ts';

export const showWhole: Command = {
  id: 'show-whole',
  label: () => 'Show the whole railway',
  key: 'Shift+Digit0',
  shownKey: 'Shift 0',
  canRun: always,
  run: ({ actions }) => actions.showWhole(),
};
