import type { PageTrial } from './types.ts';

/** A run to make on the railway itself. */
export interface TestToMake {
  readonly trial: PageTrial;
  /** Numbers of the places that it shows and no run before it. */
  readonly shows: readonly number[];
}

/**
 * A few runs that between them come to every numbered place, the one that shows most first: each shows what those before it do not. Chosen greedily, so
 * that there may be a shorter list; trials of the scene go before those made for the page where they show as much.
 */
export function testsToMake(trials: readonly PageTrial[]): TestToMake[] {
  const left = new Set(trials.flatMap(({ marks }) => marks));
  const chosen: TestToMake[] = [];
  while (left.size > 0) {
    let best: TestToMake | null = null;
    for (const trial of trials) {
      const shows = trial.marks.filter((mark) => left.has(mark));
      const more = shows.length - (best?.shows.length ?? 0);
      if (more > 0 || (more === 0 && best !== null && trial.own && !best.trial.own)) best = { trial, shows };
    }
    if (best === null) break;
    for (const mark of best.shows) left.delete(mark);
    chosen.push(best);
  }
  return chosen;
}
