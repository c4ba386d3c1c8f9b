import { useEffect } from 'react';
import { chosenTrack } from '../../../state/route/index.ts';
import { useDesk, useRoute, useSession } from '../../context.tsx';

/** What of the route the person is at: on the sheet, the stage and the band alike. */
export interface RouteChoice {
  readonly track: string | null;
  readonly element: number | null;
  readonly point: number | null;
  readonly chooseTrack: (track: string) => void;
  readonly chooseElement: (element: number | null) => void;
  readonly choosePoint: (point: number | null) => void;
}

/** The number at the end of a handle's key: of its element (`radius:3`) or of its grade point (`point:2`). */
function numberOf(key: string | null, isPoint: boolean): number | null {
  const found = /^([a-z]+):(\d+)$/.exec(key ?? '');
  return found && (found[1] === 'point') === isPoint ? Number(found[2]) : null;
}

export function useRouteChoice(): RouteChoice {
  const { route } = useDesk();
  const track = useSession((state) => chosenTrack(route.route.getState(), state));
  // Asked for only to be drawn anew with it.
  useRoute((state) => state.chosenTrack);
  const key = useRoute((state) => state.chosenHandle);
  const element = numberOf(key, false);
  const point = numberOf(key, true);
  // What was chosen elsewhere comes into view.
  useEffect(() => {
    const row = element === null ? point !== null && `[data-point="${point}"]` : `[data-element="${element}"]`;
    if (row) document.querySelector(`.edit-sheet ${row}`)?.scrollIntoView({ block: 'nearest' });
  }, [element, point]);
  return {
    track,
    element,
    point,
    chooseTrack: route.actions.chooseTrack,
    chooseElement: (index) => route.actions.chooseHandle(index === null ? null : `end:${index}`),
    choosePoint: (index) => route.actions.chooseHandle(index === null ? null : `point:${index}`),
  };
}
