import { type Command, hasResult } from './command.ts';

export const previousEvent: Command = {
  id: 'previous-event',
  label: () => 'Go back to the event before',
  key: ',',
  shownKey: ',',
  canRun: hasResult,
  run: ({ actions }) => actions.previousEvent(),
};
