import type { StudyHooks } from './hooks.ts';

/** Asks for outcomes at points, several at once, and remembers every one it has been told. */
export interface Probing<T> {
  /** Outcomes at these points, in their order; null where the study was stopped before the probe began. */
  at(points: readonly (readonly number[])[]): Promise<(T | null)[]>;
  /** Every point probed so far with its outcome, in the order they were asked for. */
  readonly known: readonly { readonly at: readonly number[]; readonly outcome: T }[];
}

/**
 * Makes a probing of `probe`: no point is probed twice, at most `hooks.width` probes are under way at once, and the order
 * of `known` does not depend on which ends first. An error of a probe is passed on after those under way have ended.
 */
export function createProbing<T>(probe: (at: readonly number[]) => Promise<T>, hooks: StudyHooks = {}): Probing<T> {
  const known: { at: readonly number[]; outcome: T }[] = [];
  const byKey = new Map<string, { outcome: T }>();
  const width = Math.max(1, Math.floor(hooks.width ?? 1));
  let asked = 0;
  let done = 0;

  async function probeAll(points: readonly (readonly number[])[]): Promise<void> {
    const fresh = new Map<string, readonly number[]>();
    for (const point of points) {
      const key = point.join();
      if (!byKey.has(key)) fresh.set(key, point);
    }
    asked += fresh.size;
    const waiting = [...fresh];
    const found = new Map<string, T>();
    let next = 0;
    const lane = async (): Promise<void> => {
      while (next < waiting.length && !(hooks.stopped?.() ?? false)) {
        const [key, point] = waiting[next++];
        found.set(key, await probe(point));
        hooks.onProgress?.(++done, asked);
      }
    };
    const lanes = await Promise.allSettled(Array.from({ length: Math.min(width, waiting.length) }, lane));
    for (const [key, at] of waiting) {
      if (!found.has(key)) continue;
      const outcome = found.get(key) as T;
      byKey.set(key, { outcome });
      known.push({ at, outcome });
    }
    for (const end of lanes) if (end.status === 'rejected') throw end.reason;
  }

  return {
    known,
    async at(points) {
      await probeAll(points);
      return points.map((point) => byKey.get(point.join())?.outcome ?? null);
    },
  };
}
