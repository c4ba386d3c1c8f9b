import type { PlanElement, Track } from '../track/index.ts';
import type { Layers, SupportRow } from './types.ts';

/** How the supports of a helix stand over one another, turn by turn. */
export interface TurnByTurn {
  /** The element, from 0, and its chainages, m. */
  readonly element: number;
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  /** Plan length of a turn, m. */
  readonly turn: number;
  /** Supports to a turn, as they are spaced on the whole. */
  readonly perTurn: number;
  /** The furthest that a support stands from being over one of the turn below, along the track, m; null when no turn lies over another. */
  readonly aside: number | null;
  /** Spacing nearest to the one there is with which they stand over one another exactly, m. */
  readonly inLine: number;
  /** Blocks from the top of the strip below, beside its underlay, to the underside above: height, m, and how many alike. Empty where supports do not stand over one another. */
  readonly blocks: readonly { readonly height: number; readonly count: number }[];
}

/** Blocks that differ by less than this, m, are cut alike: a tenth of a millimetre is below a saw. */
const alike = 1e-4;

/** Rods that pass through several turns take this much along the track, m: a hole a size larger than the rod (an assumption). */
export const rodPlay = 1e-3;

/** Looks at every helix of a track with its schedule, see `supportSchedule`. One with fewer than two supports is left out. */
export function turnsOfHelices(track: Track, rows: readonly SupportRow[], layers: Layers): TurnByTurn[] {
  const { elements, startChainage } = track.plan;
  return elements.flatMap((element, index): TurnByTurn[] => {
    if (element.kind !== 'helix') return [];
    const from = startChainage[index];
    const told = oneHelix(element, from, rows, layers);
    return told === null ? [] : [{ element: index, from, to: from + element.length, ...told }];
  });
}

function oneHelix(
  { length, startCurvature }: PlanElement,
  from: number,
  rows: readonly SupportRow[],
  layers: Layers,
): Omit<TurnByTurn, 'element' | 'from' | 'to'> | null {
  const own = rows.filter(({ chainage }) => chainage >= from && chainage <= from + length);
  if (own.length < 2) return null;
  const radius = 1 / Math.abs(startCurvature);
  const turn = 2 * Math.PI * radius;
  const spacing = (own[own.length - 1].chainage - own[0].chainage) / (own.length - 1);
  let aside: number | null = null;
  const heights: number[] = [];
  for (const row of own) {
    const under = row.chainage - Math.sign(row.grade) * turn;
    if (row.grade === 0 || under < own[0].chainage - spacing / 2 || under > own[own.length - 1].chainage + spacing / 2)
      continue;
    const below = own.reduce((a, b) => (Math.abs(b.chainage - under) < Math.abs(a.chainage - under) ? b : a));
    aside = Math.max(aside ?? 0, Math.abs(below.chainage - under));
    heights.push(row.underside - (below.underside + layers.deck * Math.sqrt(1 + below.grade * below.grade)));
  }
  return {
    radius,
    turn,
    perTurn: turn / spacing,
    aside,
    inLine: turn / Math.max(1, Math.round(turn / spacing)),
    blocks: aside === null || aside > rodPlay ? [] : grouped(heights),
  };
}

/** Heights in order, those within `alike` of the first of their group counted as one. */
function grouped(heights: readonly number[]): { height: number; count: number }[] {
  const groups: { from: number; sum: number; count: number }[] = [];
  for (const height of [...heights].sort((a, b) => a - b)) {
    const last = groups.at(-1);
    if (last !== undefined && height - last.from < alike) {
      last.sum += height;
      last.count++;
    } else groups.push({ from: height, sum: height, count: 1 });
  }
  return groups.map(({ sum, count }) => ({ height: sum / count, count }));
}
