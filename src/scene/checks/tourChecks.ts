import type { Scene } from '../schema/schema.ts';
import type { Problem } from './problems.ts';
import { repeatedIds, unknownId } from './references.ts';

/** What is wrong with a scene's tour: stops that share a name, trials that are not there, a stretch that ends before it begins. */
export function tourProblems({ tour = [], trials }: Scene): Problem[] {
  const ids = trials.map(({ id }) => id);
  return [
    ...repeatedIds('tour', tour),
    ...tour.flatMap(({ trial, atS = 0, tillS }, index): Problem[] => [
      ...(trial === undefined || ids.includes(trial) ? [] : [unknownId(`tour[${index}].trial`, trial, ids)]),
      ...(tillS === undefined || tillS > atS
        ? []
        : [
            {
              path: `tour[${index}].tillS`,
              found: `${tillS} s`,
              allowed: `a moment after ${atS} s, when the stop begins`,
              example: String(atS + 2),
            },
          ]),
    ]),
  ];
}
