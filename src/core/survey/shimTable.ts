import { keepsLimits, type LimitSet } from './limitRows.ts';
import { lineAt } from './lineShape.ts';
import type { Adjuster, ShimStep } from './types.ts';

/** Turns are given in eighths as long as the limits then still hold: what a hand can tell at a nut. Else finer. */
const turnParts = [8, 16, 32, 64];

/** A change smaller than this is none, m: a hundredth of a millimetre, a third of a division of a usual gauge. */
const noChange = 1e-5;

/**
 * Rounds changes to what can be turned: eighths of a turn where every limit still holds with all of them rounded, else
 * sixteenths and finer, else as they are. Packing is whole already. `changes` in m, one a support; returns the same.
 */
export function workableChanges(
  changes: Float64Array,
  adjuster: Adjuster,
  set: LimitSet,
  departures: ArrayLike<number>,
): Float64Array {
  const real = changes.map((change) => (Math.abs(change) < noChange ? 0 : change));
  if (adjuster.kind === 'packing') return real;
  for (const parts of turnParts) {
    const step = adjuster.pitch / parts;
    const rounded = real.map((change) => Math.round(change / step) * step);
    const same = rounded.every((change, i) => (change === 0) === (real[i] === 0));
    const after = rounded.map((change, i) => change + departures[i]);
    if (same && keepsLimits(set, after)) return rounded;
  }
  return real;
}

/**
 * The shim table in the order of work: from the lowest rail up, so that a support once set is never again under work that goes on
 * above it being undone, and each can be checked against those below that are already right.
 */
export function shimTable(
  changes: ArrayLike<number>,
  adjuster: Adjuster,
  { shape }: LimitSet,
  departures: ArrayLike<number>,
): ShimStep[] {
  const steps = shape.supports.flatMap((chainage, support): ShimStep[] => {
    const change = changes[support];
    if (change === 0) return [];
    const before = lineAt(shape, chainage, 0).planned + departures[support];
    const turns = adjuster.kind === 'nut' ? change / adjuster.pitch : null;
    return [{ support, before, after: before + change, change, turns, pieces: piecesFor(change, adjuster) }];
  });
  return steps.sort((a, b) => a.after - b.after || a.support - b.support);
}

/** The pieces that make up a height, as few as can be: a sum of thicknesses within a hundredth of a millimetre. */
function piecesFor(change: number, adjuster: Adjuster): ShimStep['pieces'] {
  if (adjuster.kind === 'nut') return [];
  const thicknesses = [...new Set(adjuster.thicknesses)].sort((a, b) => b - a);
  let best: number[] | null = null;
  const search = (from: number, left: number, counts: number[], used: number): void => {
    if (Math.abs(left) < noChange) {
      if (best === null || used < best.reduce((sum, count) => sum + count, 0)) best = [...counts];
      return;
    }
    if (from === thicknesses.length) return;
    for (
      let count = Math.min(adjuster.most - used, Math.floor((left + noChange) / thicknesses[from]));
      count >= 0;
      count--
    ) {
      search(from + 1, left - count * thicknesses[from], [...counts, count], used + count);
    }
  };
  search(0, change, [], 0);
  const counts: number[] = best ?? [];
  return counts.flatMap((count, i) => (count > 0 ? [{ thickness: thicknesses[i], count }] : []));
}
