import type { Command } from './command.ts';

/** The sheet of railways has the name of the open one at its head. */
export const renameRailway: Command = {
  id: 'rename-railway',
  label: () => 'Rename the railway…',
  key: null,
  canRun: ({ session }) => session.getState().scene !== null,
  run: ({ actions }) => actions.setChooser(true),
};
