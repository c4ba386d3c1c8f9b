import { cancelled } from './cancelled.ts';
import type { Glance, GlanceRequest } from './glance/types.ts';
import type { MessageEnd, SimReply, SimRequest } from './protocol.ts';
import type { Probe, ProbeRequest } from './study/types.ts';
import type { RunHooks, SimHost, TrialResult } from './types.ts';

/** A worker as its client sees it. */
export interface SimWorker extends MessageEnd<SimRequest, SimReply> {
  onerror?: ((event: ErrorEvent) => void) | null;
  terminate?(): void;
  close?(): void;
}

type Answer = TrialResult | Probe | Glance | null;

interface Waiting {
  readonly resolve: (answer: Answer) => void;
  readonly reject: (error: Error | DOMException) => void;
  readonly onProgress: ((done: number) => void) | undefined;
  readonly forget: () => void;
}

type Question =
  | Pick<Extract<SimRequest, { kind: 'run' }>, 'kind' | 'scene' | 'trialId'>
  | Omit<Extract<SimRequest, { kind: 'try-cure' }>, 'id'>
  | ({ readonly kind: 'probe' } & ProbeRequest)
  | ({ readonly kind: 'glance' } & GlanceRequest);

/** A host whose trials run behind a worker. It owns the worker: `dispose` ends it and calls off what is under way. */
export function createWorkerHost(worker: SimWorker): SimHost {
  const waiting = new Map<number, Waiting>();
  let nextId = 1;
  let ended: Error | DOMException | null = null;

  function settle(id: number, how: (one: Waiting) => void): void {
    const one = waiting.get(id);
    if (one === undefined) return;
    waiting.delete(id);
    one.forget();
    how(one);
  }

  function endAll(error: Error | DOMException): void {
    ended = error;
    for (const id of [...waiting.keys()]) settle(id, (one) => one.reject(error));
  }

  worker.onmessage = ({ data }) => {
    switch (data.kind) {
      case 'progress':
        waiting.get(data.id)?.onProgress?.(data.done);
        break;
      case 'done':
        settle(data.id, (one) => one.resolve(data.result));
        break;
      case 'probed':
        settle(data.id, (one) => one.resolve(data.probe));
        break;
      case 'glanced':
        settle(data.id, (one) => one.resolve(data.glance));
        break;
      case 'failed':
        settle(data.id, (one) => one.reject(errorOf(data.name, data.message)));
        break;
    }
  };
  worker.onerror = (event) => endAll(new Error(event.message || 'The worker that runs trials could not start.'));

  /** What comes back is what the protocol answers this kind of question with. */
  function ask<A extends Answer>(question: Question, hooks: RunHooks): Promise<A> {
    return new Promise((settled, reject) => {
      const resolve = settled as (answer: Answer) => void;
      if (ended !== null) return reject(ended);
      const { signal, onProgress } = hooks;
      if (signal?.aborted) return reject(cancelled());
      const id = nextId++;
      // Answered at once, so that nobody waits for a worker that is busy; its own answer then finds nobody waiting.
      const cancel = () => {
        worker.postMessage({ kind: 'cancel', id }, []);
        settle(id, (one) => one.reject(cancelled()));
      };
      signal?.addEventListener('abort', cancel, { once: true });
      waiting.set(id, { resolve, reject, onProgress, forget: () => signal?.removeEventListener('abort', cancel) });
      worker.postMessage({ ...question, id }, []);
    });
  }

  return {
    async runTrial(scene, trialId, hooks = {}) {
      const result = await ask<TrialResult | null>({ kind: 'run', scene, trialId }, hooks);
      if (result === null) throw new Error('The worker answered a run with nothing.');
      return result;
    },
    tryCure: (scene, trialId, cure, hooks = {}) => ask({ kind: 'try-cure', scene, trialId, cure }, hooks),
    probe: (request, hooks = {}) => ask({ kind: 'probe', ...request }, hooks),
    glance: (request) => ask({ kind: 'glance', ...request }, {}),
    dispose() {
      endAll(cancelled());
      worker.onmessage = null;
      worker.terminate?.();
      worker.close?.();
    },
  };
}

function errorOf(name: string, message: string): Error | DOMException {
  if (name === 'AbortError') return cancelled();
  if (name === 'RangeError') return new RangeError(message);
  return new Error(message);
}
