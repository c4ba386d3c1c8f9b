import { type BestHost, createBestWorkerHost } from '../../sim/study/bestHost.ts';

/** A host that looks for profiles and routes in module workers, with the solver and its WebAssembly from the program's own files. */
export const createBestSolver = (): BestHost =>
  createBestWorkerHost(
    () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
    () => new Worker(new URL('./routeWorker.ts', import.meta.url), { type: 'module' }),
  );
