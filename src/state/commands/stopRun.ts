import type { Command } from './command.ts';

export const stopRun: Command = {
  id: 'stop-run',
  label: () => 'Stop what is being worked out',
  key: null,
  canRun: ({ session }) => {
    const { progress, cures } = session.getState();
    return progress !== null || [...cures.values()].some((row) => row.some((outcome) => outcome.state === 'running'));
  },
  run: ({ actions }) => actions.cancel(),
};
