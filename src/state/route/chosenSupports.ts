import { placedSupports, type SceneTrack, type SupportSpan } from '../routeEdits/index.ts';
import type { ChosenSupports } from './types.ts';

/** The chosen supports in order; null when none of this track are, or they are no longer there. */
export function chosenSpan(chosen: ChosenSupports | null, track: SceneTrack): SupportSpan | null {
  if (chosen === null || chosen.trackId !== track.id) return null;
  const from = Math.min(chosen.anchor, chosen.head);
  const to = Math.max(chosen.anchor, chosen.head);
  return to < placedSupports(track).length ? { from, to } : null;
}

/** The choice once it goes up to the support `head`: from where it began, from `start` where nothing was chosen yet. */
export function upTo(chosen: ChosenSupports | null, track: SceneTrack, start: number, head: number): ChosenSupports {
  const anchor = chosen !== null && chosenSpan(chosen, track) !== null ? chosen.anchor : start;
  return { trackId: track.id, anchor, head };
}

/** Supports of a span by their numbers, which count from 1. */
export const spanWords = ({ from, to }: SupportSpan): string =>
  from === to ? `support ${from + 1}` : `supports ${from + 1} to ${to + 1}`;
