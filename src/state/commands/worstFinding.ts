import { type Command, hasResult } from './command.ts';

export const worstFinding: Command = {
  id: 'worst-finding',
  label: () => 'Go to the gravest finding',
  key: 'w',
  shownKey: 'W',
  canRun: (context) => hasResult(context) && context.session.getState().result?.findings.length !== 0,
  run: ({ actions }) => actions.seekToFinding(0),
};
