import type { Command } from './command.ts';

export const undo: Command = {
  id: 'undo',
  label: ({ history }) => {
    const step = history.getState().past.at(-1);
    return step ? `Undo ${step.label}` : 'Undo';
  },
  key: '$mod+z',
  shownKey: 'Ctrl Z',
  canRun: ({ history }) => history.getState().past.length > 0,
  run: ({ actions }) => actions.undo(),
};
