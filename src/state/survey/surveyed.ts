import type { Surveyed } from '../types.ts';
import type { Stop } from './stops.ts';
import type { SurveyState } from './types.ts';

/** What stage and band show of the survey that is worked with; null when there is nothing to show yet. */
export function surveyedOf(
  { worked, mended, walk }: SurveyState,
  trackId: string | null,
  stops: readonly Stop[],
): Surveyed | null {
  const stop = walk === null ? undefined : stops[walk.stop];
  if (trackId === null || (worked === null && stop === undefined)) return null;
  const after = mended?.mend?.outcome === 'mended' ? mended.mend : null;
  const touched = new Set(after?.steps.map(({ support }) => support));
  const wrong = new Set(worked?.survey.explanation.supports.map(({ support }) => support));
  const supports = (worked?.survey.estimate.supports ?? []).map(({ support, chainage, departure, deviation }) => ({
    chainage,
    departure: Number.isFinite(deviation) ? departure : null,
    deviation,
    wrong: wrong.has(support),
    mended: after !== null && touched.has(support) ? after.departures[support] : null,
  }));
  const pointed = stop === undefined ? [...wrong].sort((a, b) => a - b) : [...stop.beside];
  return { trackId, supports, pointed, next: stop?.chainage ?? null };
}
