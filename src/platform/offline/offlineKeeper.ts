/** Whether a newer version of the program waits to be used, and the way to it. */
export interface OfflineKeeper {
  /** A newer version is on this machine, whole. */
  readonly waits: () => boolean;
  /** Calls `changed` when that becomes so; gives what ends it. */
  readonly subscribe: (changed: () => void) => () => void;
  /** Uses the newer version: the page opens again. */
  readonly takeOver: () => void;
  /** Keeps the program on this machine from now on; does nothing where a browser or an unsafe address does not allow it. */
  readonly start: () => Promise<void>;
}

/** How often a page that stays open looks for a newer version, ms. */
const lookEvery = 3_600_000;

/** Keeps the program on this machine through the service worker at `address`. */
export function createOfflineKeeper(address: string): OfflineKeeper {
  const listeners = new Set<() => void>();
  let waiting: ServiceWorker | null = null;

  const found = (worker: ServiceWorker) => {
    waiting = worker;
    for (const changed of listeners) changed();
  };
  const watch = (worker: ServiceWorker) => {
    worker.addEventListener('statechange', () => {
      // Without a worker in charge this is the first visit: nothing newer, only kept.
      if (worker.state === 'installed' && navigator.serviceWorker.controller) found(worker);
    });
  };

  return {
    waits: () => waiting !== null,
    subscribe(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    takeOver() {
      if (!waiting) return;
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      waiting.postMessage('take over');
    },
    async start() {
      if (!('serviceWorker' in navigator)) return;
      try {
        const registration = await navigator.serviceWorker.register(address);
        if (registration.waiting && navigator.serviceWorker.controller) found(registration.waiting);
        if (registration.installing) watch(registration.installing);
        registration.addEventListener('updatefound', () => {
          if (registration.installing) watch(registration.installing);
        });
        setInterval(() => void registration.update().catch(() => {}), lookEvery);
      } catch {
        // A browser that forbids it still runs the program; it only has to fetch it again each time.
      }
    },
  };
}
