import { createSurveyWorkerHost, type SurveyHost } from '../../sim/survey/index.ts';

/** A host that works surveys out in a module worker, with the solver and its WebAssembly from the program's own files. */
export const createSurveySolver = (): SurveyHost =>
  createSurveyWorkerHost(() => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
