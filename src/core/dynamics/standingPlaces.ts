import type { Train } from '../stock/types.ts';
import { pivotShift, type RouteTables } from './routeTables.ts';

/** Rail distances of all origins with the first at `sigma0` and every joint at its free length, or stretched from it by so much, m. */
export function standingPlaces(
  tables: RouteTables,
  train: Train,
  sigma0: number,
  stretch: readonly number[] = [],
): Float64Array {
  const places = new Float64Array(train.vehicles.length);
  places[0] = sigma0;
  for (let j = 0; j + 1 < places.length; j++) {
    const ahead = places[j]!;
    const spacing = tables.spacing[j]! + (stretch[j] ?? 0);
    let behind = ahead - spacing;
    // The correction hardly depends on where it is taken: three rounds fix it to rounding.
    for (let round = 0; round < 3; round++) {
      behind = ahead - spacing + pivotShift(tables, j, 0.5 * (ahead + behind));
    }
    places[j + 1] = behind;
  }
  return places;
}
