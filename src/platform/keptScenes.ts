import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { thinnedOut } from './keepVersions.ts';
import { keptText } from './keptText.ts';
import { isOldKept, oldList } from './oldList.ts';

/** Railways in the browser's own database, which may be absent, full, in the hands of another version or cleared at any time. */

interface Kept {
  readonly id: string;
  readonly name: string;
  readonly trialId: string;
  readonly text: string;
  readonly at: number;
}

interface OnDisk {
  readonly name: string;
  readonly handle: object | null;
}

interface Shelf extends DBSchema {
  /** Every version of every railway. */
  versions: { key: [string, number]; value: Kept };
  /** The file that a railway was last written to, with the browser's handle on it. */
  files: { key: string; value: OnDisk };
}

const last = keptText('last');
/** What was being written when the page went away, or found no room: written at once, in the one storage that can. */
const late = keptText('late');
/** Where earlier versions of the program kept all railways in one text. */
const oldKept = keptText('kept');

const rangeOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);

/**
 * Reads what was kept, then keeps more. Where there is no database, or none is allowed, everything is refused in words and nothing breaks. While a window
 * with another version of the program holds the database, that is what is said; it is taken in as soon as that window lets go.
 */
export async function openKeptScenes() {
  let shelf: IDBPDatabase<Shelf> | null = null;
  let without: 'blocked' | 'forbidden' = 'forbidden';
  const newest = new Map<string, Kept>();
  const remember = (kept: Kept) => {
    if ((newest.get(kept.id)?.at ?? 0) <= kept.at) newest.set(kept.id, kept);
  };
  let letGo: (() => void) | null = null;
  let turn: Promise<unknown> = Promise.resolve();

  const port = {
    list: (): readonly Kept[] => [...newest.values()].sort((a, b) => b.at - a.at),
    async keep(scene: Kept): Promise<'kept' | 'full' | 'blocked' | 'forbidden'> {
      const written = JSON.stringify(scene);
      late.write(written);
      if (!shelf) return without;
      let ended: Promise<void> | undefined;
      try {
        const work = shelf.transaction('versions', 'readwrite');
        ended = work.done;
        const keys = await work.store.getAllKeys(rangeOf(scene.id));
        const moments = [scene.at, ...keys.map(([, at]) => at).filter((at) => at !== scene.at)].sort((a, b) => b - a);
        await Promise.all([
          work.store.put(scene),
          ...thinnedOut(moments).map((at) => work.store.delete([scene.id, at])),
          work.done,
        ]);
        // Something newer, or another window's, may wait there by now.
        if (late.read() === written) late.write(null);
        remember(scene);
        return 'kept';
      } catch (error) {
        // What is asked of a transaction that ends for want of room is called aborted; only its end says why.
        const end = await ended?.catch((why: unknown) => why);
        if (isFull(error) || isFull(end)) return 'full';
        return shelf === null ? without : 'forbidden';
      }
    },
    async versions(id: string): Promise<readonly Kept[]> {
      const all = (await shelf?.getAll('versions', rangeOf(id)).catch(() => [])) ?? [];
      return all.reverse();
    },
    async forget(id: string): Promise<void> {
      newest.delete(id);
      await shelf?.delete('versions', rangeOf(id)).catch(() => undefined);
      await shelf?.delete('files', id).catch(() => undefined);
    },
    file: async (id: string): Promise<OnDisk | null> => (await shelf?.get('files', id).catch(() => undefined)) ?? null,
    async setFile(id: string, file: OnDisk | null): Promise<void> {
      await (file === null ? shelf?.delete('files', id) : shelf?.put('files', file, id))?.catch(() => undefined);
    },
    last: last.read,
    setLast: last.write,
    claim(id: string): Promise<boolean> {
      // One after the other, so that the one before is let go of whenever another is taken.
      const mine = turn.then(() => {
        letGo?.();
        letGo = null;
        return lockOf(id, (free) => (letGo = free));
      });
      turn = mine;
      return mine;
    },
  };

  const takeIn = async (opened: IDBPDatabase<Shelf>): Promise<void> => {
    shelf = opened;
    const waiting = keptIn(late.read());
    for (const kept of await opened.getAll('versions').catch(() => [])) remember(kept);
    await carryOver(port.keep);
    if (waiting === null) return;
    // It was the last thing done: it is gone on with, whether there is room for it now or not.
    remember(waiting);
    last.write(waiting.id);
    await port.keep(waiting);
  };

  await new Promise<void>((known) => {
    const giveUp = () => {
      shelf?.close();
      shelf = null;
    };
    openDB<Shelf>('gradewright', 2, {
      upgrade: (made, had) => {
        if (had < 1) made.createObjectStore('versions', { keyPath: ['id', 'at'] });
        if (had < 2) made.createObjectStore('files');
      },
      blocked() {
        without = 'blocked';
        known();
      },
      blocking() {
        without = 'blocked';
        giveUp();
      },
      terminated() {
        without = 'forbidden';
        giveUp();
      },
    })
      .then(takeIn, () => {
        without = 'forbidden';
      })
      .finally(known);
  });
  return port;
}

/** Takes a railway's lock for as long as the window has it; false while another window does. */
function lockOf(id: string, taken: (free: () => void) => void): Promise<boolean> {
  // Without locks (an old browser, an insecure page) there is no telling, and the person is let in.
  if (!navigator.locks) return Promise.resolve(true);
  return new Promise((answer) => {
    navigator.locks
      .request(`gradewright.${id}`, { ifAvailable: true }, (lock) => {
        answer(lock !== null);
        return lock === null ? undefined : new Promise<void>(taken);
      })
      .catch(() => answer(true));
  });
}

const isFull = (error: unknown): boolean => error instanceof DOMException && error.name === 'QuotaExceededError';

/** A railway kept as a text; null for what is none. */
function keptIn(text: string | null): Kept | null {
  try {
    const value: unknown = text === null ? null : JSON.parse(text);
    return isOldKept(value) && typeof (value as Partial<Kept>).id === 'string' ? (value as Kept) : null;
  } catch {
    return null;
  }
}

/** Carries what earlier versions of the program kept in one text into the database, once; where that fails it stays for the next time. */
async function carryOver(keep: (kept: Kept) => Promise<string>): Promise<void> {
  const text = oldKept.read();
  if (text === null) return;
  const outcomes: string[] = [];
  for (const old of oldList(text)) outcomes.push(await keep({ ...old, id: crypto.randomUUID() }));
  if (outcomes.every((outcome) => outcome === 'kept')) oldKept.write(null);
}
