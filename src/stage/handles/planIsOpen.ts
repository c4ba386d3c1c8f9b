import type { SessionState } from '../../state/types.ts';

/** Whether the plan can be worked on as the stage is now looked at: from above, or walking round, with the Route chapter open. */
export const planIsOpen = ({ chapter, camera, lens, ghost }: SessionState): boolean =>
  chapter === 'route' && (camera === 'down' || camera === 'walk') && !lens.open && ghost === null;
