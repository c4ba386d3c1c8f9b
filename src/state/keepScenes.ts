import { serialiseScene } from '../scene/index.ts';
import type { KeepPort } from './ports.ts';
import type { Session } from './session.ts';

/** How long changes must rest before they are kept, ms: a drag is kept once, not a hundred times. */
const restBefore = 800;

export interface SceneKeeper {
  /** Keeps now what waits to be kept. */
  flush(): void;
  stop(): void;
}

/**
 * Keeps the scene on this machine whenever it was changed or came from a file. `clock` gives ms since 1970.
 */
export function keepScenes({ session, history }: Session, port: KeepPort, clock: () => number): SceneKeeper {
  let timer: ReturnType<typeof setTimeout> | null = null;

  const isPersons = (): boolean => {
    const { past, future } = history.getState();
    return session.getState().opened?.from !== 'program' || past.length + future.length > 0;
  };

  const keep = () => {
    timer = null;
    const { scene, trialId } = session.getState();
    if (!scene || !trialId) return;
    if (!isPersons()) {
      port.setLast(null);
      return;
    }
    const at = clock();
    const kept = port.keep({ name: scene.name, trialId, text: serialiseScene(scene), at });
    port.setLast(kept ? scene.name : null);
    session.setState({ savedAt: kept ? at : null });
  };

  const unsubscribe = session.subscribe((now, before) => {
    if (now.scene === before.scene && now.trialId === before.trialId) return;
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(keep, restBefore);
  });

  const flush = () => {
    if (timer === null) return;
    clearTimeout(timer);
    keep();
  };

  return {
    flush,
    stop() {
      unsubscribe();
      if (timer !== null) clearTimeout(timer);
      timer = null;
    },
  };
}
