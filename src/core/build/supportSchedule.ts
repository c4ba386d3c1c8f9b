import { tan } from '../math/index.ts';
import { type Track, trackPoint } from '../track/index.ts';
import { standingAt } from './standing.ts';
import type { Board, Layers, SupportRow } from './types.ts';

/** A change of grade slower than this, 1/m, is rounding of the profile's pieces and no vertical curve. */
const straightEnough = 1e-9;

/** Where supports go, and what they may stand on. */
export interface ScheduleInput {
  /** The track as planned: its own profile, with no departures of supports in it. */
  readonly track: Track;
  /** Chainages in order, m, with the numbers that the builder knows them by, from 1. */
  readonly supports: readonly { readonly number: number; readonly chainage: number }[];
  readonly layers: Layers;
  /** All tracks as planned, this one among them: the strips that a support may stand on. */
  readonly tracks: readonly Track[];
  readonly boards: readonly Board[];
  /** Height of the floor, m; null when it is not known. */
  readonly floor: number | null;
}

/**
 * The height of every support of a track, so that the rail lies on the plan, vertical curves included.
 *
 * The layers lie square to the rail, so that on a grade g the underside is their thickness times √(1+g²) below it. Returns a row a support, in order; m.
 */
export function supportSchedule({ track, supports, layers, tracks, boards, floor }: ScheduleInput): SupportRow[] {
  const below = layers.track + layers.underlay + layers.deck;
  const rows: SupportRow[] = [];
  for (const { number, chainage } of supports) {
    const { x, y, z, grade, verticalCurvature, cant } = trackPoint(track, chainage);
    const underside = z - below * Math.sqrt(1 + grade * grade);
    const standing = standingAt({ x, y, under: underside }, tracks, layers, boards, floor);
    const before = rows.at(-1);
    rows.push({
      number,
      chainage,
      x,
      y,
      rail: z,
      underside,
      from: before === undefined ? null : { plan: chainage - before.chainage, rise: underside - before.underside },
      grade,
      rounding: Math.abs(verticalCurvature) > straightEnough,
      // Cant is positive with the right rail higher.
      acrossLeft: -layers.width * tan(cant),
      standing,
      riser: standing === null ? null : underside - standing.height,
    });
  }
  return rows;
}
