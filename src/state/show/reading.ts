import type { SceneTourStop } from '../../scene/index.ts';

/** Letters that an audience reads in a second, and what it needs to look up first, s: as captions of films are timed (common practice, no source). */
const lettersPerSecond = 15;
const lookS = 2;

/** Shortest stay at a stop, and how long a verdict stands once it is told, s. */
const shortestS = 4;
export const verdictS = 5;

/** How long the view takes to come to rest before anything plays, s. */
export const arriveS = 1.6;

/** How long a tour that goes by itself stays at a stop after what plays there, s. */
export function stayS({ title, words = '' }: Pick<SceneTourStop, 'title' | 'words'>): number {
  return Math.max(shortestS, lookS + (title.length + words.length) / lettersPerSecond);
}
