import type { StoreApi } from 'zustand/vanilla';
import type { Scene } from '../scene/index.ts';
import { compileScene, compileTrial } from '../sim/index.ts';
import type { CompiledScene, CompiledTrial, SimHost, TrialResult } from '../sim/types.ts';
import { isAbort, wordsOf } from './aborting.ts';
import { createResultShelf } from './resultShelf.ts';
import type { SessionState } from './types.ts';

/** A trial ready to run: the scene's compiled form and the trial's. */
export interface Prepared {
  readonly compiled: CompiledScene;
  readonly trial: CompiledTrial;
}

/** Compiles one trial of a scene; throws with words for the person when it cannot be. */
export function prepare(scene: Scene, trialId: string): Prepared {
  const compiled = compileScene(scene);
  return { compiled, trial: compileTrial(compiled, trialId) };
}

export interface TrialRuns {
  /** Solves a prepared trial, or takes it from the shelf, then shows it. Whatever ran before is cancelled. */
  solve(prepared: Prepared): Promise<void>;
  /** Shows a trial that is solved already. */
  show(prepared: Prepared, result: TrialResult): void;
  cancel(): void;
}

/** Runs one trial at a time and puts it on show when it is solved; until then the last one stays. */
export function createTrialRuns(
  session: StoreApi<SessionState>,
  host: SimHost,
  onShown: (result: TrialResult) => void,
): TrialRuns {
  const shelf = createResultShelf();
  let running: AbortController | null = null;

  const cancel = () => {
    running?.abort();
    running = null;
    if (session.getState().progress !== null) session.setState({ progress: null });
  };

  const show = ({ compiled, trial }: Prepared, result: TrialResult) => {
    cancel();
    shelf.keep(compiled.scene, result);
    session.setState({
      compiled,
      trial,
      result,
      chosenFinding: null,
      chosenJoint: null,
      cures: new Map(),
      ghost: null,
    });
    onShown(result);
  };

  return {
    show,
    cancel,
    async solve(prepared) {
      cancel();
      const { scene } = prepared.compiled;
      const trialId = prepared.trial.id;
      const known = shelf.find(scene, trialId);
      if (known) {
        show(prepared, known);
        return;
      }
      const mine = new AbortController();
      running = mine;
      session.setState({ progress: 0 });
      const onProgress = (progress: number) => {
        if (running === mine) session.setState({ progress });
      };
      try {
        const result = await host.runTrial(scene, trialId, { signal: mine.signal, onProgress });
        if (running === mine) show(prepared, result);
      } catch (error) {
        if (running !== mine) return;
        running = null;
        session.setState({ progress: null });
        if (isAbort(error)) return;
        const name = prepared.trial.name;
        session.setState({ problem: { title: `“${name}” could not be run`, lines: [wordsOf(error)] } });
      }
    },
  };
}
