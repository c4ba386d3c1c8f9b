import type { SessionState } from '../types.ts';
import type { Command } from './command.ts';

/** Of what is open, the one thing that is left. */
const innermost = ({ tour, ghost, lens }: SessionState): 'presentation' | 'ghost' | 'lens' | null => {
  if (tour.presenting) return 'presentation';
  if (ghost !== null) return 'ghost';
  return lens.open ? 'lens' : null;
};

const words = {
  presentation: 'Leave the presentation',
  ghost: 'Drop the cure that is shown',
  lens: 'Close the lens',
} as const;

/** Escape: leaves the innermost thing that is open; a presentation as a whole. */
export const stepBack: Command = {
  id: 'step-back',
  label: ({ session }) => words[innermost(session.getState()) ?? 'lens'],
  key: 'Escape',
  shownKey: 'Esc',
  canRun: ({ session }) => innermost(session.getState()) !== null,
  run: ({ actions, session }) => {
    const open = innermost(session.getState());
    if (open === 'presentation') actions.stopPresenting();
    else if (open === 'ghost') actions.dropGhost();
    else actions.closeLens();
  },
};
