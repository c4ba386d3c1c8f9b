import type { StoreApi } from 'zustand/vanilla';
import type { Scene } from '../../scene/index.ts';
import type { Glance, Glimpse } from '../../sim/glance/index.ts';
import type { ProbePool } from '../../sim/study/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import type { SessionState } from '../types.ts';
import type { RouteState } from './types.ts';

/** A hand that has not moved for this long rests: time for a thorough look, ms. */
const restAfter = 250;

/** A railway with the trial that is judged in it, and what was seen of it so far. */
interface Seen {
  readonly scene: Scene;
  readonly trialId: string;
  quick: Glance | null;
  thorough: Glance | null;
}

type Look = 'quick' | 'thorough';

/**
 * Keeps the margins of the quasi-static pass up to date while the railway is newer than the trial on show. At most one pass is under way;
 * when it is done the newest railway is next, and those between are left out. The railway of the trial on show is seen the same way, to
 * be compared with: ahead of time where the route is open, so that what answers the first move of a hand is awake. While the hand rests, both are looked
 * at thoroughly. Returns what stops it.
 */
export function keepDraftVerdicts(
  session: StoreApi<SessionState>,
  route: StoreApi<RouteState>,
  pool: Pick<ProbePool, 'glance'>,
): () => void {
  let draft: Seen | null = null;
  let base: Seen | null = null;
  let rested: Scene | null = null;
  let resting: ReturnType<typeof setTimeout> | null = null;
  let busy = false;
  let over = false;

  const solved = ({ scene, compiled, result, trialId }: SessionState): boolean =>
    compiled?.scene === scene && result?.trialId === trialId;

  /** Looks at a railway once, then goes on with what is next. */
  async function glance(at: Seen, how: Look, isDraft: boolean): Promise<void> {
    busy = true;
    const { scene, trialId } = at;
    try {
      at[how] = await pool.glance({ scene, trialId, thorough: how === 'thorough' });
    } catch (error) {
      at[how] = { ok: false, reason: isAbort(error) ? '' : wordsOf(error) };
    } finally {
      busy = false;
      if (!over) {
        // Two looks of the same kind are compared with each other.
        const shown = isDraft ? at : draft;
        if (shown !== null && !solved(session.getState())) show(shown, how);
        look();
      }
    }
  }

  /** Shows what was seen of a railway being changed. An older one's margins while the hand moves on are better than none. */
  function show(at: Seen, how: Look): void {
    const told = at[how];
    if (told === null || (!told.ok && told.reason === '')) return;
    const { scene } = at;
    const verdict = told.ok
      ? { ok: true as const, scene, measure: told.measure }
      : { ok: false as const, scene, reason: told.reason };
    route.setState({ verdict, before: measureOf(base?.[how] ?? null) });
  }

  function look(): void {
    const now = session.getState();
    const { scene, trialId, compiled, result, chapter, progress } = now;
    // Beside a railway's first run nothing else is to be worked out, unless this is what is looked at.
    const needed = chapter === 'route' || compiled?.scene !== scene;
    if (resting !== null) clearTimeout(resting);
    resting = null;
    if (scene === null || trialId === null || solved(now)) {
      const { verdict, before } = route.getState();
      if (verdict !== null || before !== null) route.setState({ verdict: null, before: null });
      draft = null;
      if (scene === null || trialId === null || chapter !== 'route' || busy) return;
      if (base?.scene !== scene || base.trialId !== trialId) base = { scene, trialId, quick: null, thorough: null };
      if (base.quick === null) void glance(base, 'quick', false);
      return;
    }
    if (busy || !needed) return;
    if (draft?.scene !== scene || draft.trialId !== trialId) {
      draft = { scene, trialId, quick: null, thorough: null };
      void glance(draft, 'quick', true);
      return;
    }
    const shown = compiled !== null && result?.trialId === trialId ? compiled.scene : null;
    if (shown === null) base = null;
    else if (base?.scene !== shown || base.trialId !== trialId) {
      base = { scene: shown, trialId, quick: null, thorough: null };
    }
    if (base !== null && base.quick === null) void glance(base, 'quick', false);
    else if (progress !== null) return;
    else if (rested !== scene) {
      resting = setTimeout(() => {
        rested = scene;
        look();
      }, restAfter);
    } else if (base !== null && base.thorough === null) void glance(base, 'thorough', false);
    else if (draft.thorough === null) void glance(draft, 'thorough', true);
  }

  const unsubscribe = session.subscribe(look);
  return () => {
    over = true;
    if (resting !== null) clearTimeout(resting);
    unsubscribe();
  };
}

const measureOf = (glance: Glance | null): Glimpse | null => (glance?.ok ? glance.measure : null);
