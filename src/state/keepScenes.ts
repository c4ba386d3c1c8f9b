import { type Scene, serialiseScene } from '../scene/index.ts';
import type { KeepPort } from './ports.ts';
import type { Session } from './session.ts';
import type { Opened } from './types.ts';

/** From the first change to when it is kept, ms: with the writing itself no change is older than a second. */
const restBefore = 700;

export interface SceneKeeper {
  /** Keeps now what waits to be kept. */
  flush(): void;
  stop(): void;
}

/** What is to be kept, as it was when it changed: another railway may be open by then. */
interface Waiting {
  readonly id: string;
  readonly scene: Scene;
  readonly trialId: string;
  readonly opened: Opened | null;
}

/** An id that no railway on any machine has. */
const newId = (): string => crypto.randomUUID();

/**
 * Keeps the railway on this machine whenever it was changed, came from a file or was made anew. A drag is kept at most once in `restBefore`. `clock`
 * gives ms since 1970.
 */
export function keepScenes({ session, history }: Session, port: KeepPort, clock: () => number): SceneKeeper {
  let timer: ReturnType<typeof setTimeout> | null = null;
  let waiting: Waiting | null = null;
  let id = newId();

  const isPersons = (): boolean => {
    const { past, future } = history.getState();
    return session.getState().opened?.from !== 'program' || past.length + future.length > 0;
  };

  const keep = async ({ id: own, scene, trialId, opened }: Waiting): Promise<void> => {
    const at = clock();
    const outcome = await port.keep({ id: own, name: scene.name, trialId, text: serialiseScene(scene), at });
    if (session.getState().opened !== opened) return;
    port.setLast(outcome === 'kept' ? own : null);
    session.setState(outcome === 'kept' ? { savedAt: at, notKept: null } : { savedAt: null, notKept: outcome });
  };

  const flush = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const now = waiting;
    waiting = null;
    if (now) void keep(now);
  };

  const unsubscribe = session.subscribe((now, before) => {
    if (now.opened !== before.opened) {
      // What was open is kept as it was left.
      flush();
      id = now.opened?.id ?? newId();
      // What is kept already was claimed before it was opened. An example is kept from its first change on.
      if (now.opened && now.opened.id === undefined) void port.claim(id);
    }
    if (now.file !== before.file && now.file !== null) void port.setFile(id, now.file);
    if (now.scene === before.scene && now.trialId === before.trialId) return;
    const { scene, trialId, opened } = now;
    if (!scene || !trialId) return;
    if (opened !== before.opened && opened?.id !== undefined) {
      const newest = port.list().find((kept) => kept.id === opened.id);
      if (newest?.trialId === trialId && newest.text === serialiseScene(scene)) {
        // As it was kept last: there is nothing new to keep. An earlier state is kept again, as what is now worked on.
        port.setLast(opened.id);
        return;
      }
    }
    // The history is told of an edit after the scene: whether it is the person's is seen when it rests.
    waiting = { id, scene, trialId, opened };
    timer ??= setTimeout(() => {
      if (isPersons()) flush();
      else {
        timer = null;
        waiting = null;
        port.setLast(null);
      }
    }, restBefore);
  });

  return {
    flush() {
      if (waiting && isPersons()) flush();
    },
    stop() {
      unsubscribe();
      if (timer !== null) clearTimeout(timer);
      timer = null;
      waiting = null;
    },
  };
}
