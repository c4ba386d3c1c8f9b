import type { Command } from './command.ts';

/** Escape: leaves the innermost thing that is open. */
export const stepBack: Command = {
  id: 'step-back',
  label: ({ session }) => (session.getState().ghost ? 'Drop the cure that is shown' : 'Close the lens'),
  key: 'Escape',
  shownKey: 'Esc',
  canRun: ({ session }) => session.getState().ghost !== null || session.getState().lens.open,
  run: ({ actions, session }) => (session.getState().ghost ? actions.dropGhost() : actions.closeLens()),
};
