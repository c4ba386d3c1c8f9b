import type { Command } from './command.ts';

export const keepCure: Command = {
  id: 'keep-cure',
  label: () => 'Keep the cure that is shown',
  key: '$mod+Enter',
  shownKey: 'Ctrl Enter',
  canRun: ({ session }) => session.getState().ghost !== null,
  run: ({ actions }) => actions.keepCure(),
};
