import type { SupportDeparture, Track } from '../../core/track/types.ts';

/** A track as the stage draws it. */
export interface DrawnTrack {
  readonly id: string;
  readonly track: Track;
  /** In order; departures built minus planned, m. */
  readonly supports: readonly SupportDeparture[];
}

export const drawnTrack = (id: string, track: Track): DrawnTrack => ({
  id,
  track,
  supports: track.spec.profile.strip?.supports ?? [],
});
