import { locate, makeBucketIndex } from '../bucket.ts';
import { inMetres, TrackError } from '../problem.ts';
import { PieceWriter } from '../profile/pieces.ts';
import type { CantSpec, HeightPieces, PreparedCant, TrackPoint } from '../types.ts';

/** Steeper across than this, rad, is a slip of units: a model track leans by 0.06, and at 45° everything lies on its side. */
const MOST_CANT = 0.5;

function checkCant({ points, lever }: CantSpec): void {
  if (points.length === 0) throw new TrackError('bad-cant', 'A canted track needs at least one place with its cant.');
  if (!(lever >= 0) || !Number.isFinite(lever)) {
    throw new TrackError('bad-cant', `The lever of a canted track must be 0 m or more, not ${lever}.`);
  }
  points.forEach(({ chainage, cant }, index) => {
    if (!Number.isFinite(chainage) || !(Math.abs(cant) <= MOST_CANT)) {
      const sentence = `Cant ${index + 1} needs a finite chainage and at most ${MOST_CANT} rad either way, not ${cant} rad.`;
      throw new TrackError('bad-cant', sentence, chainage);
    }
    if (index > 0 && !(chainage > points[index - 1].chainage)) {
      const back = points[index - 1].chainage - chainage;
      const sentence = `Places with cant must rise in chainage: the one at ${inMetres(chainage)} follows one that is ${inMetres(back)} further on.`;
      throw new TrackError('cant-not-rising', sentence, chainage, back);
    }
  });
}

/** Prepares cant for constant-time queries over a track of `length`. Throws TrackError when places do not rise in chainage. */
export function prepareCant(spec: CantSpec, length: number): PreparedCant {
  checkCant(spec);
  const { points } = spec;
  const rows: { start: number; cant: number; twist: number }[] = [];
  const add = (start: number, end: number, atStart: number, twist: number): void => {
    if (end <= 0 || start >= length) return;
    const inside = Math.max(start, 0);
    rows.push({ start: inside, cant: atStart + twist * (inside - start), twist });
  };
  add(0, points[0].chainage, points[0].cant, 0);
  points.forEach(({ chainage, cant }, i) => {
    const next = points[i + 1];
    if (next === undefined) add(chainage, Number.POSITIVE_INFINITY, cant, 0);
    else add(chainage, next.chainage, cant, (next.cant - cant) / (next.chainage - chainage));
  });
  // A single place at or beyond the end says the cant of all before it.
  const startChainage = Float64Array.from(rows, (row) => row.start);
  return {
    startChainage,
    cant: Float64Array.from(rows, (row) => row.cant),
    twist: Float64Array.from(rows, (row) => row.twist),
    bucket: makeBucketIndex(startChainage, length),
  };
}

/** Writes cant and twist at `chainage`, inside the track, into `out`. */
export function placeInCant(prepared: PreparedCant, chainage: number, out: Pick<TrackPoint, 'cant' | 'twist'>): void {
  const k = locate(prepared.bucket, prepared.startChainage, chainage);
  out.twist = prepared.twist[k];
  out.cant = prepared.cant[k] + out.twist * (chainage - prepared.startChainage[k]);
}

/**
 * How far packing up the high rail lifts the centreline: lever·|cant|, as pieces that stay level beyond the outer places.
 *
 * Exactly it is lever·sin|cant|; at a cant of 1 mm in 16.5 mm the two differ by 0.3 µm. Where the cant changes hands
 * both rails are level and the line has a kink.
 */
export function cantLift({ points, lever }: CantSpec): HeightPieces {
  const lift = new PieceWriter();
  const first = points[0];
  lift.add(first.chainage, lever * Math.abs(first.cant), 0);
  for (let i = 0; i + 1 < points.length; i++) {
    const [from, to] = [points[i], points[i + 1]];
    const run = to.chainage - from.chainage;
    const slope = (lever * (to.cant - from.cant)) / run;
    const side = from.cant === 0 ? Math.sign(to.cant) : Math.sign(from.cant);
    lift.add(from.chainage, lever * Math.abs(from.cant), side * slope);
    // By signs, because the product of two small leans can be 0.
    if (Math.sign(from.cant) * Math.sign(to.cant) < 0) {
      const level = from.chainage + (run * from.cant) / (from.cant - to.cant);
      lift.add(level, 0, -side * slope);
    }
  }
  const last = points[points.length - 1];
  lift.add(last.chainage, lever * Math.abs(last.cant), 0);
  return lift.pieces();
}
