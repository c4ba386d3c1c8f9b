import { risks } from '../registry.ts';
import type { RiskContext, RiskDefinition, RiskId } from '../types.ts';
import { framePoser } from './framePoser.ts';
import { type ReadyRisk, readyRisks, subjectChainage } from './readyRisks.ts';
import { newSample } from './sample.ts';

/** The least margin of one risk over a run: how much, where, for whom. SI; path chainage, m. */
export interface LeastMargin {
  readonly risk: RiskId;
  readonly margin: number;
  readonly subject: number;
  readonly chainage: number;
}

/** How closely a run is looked through. */
export interface Looking {
  /** One frame in this many is looked at first. */
  readonly stride: number;
  /** Every frame is looked at round this many of the lowest places that were found so, of each risk. */
  readonly hollows: number;
}

/** Every fourth frame, and the four lowest places: with frames 10 mm apart no overhang or wheelbase slips between two looks. */
export const usualLooking: Looking = { stride: 4, hollows: 4 };

/** A risk while its least margin is looked for. */
interface Search extends ReadyRisk {
  /** Least margin of all subjects at every frame that was looked at first; Infinity where there is nothing to say. */
  readonly seen: Float64Array;
  margin: number;
  subject: number;
  chainage: number;
}

/**
 * Least margin of every risk over a run, looked for where it may lie instead of read from every frame: a stride at a time, then frame by frame round the lowest of
 * what that shows. Each margin is one that `assessRun` has at that frame too, so none is told smaller than it is; one
 * that is smaller only within less than a stride may be overlooked. For feedback while something is dragged.
 *
 * @returns one for each risk that has anything to say, in the order of the definitions
 * @throws RangeError where a vehicle does not fit the track, as `assessRun`
 */
export function leastMargins(
  context: RiskContext,
  { stride, hollows }: Looking = usualLooking,
  definitions: readonly RiskDefinition[] = risks,
): LeastMargin[] {
  const { frames } = context.run;
  const looks = Math.ceil((frames - 1) / stride) + 1;
  const frameOf = (look: number): number => Math.min(look * stride, frames - 1);
  const searches = readyRisks(context, definitions).map((ready): Search => {
    const seen = new Float64Array(looks);
    return { ...ready, seen, margin: Number.POSITIVE_INFINITY, subject: -1, chainage: Number.NaN };
  });
  const pose = framePoser(context);
  const sample = newSample();

  /** Samples all subjects of a risk at a frame; the least margin there. */
  function sampleAt(search: Search, frame: ReturnType<typeof pose>): number {
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < search.subjects; k++) {
      search.sampler.sample(frame, k, sample);
      if (sample.margin < least) least = sample.margin;
      if (sample.margin < search.margin) {
        search.margin = sample.margin;
        search.subject = k;
        search.chainage = subjectChainage(search.definition.subject, k, frame, context);
      }
    }
    return least;
  }

  for (let look = 0; look < looks; look++) {
    const frame = pose(frameOf(look));
    for (const search of searches) search.seen[look] = sampleAt(search, frame);
  }

  const closer = new Map<number, Search[]>();
  for (const search of searches) {
    for (const look of lowest(search.seen, hollows)) {
      const last = frameOf(Math.min(look + 1, looks - 1));
      for (let f = frameOf(Math.max(look - 1, 0)) + 1; f < last; f++) {
        if (f === frameOf(look)) continue;
        const there = closer.get(f);
        if (there === undefined) closer.set(f, [search]);
        else if (there.at(-1) !== search) there.push(search);
      }
    }
  }
  for (const [f, there] of closer) {
    const frame = pose(f);
    for (const search of there) sampleAt(search, frame);
  }
  return searches.flatMap(({ definition, margin, subject, chainage }) =>
    subject < 0 ? [] : [{ risk: definition.id, margin, subject, chainage }],
  );
}

/** Indices of the lowest hollows of a row: no neighbour is lower. */
function lowest(row: Float64Array, most: number): number[] {
  const found: number[] = [];
  for (let k = 0; k < row.length; k++) {
    const here = row[k];
    if (here === Number.POSITIVE_INFINITY) continue;
    // Of a level stretch the first counts.
    if ((k > 0 && row[k - 1] <= here) || (k + 1 < row.length && row[k + 1] < here)) continue;
    found.push(k);
  }
  return found.sort((a, b) => row[a] - row[b]).slice(0, most);
}
