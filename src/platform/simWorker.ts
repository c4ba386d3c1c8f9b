import type { SimHost } from '../sim/types.ts';
import { createWorkerHost } from '../sim/workerClient.ts';

/** A host that solves trials in a module worker, so that the screen never waits for one. */
export function createSimWorker(): SimHost {
  return createWorkerHost(new Worker(new URL('../sim/worker.ts', import.meta.url), { type: 'module' }));
}
