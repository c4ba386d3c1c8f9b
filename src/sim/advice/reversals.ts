import type { Track } from '../../core/track/types.ts';

/** Curves flatter than this are straight to a train, 1/m: 50 m radius, three thousand gauges of H0. */
const straightest = 0.02;

/** Steps of curvature below this are easements' rounding, 1/m. */
const smooth = 1e-6;

/** A place where a track that turned one way begins to turn the other. Chainages in m; `before` and `after` count the elements of the track. */
export interface Reversal {
  /** Where the first curve ends, and where the second begins. */
  readonly from: number;
  readonly to: number;
  readonly before: number;
  readonly after: number;
  /** Neither curve ends or begins with a jump. */
  readonly eased: boolean;
  /** The radii at their sharpest, m. */
  readonly radii: readonly [number, number];
}

/** A stretch that turns one way. */
interface Turning {
  readonly sign: number;
  from: number;
  to: number;
  first: number;
  last: number;
  sharpest: number;
  easedIn: boolean;
  easedOut: boolean;
}

/** Every reversal of a track, in order. */
export function reversalsOf(track: Track): Reversal[] {
  const turns = turnings(track);
  return turns.slice(1).flatMap((turn, k): Reversal[] => {
    const earlier = turns[k];
    if (turn.sign === earlier.sign) return [];
    return [
      {
        from: earlier.to,
        to: turn.from,
        before: earlier.last,
        after: turn.first,
        eased: earlier.easedOut && turn.easedIn,
        radii: [1 / earlier.sharpest, 1 / turn.sharpest],
      },
    ];
  });
}

function turnings({ spec: { elements } }: Track): Turning[] {
  const turns: Turning[] = [];
  let from = 0;
  elements.forEach(({ length, startCurvature: a, endCurvature: b }, element) => {
    // A clothoid through no curvature turns both ways: it is two easements.
    const zero = a * b < 0 ? (length * a) / (a - b) : Number.NaN;
    const parts = Number.isNaN(zero)
      ? [[a, b, from, from + length]]
      : [
          [a, 0, from, from + zero],
          [0, b, from + zero, from + length],
        ];
    for (const [start, end, low, high] of parts) {
      const sharpest = Math.max(Math.abs(start), Math.abs(end));
      if (sharpest < straightest || high <= low) continue;
      const last = turns[turns.length - 1];
      const sign = Math.sign(start + end);
      const easedIn = Math.abs(start) < smooth;
      const easedOut = Math.abs(end) < smooth;
      if (last !== undefined && last.sign === sign && last.to === low && !easedIn) {
        last.to = high;
        last.last = element;
        last.sharpest = Math.max(last.sharpest, sharpest);
        last.easedOut = easedOut;
      } else {
        turns.push({ sign, from: low, to: high, first: element, last: element, sharpest, easedIn, easedOut });
      }
    }
    from += length;
  });
  return turns;
}
