import type { Command } from './command.ts';

export const redo: Command = {
  id: 'redo',
  label: ({ history }) => {
    const step = history.getState().future[0];
    return step ? `Redo ${step.label}` : 'Redo';
  },
  key: '$mod+Shift+z',
  shownKey: 'Ctrl Shift Z',
  canRun: ({ history }) => history.getState().future.length > 0,
  run: ({ actions }) => actions.redo(),
};
