import type { StudyHooks } from './hooks.ts';
import { createProbing } from './probing.ts';

/** One quantity swept over a range. */
export interface LineSpec {
  readonly from: number;
  readonly to: number;
  /** Values probed evenly apart, ends included; at least 2. */
  readonly points: number;
  /** Edges are pinned down to this much; they are left between two points when it is not below their distance. */
  readonly edgeWithin: number;
}

/** A place where passing turns into failing: the nearest value on either side that was really probed. */
export interface Edge {
  /** The last value that passes and the first that fails, whichever of them is the greater. */
  readonly passes: number;
  readonly fails: number;
}

export interface Line<T> {
  /** Everything probed, values rising: the even points and those that pin down the edges. */
  readonly points: readonly { readonly at: number; readonly outcome: T }[];
  readonly edges: readonly Edge[];
  /** False when the study was stopped before its end. */
  readonly whole: boolean;
}

/**
 * Sweeps one quantity: probes even points, then halves every interval whose ends differ in `passes` until the edge is
 * known to `edgeWithin`. Two edges between neighbouring points stay unseen: choose the points closer than what may hide
 * between them.
 *
 * @throws RangeError when the range or the number of points says nothing
 */
export async function sweepLine<T>(
  spec: LineSpec,
  probe: (value: number) => Promise<T>,
  passes: (outcome: T) => boolean,
  hooks: StudyHooks = {},
): Promise<Line<T>> {
  if (!(Number.isFinite(spec.from) && Number.isFinite(spec.to) && spec.from !== spec.to)) {
    throw new RangeError(`A sweep needs two different ends, not ${spec.from} and ${spec.to}.`);
  }
  if (!(Number.isInteger(spec.points) && spec.points >= 2)) {
    throw new RangeError(`A sweep needs at least 2 points, not ${spec.points}.`);
  }
  if (!(spec.edgeWithin > 0))
    throw new RangeError(`An edge is pinned down to more than nothing, not ${spec.edgeWithin}.`);
  const probing = createProbing(([value]) => probe(value), hooks);
  const step = (spec.to - spec.from) / (spec.points - 1);
  const even = Array.from({ length: spec.points }, (_, k) => (k === spec.points - 1 ? spec.to : spec.from + k * step));
  await probing.at(even.map((value) => [value]));

  for (;;) {
    const open = intervals(probing.known, passes).filter(({ wide }) => wide > spec.edgeWithin);
    if (open.length === 0 || (hooks.stopped?.() ?? false)) break;
    await probing.at(open.map(({ middle }) => [middle]));
  }
  const points = probing.known.map(({ at, outcome }) => ({ at: at[0], outcome })).sort((a, b) => a.at - b.at);
  const edges = intervals(probing.known, passes).map(({ edge }) => edge);
  return { points, edges, whole: !(hooks.stopped?.() ?? false) };
}

/** Every interval between neighbours that differ in passing, from the low end up. */
function intervals<T>(
  known: readonly { readonly at: readonly number[]; readonly outcome: T }[],
  passes: (outcome: T) => boolean,
): { edge: Edge; wide: number; middle: number }[] {
  const sorted = known.map(({ at, outcome }) => ({ at: at[0], good: passes(outcome) })).sort((a, b) => a.at - b.at);
  return sorted.slice(1).flatMap((high, k) => {
    const low = sorted[k];
    if (low.good === high.good) return [];
    const edge = low.good ? { passes: low.at, fails: high.at } : { passes: high.at, fails: low.at };
    return [{ edge, wide: high.at - low.at, middle: 0.5 * (low.at + high.at) }];
  });
}
