import type { Command } from './command.ts';

export const runTrial: Command = {
  id: 'run-trial',
  label: () => 'Run the trial again',
  key: 'r',
  shownKey: 'R',
  canRun: ({ session }) => session.getState().scene !== null && session.getState().progress === null,
  run: ({ actions }) => actions.run(),
};
