import { makeTrack } from './track.ts';
import type { Track } from './types.ts';

/** The track as its drawing has it: planned heights and cant, without what the strip, its supports or the rails as laid make of them. */
export function asPlanned(track: Track): Track {
  const { start, elements, profile, cant } = track.spec;
  return makeTrack({
    start,
    elements,
    profile: { points: profile.points, ...(profile.held && { held: profile.held }) },
    ...(cant && { cant }),
  });
}
