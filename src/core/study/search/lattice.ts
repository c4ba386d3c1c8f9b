import type { LatticePlace } from './types.ts';

/** A number to be chosen: from one end to the other in steps that a builder can set. */
export interface Choice {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

/** The last step may fall short of the end by this share of a step: rounding of the range. */
const lastStep = 1e-9;

/** How many settings each number has. Throws RangeError for a range or a step that says nothing. */
export function settingsOf(choices: readonly Choice[]): number[] {
  return choices.map(({ from, to, step }) => {
    if (!(Number.isFinite(from) && Number.isFinite(to) && from < to)) {
      throw new RangeError(`A number to be chosen needs a range from low to high, not ${from} to ${to}.`);
    }
    if (!(step > 0 && step <= to - from)) {
      throw new RangeError(`A step is above 0 and no longer than the range of ${to - from}, not ${step}.`);
    }
    return Math.floor((to - from) / step + lastStep) + 1;
  });
}

/** The numbers at a place of the lattice, free of the dust of binary sums. */
export const numbersAt = (choices: readonly Choice[], at: LatticePlace): number[] =>
  at.map((steps, k) => {
    const { from, step } = choices[k];
    return Math.round((from + steps * step) * 1e9) / 1e9;
  });

/** Every place of the lattice, the last number running fastest. */
export const allPlaces = (settings: readonly number[]): LatticePlace[] =>
  settings.reduce<LatticePlace[]>(
    (places, count) => places.flatMap((place) => Array.from({ length: count }, (_, k) => [...place, k])),
    [[]],
  );
