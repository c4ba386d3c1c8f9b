import type { Scene } from '../schema/schema.ts';
import type { SceneTourStop } from '../schema/tourSchema.ts';
import { newId } from './ids.ts';

/** What may be said anew of a stop of the tour; what is undefined goes. */
export type TourStopChange = { readonly [K in keyof Omit<SceneTourStop, 'id'>]?: SceneTourStop[K] | undefined };

/** A stop that has no short name yet. */
export type NewTourStop = Omit<SceneTourStop, 'id'>;

function indexOf({ tour = [] }: Scene, stopId: string): number {
  const index = tour.findIndex(({ id }) => id === stopId);
  if (index < 0) throw new RangeError(`The tour has no stop "${stopId}".`);
  return index;
}

/** The scene with these stops for a tour; without a tour when there are none. */
export function putTour({ tour: _old, ...rest }: Scene, stops: readonly SceneTourStop[]): Scene {
  const { opensWith, ...before } = rest;
  return {
    ...before,
    ...(stops.length > 0 && { tour: [...stops] }),
    ...(opensWith !== undefined && { opensWith }),
  };
}

/** Stops with short names made of their titles, no two alike. */
export function namedStops(stops: readonly NewTourStop[]): SceneTourStop[] {
  const named: SceneTourStop[] = [];
  for (const stop of stops) named.push({ id: newId(named, stop.title, 'stop'), ...stop });
  return named;
}

/** The scene with one more stop behind another of its tour; at the end when no other is named. */
export function addTourStop(scene: Scene, stop: NewTourStop, afterId?: string): Scene {
  const { tour = [] } = scene;
  const after = afterId === undefined ? tour.length : indexOf(scene, afterId) + 1;
  return putTour(scene, tour.toSpliced(after, 0, { id: newId(tour, stop.title, 'stop'), ...stop }));
}

/** The scene with a stop said anew; its short name stays. A stretch to play that would end before it begins goes. */
export function changeTourStop(scene: Scene, stopId: string, change: TourStopChange): Scene {
  const { tour = [] } = scene;
  const index = indexOf(scene, stopId);
  const said = Object.entries({ ...tour[index], ...change }).filter(([, value]) => value !== undefined);
  const { tillS, ...stop } = Object.fromEntries(said) as SceneTourStop;
  const plays = tillS !== undefined && tillS > (stop.atS ?? 0);
  return putTour(scene, tour.with(index, { ...stop, ...(plays && { tillS }) }));
}

/** The scene with a stop so many places further on, or back; not beyond either end. */
export function moveTourStop(scene: Scene, stopId: string, by: number): Scene {
  const { tour = [] } = scene;
  const index = indexOf(scene, stopId);
  const to = Math.min(tour.length - 1, Math.max(0, index + by));
  return to === index ? scene : putTour(scene, tour.toSpliced(index, 1).toSpliced(to, 0, tour[index]));
}

/** The scene without a stop of its tour. */
export function removeTourStop(scene: Scene, stopId: string): Scene {
  return putTour(scene, (scene.tour ?? []).toSpliced(indexOf(scene, stopId), 1));
}

/** The scene without the stops that show a trial it has not. */
export function withoutLostStops(scene: Scene): Scene {
  const { tour, trials } = scene;
  const kept = tour?.filter(({ trial }) => trial === undefined || trials.some(({ id }) => id === trial));
  return kept === undefined || kept.length === tour?.length ? scene : putTour(scene, kept);
}
