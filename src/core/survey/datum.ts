import type { Row } from './rows.ts';
import type { Deficiency, SurveyInput } from './types.ts';

/** A part of a loose direction below this share of its largest is none. */
const nothing = 1e-7;

/**
 * As few unknowns as take all looseness away when they are held, as indices of supports: the first support rather than any
 * other, then the last, then the rest in order. `loose` are directions over all `columns` unknowns, supports first.
 */
export function heldSupports(loose: readonly Float64Array[], supports: number, columns: number): number[] {
  const directions = loose.map((direction) => scaled(direction));
  const order = [0, supports - 1, ...Array.from({ length: columns - 1 }, (_, i) => i + 1)];
  const held: number[] = [];
  for (const unknown of order) {
    if (directions.length === 0) break;
    if (held.includes(unknown)) continue;
    const best = directions.reduce(
      (top, d, k) => (Math.abs(d[unknown]) > Math.abs(directions[top][unknown]) ? k : top),
      0,
    );
    const [pivot] = directions.splice(best, 1);
    if (Math.abs(pivot[unknown]) < nothing) {
      directions.push(pivot);
      continue;
    }
    held.push(unknown);
    for (let k = 0; k < directions.length; k++) {
      const factor = directions[k][unknown] / pivot[unknown];
      directions[k] = scaled(directions[k].map((value, i) => value - factor * pivot[i]));
    }
  }
  return held;
}

function scaled(direction: Float64Array): Float64Array {
  const most = direction.reduce((top, value) => Math.max(top, Math.abs(value)), 0);
  return most > 0 ? direction.map((value) => (Math.abs(value) < nothing * most ? 0 : value / most)) : direction;
}

/** What the looseness is, in terms a person can act on. */
export function deficiencies(
  loose: readonly Float64Array[],
  held: readonly number[],
  rows: readonly Row[],
  { supports, fixed }: SurveyInput,
  count: number,
): Deficiency[] {
  const named: Deficiency[] = [];
  const known = new Set(fixed);
  const unseen = supports.flatMap((_, i) =>
    !known.has(i) && rows.every((row) => Math.abs(row.heights[i]) < nothing * largest(row)) ? [i] : [],
  );
  if (unseen.length > 0) named.push({ kind: 'unseen', supports: unseen });
  const rest = held.filter((unknown) => unknown < count && !unseen.includes(unknown));
  const seen = supports.map((_, i) => i).filter((i) => !unseen.includes(i) && !known.has(i));
  if (rest.length === 0) return named;
  const spans = (power: 0 | 1): boolean => inSpan(loose, seen, (i) => (power === 0 ? 1 : supports[i]), supports);
  if (rest.length === 1 && spans(0)) named.push({ kind: 'height', held: rest[0] });
  else if (rest.length === 2 && spans(0) && spans(1)) named.push({ kind: 'tilt', held: [rest[0], rest[1]] });
  else named.push({ kind: 'apart', supports: rest });
  return named;
}

const largest = (row: Row): number => row.heights.reduce((top, value) => Math.max(top, Math.abs(value)), 0);

/** Whether a movement of the seen supports is among the loose ones, by fitting it with them. */
function inSpan(
  loose: readonly Float64Array[],
  seen: readonly number[],
  movement: (support: number) => number,
  supports: readonly number[],
): boolean {
  const basis: number[][] = [];
  const strip = (vector: number[]): number[] => {
    let rest = vector;
    for (let pass = 0; pass < 2; pass++) {
      for (const one of basis) {
        const part = rest.reduce((sum, value, i) => sum + value * one[i], 0);
        rest = rest.map((value, i) => value - part * one[i]);
      }
    }
    return rest;
  };
  const length = (vector: readonly number[]): number =>
    Math.sqrt(vector.reduce((sum, value) => sum + value * value, 0));
  for (const direction of loose) {
    const rest = strip(seen.map((i) => direction[i]));
    const size = length(rest);
    if (size > nothing) basis.push(rest.map((value) => value / size));
  }
  const reach = supports[supports.length - 1] - supports[0];
  const wanted = seen.map((i) => (movement(i) === 1 ? 1 : movement(i) / reach));
  return length(strip(wanted)) < 1e-5 * length(wanted);
}
