import { type BestHost, createBestWorkerHost } from '../../sim/study/bestHost.ts';

/** A host that looks for profiles in module workers, with the solver and its WebAssembly from the program's own files. */
export const createBestSolver = (): BestHost =>
  createBestWorkerHost(() => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
