import { cancelled } from '../../cancelled.ts';
import { loadSolver, type Solver } from '../../survey/solver.ts';
import type { ProbeBy } from '../sweep.ts';
import type { Probe, ProbeRequest } from '../types.ts';
import { groundOf, layRoute } from './layRoute.ts';
import { searchRoute } from './searchRoute.ts';
import type { RouteAnswer, RouteFound, RouteHooks, RouteQuestion } from './types.ts';

/** How a search is followed, and stopped: it then gives what it found until then. */
export interface RouteFollowing extends Pick<RouteHooks, 'onProgress' | 'onFound' | 'width'> {
  readonly signal?: AbortSignal;
}

/** Searches routes somewhere: in this thread, or in a worker behind the same face. `probe` runs trials, on this side. */
export interface RouteHost {
  /** Rejects with a RangeError in words for a question that says nothing. */
  route(question: RouteQuestion, probe: ProbeBy, following?: RouteFollowing): Promise<RouteAnswer>;
  /** One place of a question as a builder sets it, heights found and rounded. Rejects with a RangeError where it cannot be laid. */
  lay(question: RouteQuestion, values: readonly number[]): Promise<RouteFound>;
}

const solverFor = async ({ heights }: RouteQuestion): Promise<Solver | null> =>
  heights === null ? null : loadSolver();

/** A host that works in this thread: every plan with heights to be found holds it up for as long as the solver takes. */
export const createInProcessRouteHost = (): RouteHost => ({
  async route(question, probe, { signal, ...hooks } = {}) {
    const stopped = () => signal?.aborted ?? false;
    return searchRoute(question, { probe, solver: await solverFor(question) }, { ...hooks, stopped });
  },
  async lay(question, values) {
    const laid = layRoute(groundOf(question, await solverFor(question)), values, true);
    if (!laid.ok) throw new RangeError(laid.reason);
    return laid.route;
  },
});

/** What the worker is told: one question; then answers to its probes, and to stop. */
export type RouteTold =
  | { readonly kind: 'search'; readonly question: RouteQuestion; readonly width: number }
  | { readonly kind: 'lay'; readonly question: RouteQuestion; readonly values: readonly number[] }
  | { readonly kind: 'probed'; readonly id: number; readonly probe: Probe }
  | { readonly kind: 'probe-failed'; readonly id: number; readonly message: string }
  | { readonly kind: 'stop' };

/** What it says: trials to be run, how far it is, and at the end one answer. */
export type RouteSaid =
  | { readonly kind: 'probe'; readonly id: number; readonly request: ProbeRequest }
  | { readonly kind: 'progress'; readonly done: number; readonly known: number }
  | { readonly kind: 'found'; readonly routes: readonly RouteFound[] }
  | { readonly kind: 'answer'; readonly answer: RouteAnswer }
  | { readonly kind: 'laid'; readonly route: RouteFound }
  | { readonly kind: 'failed'; readonly failed: string; readonly name: string };

/** The worker's own side: searches, and has the other side run the trials. Gives what to do with what is told further. */
export function serveRoute(say: (said: RouteSaid) => void): (told: RouteTold) => void {
  const host = createInProcessRouteHost();
  const stop = new AbortController();
  const waiting = new Map<number, { resolve: (probe: Probe) => void; reject: (why: Error) => void }>();
  let asked = 0;
  const probe: ProbeBy = (request) =>
    new Promise((resolve, reject) => {
      const id = asked++;
      waiting.set(id, { resolve, reject });
      say({ kind: 'probe', id, request });
    });
  const failed = (error: unknown): void => {
    const { message, name } = error instanceof Error ? error : new Error(String(error));
    say({ kind: 'failed', failed: message, name });
  };
  return (told) => {
    if (told.kind === 'search') {
      const following: RouteFollowing = {
        width: told.width,
        signal: stop.signal,
        onProgress: (done, known) => say({ kind: 'progress', done, known }),
        onFound: (routes) => say({ kind: 'found', routes }),
      };
      host.route(told.question, probe, following).then((answer) => say({ kind: 'answer', answer }), failed);
    } else if (told.kind === 'lay') {
      host.lay(told.question, told.values).then((route) => say({ kind: 'laid', route }), failed);
    } else if (told.kind === 'stop') stop.abort();
    else {
      const one = waiting.get(told.id);
      waiting.delete(told.id);
      if (told.kind === 'probed') one?.resolve(told.probe);
      else one?.reject(new Error(told.message));
    }
  };
}

/** A worker that searches routes, as its client sees it. */
export interface RouteWorker {
  postMessage(told: RouteTold): void;
  onmessage: ((event: MessageEvent<RouteSaid>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** A host with a worker for each question; `dispose` ends those that work. */
export function createRouteWorkerHost(start: () => RouteWorker): RouteHost & { dispose(): void } {
  const running = new Set<() => void>();

  function ask<A>(
    first: RouteTold,
    answerOf: (said: RouteSaid) => A | undefined,
    also: (said: RouteSaid, worker: RouteWorker) => void,
    signal?: AbortSignal,
  ): Promise<A> {
    return new Promise((resolve, reject) => {
      const worker = start();
      const stop = () => worker.postMessage({ kind: 'stop' });
      const end = () => {
        running.delete(callOff);
        signal?.removeEventListener('abort', stop);
        worker.terminate();
      };
      const callOff = () => {
        end();
        reject(cancelled());
      };
      running.add(callOff);
      signal?.addEventListener('abort', stop, { once: true });
      worker.onmessage = ({ data }) => {
        const answer = answerOf(data);
        if (answer !== undefined) {
          end();
          resolve(answer);
        } else if (data.kind === 'failed') {
          end();
          reject(data.name === 'RangeError' ? new RangeError(data.failed) : new Error(data.failed));
        } else also(data, worker);
      };
      worker.onerror = (event) => {
        end();
        reject(new Error(event.message || 'The worker that looks for routes could not start.'));
      };
      worker.postMessage(first);
      if (signal?.aborted) stop();
    });
  }

  return {
    route: (question, probe, { signal, width = 1, onProgress, onFound } = {}) =>
      ask(
        { kind: 'search', question, width },
        (said) => (said.kind === 'answer' ? said.answer : undefined),
        (said, worker) => {
          if (said.kind === 'progress') onProgress?.(said.done, said.known);
          else if (said.kind === 'found') onFound?.(said.routes);
          else if (said.kind === 'probe') {
            const { id } = said;
            probe(said.request).then(
              (one) => worker.postMessage({ kind: 'probed', id, probe: one }),
              (error: unknown) =>
                worker.postMessage({
                  kind: 'probe-failed',
                  id,
                  message: error instanceof Error ? error.message : String(error),
                }),
            );
          }
        },
        signal,
      ),
    lay: (question, values) =>
      ask(
        { kind: 'lay', question, values },
        (said) => (said.kind === 'laid' ? said.route : undefined),
        () => {},
      ),
    dispose() {
      for (const callOff of [...running]) callOff();
    },
  };
}
