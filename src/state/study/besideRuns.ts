import { isAbort, wordsOf } from '../aborting.ts';
import { prepare } from '../trialRuns.ts';
import type { StudyBench } from './bench.ts';
import { sceneOf } from './variantEdits.ts';

export interface BesideRuns {
  /** Solves the trial on show in a variant too, and shows both. */
  show(variantId: string): Promise<void>;
  hide(): void;
  /** After a change of the scene or of the trial on show: the same variant again, or none where it is gone. */
  renew(): void;
}

/** The second railway on the stage and on the band. It is no study: it stays while others run. */
export function createBesideRuns({ session, study, pool }: Pick<StudyBench, 'session' | 'study' | 'pool'>): BesideRuns {
  const store = session.session;
  let running: AbortController | null = null;

  const hide = () => {
    running?.abort();
    running = null;
    study.setState({ beside: null });
    store.setState(({ besideLook }) => ({ beside: null, besideLook: { ...besideLook, flipped: false } }));
  };

  async function show(variantId: string): Promise<void> {
    running?.abort();
    const mine = new AbortController();
    running = mine;
    const { scene, trial } = store.getState();
    const variant = scene?.variants?.find(({ id }) => id === variantId);
    if (!scene || !trial || !variant) return hide();
    study.setState({ beside: { id: variantId, progress: 0 }, problem: null });
    try {
      const prepared = prepare(sceneOf(scene, variantId), trial.id);
      const result = await pool.runTrial(prepared.compiled.scene, trial.id, {
        signal: mine.signal,
        onProgress: (progress) => {
          if (running === mine) study.setState({ beside: { id: variantId, progress } });
        },
      });
      if (running !== mine) return;
      study.setState({ beside: { id: variantId, progress: null } });
      store.setState({ beside: { variantId, name: variant.name, ...prepared, result } });
    } catch (error) {
      if (running !== mine || isAbort(error)) return;
      hide();
      study.setState({ problem: `“${variant.name}” cannot be shown: ${wordsOf(error)}` });
    }
  }

  return {
    show,
    hide,
    renew() {
      const { beside } = study.getState();
      if (beside === null) return;
      if (store.getState().scene?.variants?.some(({ id }) => id === beside.id)) void show(beside.id);
      else hide();
    },
  };
}
