import type { Scene } from '../../scene/index.ts';
import { cancelled } from '../cancelled.ts';
import { compileScene } from '../compileScene.ts';
import { loadSolver } from '../survey/solver.ts';
import { type BestProfile, bestProfile } from './bestProfile.ts';
import {
  createInProcessRouteHost,
  createRouteWorkerHost,
  type RouteHost,
  type RouteWorker,
} from './route/routeHost.ts';
import { curveWorth } from './routeMeasure.ts';
import { presentRuling, profileTaskOf } from './sceneProfile.ts';

/** A track whose heights are to be the best there are; SI. */
export interface ProfileQuestion {
  readonly scene: Scene;
  readonly trackId: string;
  readonly verticalRadius: number;
  /** Steepest grade at any place, a ratio. */
  readonly steepest: number;
}

export interface ProfileAnswer {
  /** Ruling grade as it is, a ratio. */
  readonly present: number;
  readonly found: BestProfile;
}

/** Looks for best profiles and routes somewhere: in this thread, or in a worker behind the same face. */
export interface BestHost extends RouteHost {
  /** Rejects with an AbortError when called off, with a RangeError in words for a track that cannot be asked about. */
  profile(question: ProfileQuestion, signal?: AbortSignal): Promise<ProfileAnswer>;
  dispose(): void;
}

/** Vertical curves begin and end at steps of this, m. */
const nodes = 0.05;

/** What a builder sets places and heights to, m. */
const setting = { place: 1e-3, height: 1e-4 };

/** The profile of a track with the least ruling grade, its ends with their heights and grades as they are. Throws RangeError. */
export async function answerProfile(question: ProfileQuestion): Promise<ProfileAnswer> {
  const { scene, trackId, verticalRadius, steepest } = question;
  const task = profileTaskOf(compileScene(scene), trackId, {
    held: [],
    verticalRadius,
    steepest,
    towards: 'both',
    window: 0,
    curveLength: curveWorth,
    every: nodes,
    headroom: null,
    deckHalfWidth: 0,
  });
  return { present: presentRuling(task), found: bestProfile(await loadSolver(), task, setting) };
}

/** A host that works in this thread; calling off is felt between two questions only. */
export const createInProcessBestHost = (): BestHost => ({
  ...createInProcessRouteHost(),
  async profile(question, signal) {
    signal?.throwIfAborted();
    const answer = await answerProfile(question);
    signal?.throwIfAborted();
    return answer;
  },
  dispose: () => {},
});

export type BestReply = { readonly answer: ProfileAnswer } | { readonly failed: string; readonly name: string };

/** A worker that looks for profiles, as its client sees it. */
export interface BestWorker {
  postMessage(question: ProfileQuestion): void;
  onmessage: ((event: MessageEvent<BestReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** The worker's own side of the channel: answers the one question it is asked. */
export function serveBest(scope: {
  postMessage(reply: BestReply): void;
  onmessage: ((event: MessageEvent<ProfileQuestion>) => void) | null;
}): void {
  scope.onmessage = ({ data }) => {
    answerProfile(data).then(
      (answer) => scope.postMessage({ answer }),
      (error: unknown) => {
        const { message, name } = error instanceof Error ? error : new Error(String(error));
        scope.postMessage({ failed: message, name });
      },
    );
  };
}

/**
 * A host with a worker for each question: the solver takes no word while it works, so that calling off is ending its worker.
 */
export function createBestWorkerHost(start: () => BestWorker, startRoute: () => RouteWorker): BestHost {
  const running = new Set<() => void>();
  const routes = createRouteWorkerHost(startRoute);
  return {
    ...routes,
    profile: (question, signal) =>
      new Promise((resolve, reject) => {
        if (signal?.aborted) return reject(cancelled());
        const worker = start();
        const end = () => {
          running.delete(callOff);
          signal?.removeEventListener('abort', callOff);
          worker.terminate();
        };
        const callOff = () => {
          end();
          reject(cancelled());
        };
        running.add(callOff);
        signal?.addEventListener('abort', callOff, { once: true });
        worker.onmessage = ({ data }) => {
          end();
          if ('answer' in data) resolve(data.answer);
          else reject(data.name === 'RangeError' ? new RangeError(data.failed) : new Error(data.failed));
        };
        worker.onerror = (event) => {
          end();
          reject(new Error(event.message || 'The worker that looks for profiles could not start.'));
        };
        worker.postMessage(question);
      }),
    dispose() {
      routes.dispose();
      for (const callOff of [...running]) callOff();
    },
  };
}
