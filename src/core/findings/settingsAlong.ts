import type { Run, RunInput } from '../dynamics/types.ts';

/** How a train is driven: what a run needs besides track and train. */
export type Driven = Pick<RunInput, 'script' | 'options'>;

/** Settings ordered from a place on, by locomotive. */
interface Stretch {
  /** Path chainage of the leading body end, m. */
  readonly from: number;
  readonly settings: readonly number[];
}

/**
 * The setting each engine is ordered to along the route, by the path chainage of the leading end. Orders by time count from where the run's train
 * was then; one whose time the run did not live to see never comes, nor do those that wait for it. How fast the
 * knob is turned is left out.
 */
export function settingsAlong({ script }: Driven, run: Run, lead: number): (chainage: number) => readonly number[] {
  const stretches: Stretch[] = [{ from: Number.NEGATIVE_INFINITY, settings: Array.from(run.locomotives, () => 0) }];
  for (const { when, setting, vehicle } of script.orders) {
    const before = stretches[stretches.length - 1];
    const place = 'chainage' in when ? when.chainage : placeAt(run, when.time, lead);
    if (place === null) break;
    const settings = before.settings.map((old, k) =>
      vehicle === undefined || run.locomotives[k] === vehicle ? setting : old,
    );
    stretches.push({ from: Math.max(before.from, place), settings });
  }
  return (chainage) => {
    let at = stretches.length - 1;
    while (at > 0 && stretches[at].from > chainage) at--;
    return stretches[at].settings;
  };
}

/** Where the leading end was at a time, m; null after the run. */
function placeAt(run: Run, time: number, lead: number): number | null {
  const frame = run.time.findIndex((one) => one >= time);
  return frame < 0 ? null : run.chainage[frame * run.vehicles] + lead;
}
