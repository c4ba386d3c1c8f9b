/**
 * What each pixel column of a row shows. A recorded frame stands for the stretch of axis from halfway to the frame
 * before to halfway to the frame after, and every column that stretch touches takes the frame into account: nothing is
 * skipped when many frames share a column, and nothing gapes when one frame spans many.
 */

/** Columns laid over the axis: column c covers [from + c / perUnit, from + (c + 1) / perUnit). */
export interface Columns {
  readonly from: number;
  readonly perUnit: number;
  readonly count: number;
}

/**
 * Calls `into(frame, first, last)` with the columns each frame touches, clipped to the row; frames off the row or
 * without a place (NaN) are left out. A step longer than `jump` from one frame to the next is not travel (the sampled
 * spot moved to another part of the vehicle), so the cell ends at the frame's own place instead of halfway.
 */
export function sweep(
  places: Float64Array,
  jump: number,
  columns: Columns,
  into: (frame: number, first: number, last: number) => void,
): void {
  const { from, perUnit, count } = columns;
  for (let f = 0; f < places.length; f++) {
    const here = places[f];
    if (Number.isNaN(here)) continue;
    let low = here;
    let high = here;
    for (const neighbour of [f > 0 ? places[f - 1] : here, f + 1 < places.length ? places[f + 1] : here]) {
      if (!(Math.abs(neighbour - here) <= jump)) continue;
      const halfway = (neighbour + here) / 2;
      if (halfway < low) low = halfway;
      else if (halfway > high) high = halfway;
    }
    const first = Math.floor((low - from) * perUnit);
    const last = Math.max(first, Math.ceil((high - from) * perUnit) - 1);
    if (last >= 0 && first < count) into(f, Math.max(0, first), Math.min(count - 1, last));
  }
}

/** Forces by column: NaN where the joint never was, 0 where it was slack every time, else the strongest by size. */
export function strongestForces(
  places: Float64Array,
  jump: number,
  forces: Float64Array,
  columns: Columns,
): Float64Array {
  const strongest = new Float64Array(columns.count).fill(Number.NaN);
  sweep(places, jump, columns, (frame, first, last) => {
    const force = forces[frame];
    const size = Math.abs(force);
    for (let c = first; c <= last; c++) {
      if (!(Math.abs(strongest[c]) >= size)) strongest[c] = force;
    }
  });
  return strongest;
}

/** The least margin by column over all subjects, NaN where none has anything to say, and which sample it is. */
export interface LeastMargins {
  readonly margin: Float64Array;
  /** frame × subjects + subject of the least, or -1. */
  readonly sample: Int32Array;
}

/** `margins` is frames × subjects; `placesOf(subject)` gives each frame's place on the axis. */
export function leastMargins(
  margins: Float64Array,
  subjects: number,
  placesOf: (subject: number) => Float64Array,
  jump: number,
  columns: Columns,
): LeastMargins {
  const least = new Float64Array(columns.count).fill(Number.NaN);
  const sample = new Int32Array(columns.count).fill(-1);
  for (let subject = 0; subject < subjects; subject++) {
    sweep(placesOf(subject), jump, columns, (frame, first, last) => {
      const margin = margins[frame * subjects + subject];
      if (Number.isNaN(margin)) return;
      for (let c = first; c <= last; c++) {
        if (!(least[c] <= margin)) {
          least[c] = margin;
          sample[c] = frame * subjects + subject;
        }
      }
    });
  }
  return { margin: least, sample };
}

/** A stretch of neighbouring columns, `last` included. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
}

/** Neighbouring columns that `belongs` accepts, as stretches from left to right. */
export function stretchesOf(count: number, belongs: (column: number) => boolean): Stretch[] {
  const found: Stretch[] = [];
  for (let c = 0; c < count; c++) {
    if (!belongs(c)) continue;
    const first = c;
    while (c + 1 < count && belongs(c + 1)) c++;
    found.push({ first, last: c });
  }
  return found;
}

/**
 * Widens stretches about their middles to at least `least` columns, keeps them on the row, and joins those that then
 * overlap or touch.
 */
export function widenStretches(stretches: readonly Stretch[], least: number, count: number): Stretch[] {
  const widened: Stretch[] = [];
  for (const { first, last } of stretches) {
    const missing = Math.max(0, least - (last - first + 1));
    const from = Math.max(0, Math.min(count - least, first - Math.floor(missing / 2)));
    const to = Math.min(count - 1, Math.max(last, from + (last - first) + missing));
    const before = widened[widened.length - 1];
    if (before && from <= before.last + 1)
      widened[widened.length - 1] = { first: before.first, last: Math.max(before.last, to) };
    else widened.push({ first: from, last: to });
  }
  return widened;
}
