import type { Pass } from '../../../state/routeEdits/index.ts';

/** A stretch along which something lies over (or under) the track without a gap. */
export interface PassRun {
  readonly side: 'above' | 'below';
  /** Chainage and height of what is there, m. */
  readonly points: readonly (readonly [chainage: number, height: number])[];
  /** The least clear height of the stretch and where it is, m. */
  readonly least: { readonly chainage: number; readonly clear: number };
}

/** Passes further apart than this many times their usual distance are two stretches. */
const gap = 2.5;

/** The stretches of passes on one side, in order. */
export function passRuns(passes: readonly Pass[], side: PassRun['side']): PassRun[] {
  const there = passes.filter((pass) => pass[side] !== null);
  const spacing = passes.slice(1).reduce((least, pass, k) => {
    const step = pass.chainage - passes[k].chainage;
    return step > 0 ? Math.min(least, step) : least;
  }, Number.POSITIVE_INFINITY);
  const runs: Pass[][] = [];
  for (const pass of there) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last && pass.chainage - last.chainage <= gap * spacing) run.push(pass);
    else runs.push([pass]);
  }
  return runs.map((run) => ({
    side,
    points: run.map((pass) => [pass.chainage, pass[side] ?? Number.NaN] as const),
    least: run.reduce((best, { chainage, clear }) => (clear < best.clear ? { chainage, clear } : best), {
      chainage: run[0].chainage,
      clear: run[0].clear,
    }),
  }));
}

/** The pass with the least clear height; null when nothing passes. */
export const leastClear = (passes: readonly Pass[]): Pass | null =>
  passes.reduce<Pass | null>((least, pass) => (least === null || pass.clear < least.clear ? pass : least), null);
