import type { Command } from './command.ts';

/** Its key is held to look and let go to come back, which a command cannot know: the stage listens for it. */
export const turnBeside: Command = {
  id: 'turn-beside',
  label: ({ session }) => {
    const { beside, besideLook } = session.getState();
    return besideLook.flipped ? 'Show this railway again' : `Show ${beside?.name ?? 'the variant'} instead`;
  },
  key: null,
  shownKey: 'V',
  canRun: ({ session }) => session.getState().beside !== null,
  run: ({ session }) =>
    session.setState(({ besideLook }) => ({
      besideLook: { ...besideLook, view: 'flip', flipped: !(besideLook.view === 'flip' && besideLook.flipped) },
    })),
};
