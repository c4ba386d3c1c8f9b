import type { SessionState } from '../../state/types.ts';

/** What of a scene decides how its railway looks: an edit that leaves this alone need not draw it anew. */
export const standingKey = ({ scene }: NonNullable<SessionState['compiled']>): string =>
  JSON.stringify([scene.scale, scene.deck, scene.room, scene.tracks, scene.structures, scene.lineside]);

/** What of a trial decides how its train looks. */
export const trainKey = (trial: NonNullable<SessionState['trial']>): string => JSON.stringify(trial.train.vehicles);
