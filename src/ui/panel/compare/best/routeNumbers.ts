import { settingsOf } from '../../../../core/study/search/index.ts';
import { closersOf, type Knob, type KnobGroup, usualRange } from '../../../../state/study/index.ts';
import type { Scene } from '../../../../state/types.ts';
import { roundStep } from '../scales.ts';

/** A number that is chosen, by its key, and the range given for it; null: the usual one. */
export interface Choice {
  readonly at: string;
  readonly range: readonly [number, number] | null;
}

/** One to eight numbers can be chosen at once. */
export const mostNumbers = 8;

/** Steps of a range at most. */
const mostSteps = 11;

/** Railways looked at at most: all that two ranges have, so that the answer is proven; of more numbers as many as the command line looks at. */
const looks = { few: 150, many: 300 };

export const rangeOf = ({ range }: Choice, knob: Knob): readonly [number, number] => range ?? usualRange(knob);

/** A step that divides a range into at most a dozen settings: 1, 2 or 5 times a power of ten, as a builder sets it. */
export function stepOf({ whole }: Knob, from: number, to: number): number {
  const step = roundStep((to - from) / mostSteps);
  return whole ? Math.max(1, Math.round(step)) : step;
}

/** How many settings some ranges have together, and how many of them are looked at. */
export const looksOf = (
  numbers: readonly { readonly from: number; readonly to: number; readonly step: number }[],
): { readonly all: number; readonly looked: number } => ({
  all: settingsOf(numbers).reduce((count, one) => count * one, 1),
  looked: numbers.length > 2 ? looks.many : looks.few,
});

/** The next number worth turning beside some: a radius of the track on show, then what else bends it, then anything. */
export function nextNumber(groups: readonly KnobGroup[], trackId: string, taken: readonly string[]): string | null {
  const all = groups.flatMap(({ knobs }) => knobs);
  const plan = all.filter(({ at }) => at.startsWith(`tracks/${trackId}/alignment/`));
  const radii = plan.filter(({ at }) => at.endsWith('/radiusMm'));
  return [...radii, ...plan, ...all].find(({ at }) => !taken.includes(at))?.at ?? null;
}

/** What can be worked out so that a track ends where it ends now: what closes it best, else why nothing is proposed. */
export function proposedClosers(
  scene: Scene,
  trackId: string,
  chosen: readonly string[],
): { readonly solved: readonly string[]; readonly why: string | null } {
  try {
    return { solved: closersOf(scene, trackId, chosen), why: null };
  } catch (error) {
    if (error instanceof RangeError) return { solved: [], why: error.message };
    throw error;
  }
}

/** Numbers of the plan of a track that are free to be worked out. */
export const freeNumbers = (groups: readonly KnobGroup[], trackId: string, chosen: readonly string[]): Knob[] =>
  groups.flatMap(({ knobs }) =>
    knobs.filter(
      ({ at }) => at.startsWith(`tracks/${trackId}/alignment/`) && !at.endsWith('cantMm') && !chosen.includes(at),
    ),
  );
