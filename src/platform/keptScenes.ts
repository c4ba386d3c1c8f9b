/** Scenes in the browser's own storage, which may be absent, full or cleared at any time. */

interface Kept {
  readonly name: string;
  readonly trialId: string;
  readonly text: string;
  readonly at: number;
}

const listKey = 'gradewright.kept';
const lastKey = 'gradewright.last';

/** Scenes kept at most; the oldest give way. */
const mostKept = 8;

function isKept(value: unknown): value is Kept {
  if (typeof value !== 'object' || value === null) return false;
  const { name, trialId, text, at } = value as Partial<Record<keyof Kept, unknown>>;
  return typeof name === 'string' && typeof trialId === 'string' && typeof text === 'string' && typeof at === 'number';
}

function list(): readonly Kept[] {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(listKey) ?? '[]');
    return Array.isArray(stored) ? stored.filter(isKept) : [];
  } catch {
    return [];
  }
}

function write(key: string, value: string | null): boolean {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, value);
    return true;
  } catch {
    return false;
  }
}

export const keptScenes = {
  list,
  keep(scene: Kept): boolean {
    const others = list().filter(({ name }) => name !== scene.name);
    // Where there is little room the older ones go first.
    for (let room = mostKept; room >= 1; room--) {
      if (write(listKey, JSON.stringify([scene, ...others].slice(0, room)))) return true;
    }
    return false;
  },
  forget(name: string): void {
    write(listKey, JSON.stringify(list().filter((scene) => scene.name !== name)));
  },
  last(): string | null {
    try {
      return localStorage.getItem(lastKey);
    } catch {
      return null;
    }
  },
  setLast(name: string | null): void {
    write(lastKey, name);
  },
};
