import { atan2, cos, hypot, sin } from '../../../core/math/index.ts';
import { chainEnd, type Pose } from '../../../core/track/index.ts';
import { type Address, planElement, readAt, type Scene } from '../../../scene/index.ts';
import { lay } from '../vary.ts';

/** The end of a track counts as kept within this, m, its direction as the way it goes off at 1 m. */
export const endTolerance = 1e-5;

/** Rounds of Newton; from a railway near by two or three do. */
const mostRounds = 20;
/** An end this near, m, is met: beyond it rounding of the sums shows. */
const met = 1e-10;
/** A step that leads nowhere that can be laid, or further away, is halved so often. */
const mostHalvings = 8;
/** Share of a number by which it is moved to see what it does: half the digits of a double. */
const nudge = 1e-7;

/** Where a track ends in plan. Throws RangeError for a track that is not there or begins on another. */
export function trackEnd(scene: Scene, trackId: string): Pose {
  const track = scene.tracks.find(({ id }) => id === trackId);
  if (track === undefined) throw new RangeError(`The scene has no track "${trackId}".`);
  if ('branchOf' in track.start) throw new RangeError(`"${trackId}" begins on another track; ask about that one.`);
  const { xMm, yMm, headingDeg } = track.start;
  return chainEnd(
    { x: xMm / 1e3, y: yMm / 1e3, heading: (headingDeg * Math.PI) / 180 },
    track.alignment.map((_, index) => planElement(track, index)),
  );
}

/** How far one end is from another: along x and y, m, and in direction, as m aside 1 m further on. */
function apart(one: Pose, other: Pose): readonly [number, number, number] {
  const turn = one.heading - other.heading;
  return [one.x - other.x, one.y - other.y, atan2(sin(turn), cos(turn))];
}

export interface Closed {
  readonly scene: Scene;
  readonly values: readonly number[];
  /** What is left, m. */
  readonly left: number;
}

/**
 * The railway with some numbers changed so that a track ends at a place in a direction, as nearly as they can: Gauss-Newton from what they
 * are, with slopes by differences. Two straights that do not lie alike close any gap at once; a turn needs an angle among the numbers. Not checked as a file is.
 */
export function closeTrack(scene: Scene, trackId: string, target: Pose, solved: readonly Address[]): Closed {
  let values = solved.map((at) => {
    const value = readAt(scene, at);
    if (typeof value !== 'number') throw new RangeError(`The scene says no number at "${at}".`);
    return value;
  });
  const laidWith = (to: readonly number[]): Scene =>
    lay(
      scene,
      solved.map((at, k) => ({ at, to: to[k] })),
    );
  const gapWith = (to: readonly number[]) => apart(trackEnd(laidWith(to), trackId), target);
  let gap = apart(trackEnd(scene, trackId), target);
  for (let round = 0; round < mostRounds && solved.length > 0 && hypot(...gap) > met; round++) {
    const slopes = values.map((value, k) => {
      const by = Math.max(Math.abs(value), 1) * nudge;
      const moved = gapWith(values.with(k, value + by));
      return moved.map((one, row) => (one - gap[row]) / by);
    });
    const step = leastSquares(slopes, gap);
    if (step === null) break;
    let taken = false;
    for (let halved = 0, share = 1; halved <= mostHalvings && !taken; halved++, share /= 2) {
      const next = values.map((value, k) => value - share * step[k]);
      const left = attempt(() => gapWith(next));
      if (left === null || !(hypot(...left) < hypot(...gap))) continue;
      [values, gap, taken] = [next, left, true];
    }
    if (!taken) break;
  }
  return { scene: solved.length === 0 ? scene : laidWith(values), values, left: hypot(...gap) };
}

function attempt<T>(what: () => T): T | null {
  try {
    return what();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Numbers x with Σ x·column nearest to `wanted`, by orthogonal columns (Gram-Schmidt); null when a column is nothing new. */
function leastSquares(columns: readonly (readonly number[])[], wanted: readonly number[]): number[] | null {
  const square: number[][] = [];
  const shares: number[][] = [];
  let left = [...wanted];
  const dots: number[] = [];
  for (const column of columns) {
    let rest = [...column];
    const own: number[] = [];
    for (const unit of square) {
      const share = inner(rest, unit);
      own.push(share);
      rest = rest.map((one, row) => one - share * unit[row]);
    }
    const length = Math.sqrt(inner(rest, rest));
    if (!(length > alike * Math.sqrt(inner(column, column)))) return null;
    const unit = rest.map((one) => one / length);
    const dot = inner(left, unit);
    left = left.map((one, row) => one - dot * unit[row]);
    square.push(unit);
    shares.push([...own, length]);
    dots.push(dot);
  }
  const found = new Array<number>(columns.length).fill(0);
  for (let k = columns.length - 1; k >= 0; k--) {
    let sum = dots[k];
    for (let later = k + 1; later < columns.length; later++) sum -= shares[later][k] * found[later];
    found[k] = sum / shares[k][k];
  }
  return found;
}

/** A column that has less than this of its length to itself moves the end as the others do. */
const alike = 1e-6;

const inner = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, one, k) => sum + one * b[k], 0);
