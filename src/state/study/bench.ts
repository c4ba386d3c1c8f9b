import type { StoreApi } from 'zustand/vanilla';
import type { Scene } from '../../scene/index.ts';
import { affectedTrials, type Probe, type ProbePool } from '../../sim/study/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import type { Session } from '../session.ts';
import { turned, turnedAt } from './knobs.ts';
import type { StudyState, StudyTerms } from './types.ts';
import { sceneOf } from './variantEdits.ts';

/** What every study of a session works with. One study runs at a time: a new one stops what ran before. */
export interface StudyBench {
  readonly session: Session;
  readonly study: StoreApi<StudyState>;
  readonly pool: ProbePool;
  /** Begins something new; whatever ran before is stopped. */
  begin(): AbortSignal;
  /** Stops what runs. */
  stop(): void;
  /** Works something out; an abort ends it quietly, anything else is told. */
  told(work: () => Promise<void>): Promise<void>;
  /** The railway that a study starts from, without variants; null while no scene is open. */
  base(): Scene | null;
  /** What is run where these knobs are turned: the trial on show, if they matter to it; else those that they matter to. */
  terms(keys: readonly string[]): StudyTerms;
  /** The trials of a study with these knobs set; a railway that cannot be laid is an answer. */
  probe(terms: StudyTerms, base: Scene, settings: Parameters<typeof turned>[1], signal: AbortSignal): Promise<Probe>;
}

export function createBench(session: Session, study: StoreApi<StudyState>, pool: ProbePool): StudyBench {
  let running: AbortController | null = null;
  const stop = () => {
    running?.abort();
    running = null;
  };
  const base = (): Scene | null => {
    const { scene } = session.session.getState();
    return scene === null ? null : sceneOf(scene, study.getState().base);
  };
  return {
    session,
    study,
    pool,
    stop,
    base,
    begin() {
      stop();
      running = new AbortController();
      study.setState({ problem: null });
      return running.signal;
    },
    async told(work) {
      try {
        await work();
      } catch (error) {
        if (!isAbort(error)) study.setState({ problem: wordsOf(error) });
      }
    },
    terms(keys) {
      const { gauge, limits, exactness, base: from } = study.getState();
      const trialId = session.session.getState().trialId ?? '';
      const scene = base();
      const affected =
        scene === null
          ? []
          : [...new Set(keys.flatMap((key) => turnedAt(scene, key).flatMap((at) => affectedTrials(scene, at))))];
      const trialIds = affected.includes(trialId) || affected.length === 0 ? [trialId] : affected;
      return { base: from, gauge, limits, exactness, trialIds };
    },
    async probe({ trialIds, exactness }, scene, settings, signal) {
      let made: Scene;
      try {
        made = turned(scene, settings);
      } catch (error) {
        if (error instanceof RangeError) return { ok: false, reason: error.message };
        throw error;
      }
      return pool.probe({ scene: made, settings: [], trialIds, exactness }, { signal });
    },
  };
}
