import type { StoreApi } from 'zustand/vanilla';
import type { Scene } from '../../scene/index.ts';
import type { ProbePool } from '../../sim/study/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import type { SessionState } from '../types.ts';
import type { RouteState } from './types.ts';

/**
 * Keeps the margins of the quasi-static pass up to date while the railway is newer than the trial on show. At most one pass is under way;
 * when it is done the newest railway is next, and those between are left out. Once it has a first verdict the railway of the trial on show is measured the same way, to
 * be compared with. Returns what stops it.
 */
export function keepDraftVerdicts(
  session: StoreApi<SessionState>,
  route: StoreApi<RouteState>,
  pool: Pick<ProbePool, 'probe'>,
): () => void {
  let busy = false;
  let measured: Scene | null = null;
  let trialMeasured: string | null = null;
  let base: Scene | null = null;
  let over = false;

  const solved = (): boolean => {
    const { scene, compiled, result, trialId } = session.getState();
    return scene === null || (compiled?.scene === scene && result?.trialId === trialId);
  };

  async function measureBefore(scene: Scene, trialId: string): Promise<void> {
    busy = true;
    base = scene;
    try {
      const probe = await pool.probe({ scene, settings: [], trialIds: [trialId], exactness: 'steady' });
      if (!over && !solved() && base === scene) route.setState({ before: probe.ok ? probe.trials[0] : null });
    } catch {
      // There is then nothing to compare with.
    } finally {
      busy = false;
      if (!over) look();
    }
  }

  async function pass(scene: Scene, trialId: string): Promise<void> {
    busy = true;
    measured = scene;
    trialMeasured = trialId;
    try {
      const probe = await pool.probe({ scene, settings: [], trialIds: [trialId], exactness: 'steady' });
      // An older railway's margins while the hand moves on are better than none; a solved trial's are better than these.
      if (over || solved()) return;
      const verdict = probe.ok
        ? ({ ok: true, scene, measure: probe.trials[0] } as const)
        : ({ ok: false, scene, reason: probe.reason } as const);
      route.setState({ verdict });
    } catch (error) {
      if (!over && !isAbort(error)) route.setState({ verdict: { ok: false, scene, reason: wordsOf(error) } });
    } finally {
      busy = false;
      if (!over) look();
    }
  }

  function look(): void {
    const { scene, trialId, compiled, result } = session.getState();
    if (scene === null || trialId === null || solved()) {
      const { verdict, before } = route.getState();
      if (verdict !== null || before !== null) route.setState({ verdict: null, before: null });
      measured = null;
      base = null;
      return;
    }
    if (busy) return;
    if (scene !== measured || trialId !== trialMeasured) void pass(scene, trialId);
    else if (compiled !== null && result?.trialId === trialId && base !== compiled.scene) {
      void measureBefore(compiled.scene, trialId);
    }
  }

  const unsubscribe = session.subscribe(look);
  return () => {
    over = true;
    unsubscribe();
  };
}
