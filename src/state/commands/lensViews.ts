import type { LensView } from '../types.ts';
import type { Command } from './command.ts';

const words: Readonly<Record<LensView, string>> = {
  side: 'from the side',
  above: 'from above',
  along: 'along the train',
};

/** One command for each way to look through the lens. */
export const lensViews: readonly Command[] = (Object.keys(words) as LensView[]).map((view) => ({
  id: `lens-${view}`,
  label: () => `Lens ${words[view]}`,
  key: null,
  canRun: ({ session }) => session.getState().lens.open,
  run: ({ actions }) => actions.setLensView(view),
}));
