import { type Command, hasResult } from './command.ts';

export const nextEvent: Command = {
  id: 'next-event',
  label: () => 'Go on to the next event',
  key: '.',
  shownKey: '.',
  canRun: hasResult,
  run: ({ actions }) => actions.nextEvent(),
};
