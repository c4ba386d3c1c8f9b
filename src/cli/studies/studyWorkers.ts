import { availableParallelism } from 'node:os';
import { MessageChannel, Worker } from 'node:worker_threads';
import { createInProcessHost, createWorkerHost, type SimHost, type SimWorker } from '../../sim/index.ts';
import { createProbePool, type ProbePool } from '../../sim/study/index.ts';
import { BadInput } from '../exitCodes.ts';

/** Threads when none are asked for, at most: each holds a railway of its own. */
const usualMost = 4;
const most = 64;

/** How many threads `--workers` asks for; as many as the machine has cores, up to four, when it is left out. 0 and 1 mean this thread alone. */
export function workersOf(text: string | undefined): number {
  if (text === undefined) return Math.min(availableParallelism(), usualMost);
  const count = text.trim() === '' ? Number.NaN : Number(text);
  if (Number.isInteger(count) && count >= 0 && count <= most) return count;
  throw new BadInput(`--workers is a whole number from 0 to ${most}, not "${text}".`);
}

/** Threads that run the trials of a study, each begun when it is first asked for something; none but this one for 0 or 1. It owns them: `dispose` ends them. */
export const createStudyWorkers = (count: number): ProbePool =>
  createProbePool(count < 2 ? [createInProcessHost()] : Array.from({ length: count }, threadWhenAsked));

function threadWhenAsked(): SimHost {
  let thread: { readonly host: SimHost; readonly end: () => void } | null = null;
  const started = (): SimHost => {
    thread ??= startThread();
    return thread.host;
  };
  return {
    runTrial: (...question) => started().runTrial(...question),
    tryCure: (...question) => started().tryCure(...question),
    probe: (...question) => started().probe(...question),
    glance: (...question) => started().glance(...question),
    dispose: () => thread?.end(),
  };
}

function startThread() {
  const { port1, port2 } = new MessageChannel();
  const worker = new Worker(new URL('./studyThread.mjs', import.meta.url), {
    workerData: { port: port2 },
    transferList: [port2],
  });
  const port = port1 as unknown as SimWorker;
  const host = createWorkerHost(port);
  // A thread that dies must not leave anybody waiting.
  worker.on('error', ({ message }) => port.onerror?.({ message } as ErrorEvent));
  return {
    host,
    end() {
      host.dispose();
      void worker.terminate();
    },
  };
}
