import { createProbePool, type ProbePool } from '../sim/study/index.ts';
import type { SimHost } from '../sim/types.ts';
import { createSimWorker } from './simWorker.ts';

/** Workers for studies at most: each holds a railway of its own. */
const mostWorkers = 4;

/** Hosts for studies, beside the one that runs the trial on show. Each starts its worker when it is first asked for something. */
export function createStudyWorkers(): ProbePool {
  const spare = (navigator.hardwareConcurrency || 2) - 1;
  return createProbePool(Array.from({ length: Math.min(Math.max(spare, 1), mostWorkers) }, startedWhenAsked));
}

function startedWhenAsked(): SimHost {
  let host: SimHost | null = null;
  const started = (): SimHost => {
    host ??= createSimWorker();
    return host;
  };
  return {
    runTrial: (...question) => started().runTrial(...question),
    tryCure: (...question) => started().tryCure(...question),
    probe: (...question) => started().probe(...question),
    glance: (...question) => started().glance(...question),
    dispose: () => host?.dispose(),
  };
}
