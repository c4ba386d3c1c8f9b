import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import type { RouteState } from '../../../state/route/index.ts';
import { draftPasses, draftTrack } from '../../../state/routeEdits/index.ts';
import type { SessionState } from '../../../state/types.ts';
import type { SectionEdit } from './bandFrame.ts';

/** The track of the trial as the railway now is, while its route is being made; null where the section is to be read only. */
export function useSectionEdit(session: StoreApi<SessionState>, route: StoreApi<RouteState>): SectionEdit | null {
  // On the Route chapter the section shows the railway as it now is, solved or not: it is under the hand.
  const draft = useStore(session, (state) => (state.chapter === 'route' ? state.scene : null));
  // A route is edited track by track, so its section is to be read only.
  const trackId = useStore(session, ({ trial }) => (trial?.legs === undefined ? (trial?.trackId ?? '') : ''));
  const chosen = useStore(route, (state) => state.chosenSupports);
  const takesSeveral = useStore(route, (state) => state.takesSeveral);
  const drawn = useMemo(() => {
    const file = draft?.tracks.find(({ id }) => id === trackId);
    const track = draft && file ? draftTrack(draft, trackId) : null;
    return draft && file && track ? { file, track, passes: draftPasses(draft, trackId) } : null;
  }, [draft, trackId]);
  return useMemo(() => drawn && { ...drawn, chosen, takesSeveral }, [drawn, chosen, takesSeveral]);
}
