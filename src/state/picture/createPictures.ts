import { createStore, type StoreApi } from 'zustand/vanilla';
import { wordsOf } from '../aborting.ts';
import { fileNameOf } from '../fileName.ts';
import type { Session } from '../session.ts';
import { captionOf } from './captionOf.ts';
import type { Drawing, PicturePort } from './types.ts';

export interface PictureState {
  /** Why the last one was not made, in words. */
  readonly problem: string | null;
}

/** Pictures of what the stage shows. */
export interface Pictures {
  readonly pictures: StoreApi<PictureState>;
  /** The stage says how it is drawn, while there is one; gives what takes that back. */
  readonly drawnBy: (drawing: Drawing) => () => void;
  readonly actions: {
    /** Saves what the stage shows now, `scale` times as fine as on the screen, with a caption under it. */
    save(scale: number): Promise<void>;
  };
}

/** Makes what the program knows of pictures while it is open. */
export function createPictures(
  { session, playback }: Pick<Session, 'session' | 'playback'>,
  port: PicturePort,
): Pictures {
  const pictures = createStore<PictureState>(() => ({ problem: null }));
  let draw: Drawing | null = null;
  return {
    pictures,
    drawnBy(drawing) {
      draw = drawing;
      return () => {
        if (draw === drawing) draw = null;
      };
    },
    actions: {
      async save(scale) {
        const state = session.getState();
        if (draw === null || state.scene === null) return;
        // What is drawn next is what is told: both are taken now.
        const caption = captionOf(state, playback.getState().time);
        pictures.setState({ problem: null });
        try {
          const picture = await port.captioned(await draw(scale), caption);
          await port.save(fileNameOf(state.scene.name, '.png'), picture);
        } catch (error) {
          pictures.setState({ problem: wordsOf(error) });
        }
      },
    },
  };
}
