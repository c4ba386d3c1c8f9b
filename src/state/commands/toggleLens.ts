import { type Command, hasResult } from './command.ts';

export const toggleLens: Command = {
  id: 'toggle-lens',
  label: ({ session }) => (session.getState().lens.open ? 'Close the lens' : 'Magnify the joint'),
  key: 'm',
  shownKey: 'M',
  canRun: (context) => hasResult(context) && (context.session.getState().trial?.train.vehicles.length ?? 0) > 1,
  run: ({ actions, session }) => (session.getState().lens.open ? actions.closeLens() : actions.openLens()),
};
