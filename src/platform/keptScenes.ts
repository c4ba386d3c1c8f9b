import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { thinnedOut } from './keepVersions.ts';
import { oldList } from './oldList.ts';

/** Railways in the browser's own database, which may be absent, full or cleared at any time. */

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

const lastKey = 'gradewright.last';
/** What was being written when the page went away: written at once, in the one storage that can. */
const lateKey = 'gradewright.late';

/** Where earlier versions of the program kept all railways in one text. */
const oldListKey = 'gradewright.kept';

const openShelf = (): Promise<IDBPDatabase<Shelf>> =>
  openDB<Shelf>('gradewright', 2, {
    upgrade: (shelf, had) => {
      if (had < 1) shelf.createObjectStore('versions', { keyPath: ['id', 'at'] });
      if (had < 2) shelf.createObjectStore('files');
    },
  });

const rangeOf = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);

/** Reads what was kept, then keeps more. Where there is no database, or none is allowed, everything is refused in words and nothing breaks. */
export async function openKeptScenes() {
  const shelf = await openShelf().catch(() => null);
  const newest = new Map<string, Kept>();
  const remember = (kept: Kept) => {
    if ((newest.get(kept.id)?.at ?? 0) <= kept.at) newest.set(kept.id, kept);
  };
  for (const kept of (await shelf?.getAll('versions').catch(() => [])) ?? []) remember(kept);
  let letGo: (() => void) | null = null;

  const port = {
    list: (): readonly Kept[] => [...newest.values()].sort((a, b) => b.at - a.at),
    async keep(scene: Kept): Promise<'kept' | 'full' | 'forbidden'> {
      setLocal(lateKey, JSON.stringify(scene));
      if (!shelf) return 'forbidden';
      try {
        const work = shelf.transaction('versions', 'readwrite');
        const keys = await work.store.getAllKeys(rangeOf(scene.id));
        const moments = [scene.at, ...keys.map(([, at]) => at).filter((at) => at !== scene.at)].sort((a, b) => b - a);
        await Promise.all([
          work.store.put(scene),
          ...thinnedOut(moments).map((at) => work.store.delete([scene.id, at])),
          work.done,
        ]);
        setLocal(lateKey, null);
        remember(scene);
        return 'kept';
      } catch (error) {
        return error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'forbidden';
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
    last: (): string | null => getLocal(lastKey),
    setLast: (id: string | null): void => setLocal(lastKey, id),
    async claim(id: string): Promise<boolean> {
      letGo?.();
      letGo = null;
      // Without locks (an old browser, an insecure page) there is no telling, and the person is let in.
      if (!navigator.locks) return true;
      return new Promise((answer) => {
        void navigator.locks.request(`gradewright.${id}`, { ifAvailable: true }, (lock) => {
          answer(lock !== null);
          return lock === null ? undefined : new Promise<void>((free) => (letGo = free));
        });
      });
    },
  };
  await carryOver(shelf, port.keep);
  const late = getLocal(lateKey);
  if (late !== null) await port.keep(JSON.parse(late) as Kept).catch(() => undefined);
  return port;
}

/** Carries what earlier versions of the program kept in one text into the database, once; where that fails it stays for the next time. */
async function carryOver(shelf: object | null, keep: (kept: Kept) => Promise<string>): Promise<void> {
  const text = shelf === null ? null : getLocal(oldListKey);
  if (text === null) return;
  const outcomes = await Promise.all(oldList(text).map((old) => keep({ ...old, id: crypto.randomUUID() })));
  if (outcomes.every((outcome) => outcome === 'kept')) setLocal(oldListKey, null);
}

function getLocal(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function setLocal(key: string, value: string | null): void {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, value);
  } catch {
    // Full or forbidden: the database is then the only one to keep it.
  }
}
