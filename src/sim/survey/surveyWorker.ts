import { cancelled } from '../cancelled.ts';
import { answerSurvey, type SurveyHost, type SurveyQuestion } from './surveyHost.ts';
import type { SurveyAnswer } from './types.ts';

export type SurveyRequest = SurveyQuestion & { readonly id: number };

export type SurveyReply =
  | { readonly id: number; readonly answer: SurveyAnswer }
  | { readonly id: number; readonly failed: string };

/** A worker that answers surveys, as its client sees it. */
export interface SurveyWorker {
  postMessage(request: SurveyRequest): void;
  onmessage: ((event: MessageEvent<SurveyReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** The worker's own side of the channel. */
export interface SurveyWorkerScope {
  postMessage(reply: SurveyReply): void;
  onmessage: ((event: MessageEvent<SurveyRequest>) => void) | null;
}

/** Answers the questions that come in, in order, until the thread ends. */
export function serveSurveys(scope: SurveyWorkerScope): void {
  scope.onmessage = ({ data: { id, ...question } }) => {
    answerSurvey(question).then(
      (answer) => scope.postMessage({ id, answer }),
      (error: unknown) => scope.postMessage({ id, failed: error instanceof Error ? error.message : String(error) }),
    );
  };
}

interface Waiting {
  readonly resolve: (answer: SurveyAnswer) => void;
  readonly reject: (error: Error) => void;
}

/**
 * A host whose surveys are worked out behind a worker, started when first asked. The solver inside takes no word while it works, so
 * calling off a question ends the worker with all that it was asked; the next question starts another.
 */
export function createSurveyWorkerHost(start: () => SurveyWorker): SurveyHost {
  let worker: SurveyWorker | null = null;
  let nextId = 1;
  const waiting = new Map<number, Waiting>();

  function end(error: Error): void {
    worker?.terminate();
    worker = null;
    const all = [...waiting.values()];
    waiting.clear();
    for (const { reject } of all) reject(error);
  }

  function started(): SurveyWorker {
    if (worker !== null) return worker;
    worker = start();
    worker.onmessage = ({ data }) => {
      const one = waiting.get(data.id);
      waiting.delete(data.id);
      if ('answer' in data) one?.resolve(data.answer);
      else one?.reject(new Error(data.failed));
    };
    worker.onerror = (event) => end(new Error(event.message || 'The worker for surveys could not start.'));
    return worker;
  }

  return {
    work(question, signal) {
      return new Promise((resolve, reject) => {
        if (signal?.aborted) return reject(cancelled());
        const id = nextId++;
        waiting.set(id, { resolve, reject });
        signal?.addEventListener('abort', () => waiting.has(id) && end(cancelled()), { once: true });
        started().postMessage({ id, ...question });
      });
    },
    dispose: () => end(cancelled()),
  };
}
