import { couplerPivot } from './ends.ts';
import type { Coupling, Joint, SecondStage, Vehicle } from './types.ts';

/** Two springs, or two dampers, one behind the other: 1/(1/a + 1/b). Infinity is a rigid half, 0 takes all force away. */
const inSeries = (a: number, b: number): number => 1 / (1 / a + 1 / b);

/** One half's spring in one direction. */
interface Spring {
  readonly stiffness: number;
  readonly second: SecondStage | undefined;
}

/**
 * Two-stage springs in series: one knee where the first and the last stretch of the true line of force over travel meet.
 * With the knees of both halves at the same force, or only one half with a second stage, that is the true line; else the true one has two knees,
 * and this one leaves it only between them. Undefined when neither half has a second stage. Throws RangeError when a second
 * stage is softer than the first.
 */
function secondInSeries(a: Spring, b: Spring): SecondStage | undefined {
  if (a.second === undefined && b.second === undefined) return undefined;
  const first = inSeries(a.stiffness, b.stiffness);
  const stiffness = inSeries(a.second?.stiffness ?? a.stiffness, b.second?.stiffness ?? b.stiffness);
  // Travel that the second stages save, against first stages all the way: (1/k - 1/k2) for each newton beyond the knee.
  let saved = 0;
  let savedPerNewton = 0;
  for (const { stiffness: k, second } of [a, b]) {
    if (second === undefined) continue;
    if (!(second.stiffness >= k) || !(second.from >= 0)) {
      throw new RangeError(
        `second stage of a coupling must be at least as stiff as its first (${k} N/m) and begin at 0 m or more, got ${second.stiffness} N/m from ${second.from} m`,
      );
    }
    const perNewton = 1 / k - 1 / second.stiffness;
    if (perNewton === 0) continue;
    saved += perNewton * k * second.from;
    savedPerNewton += perNewton;
  }
  // A second stage as stiff as the first is none.
  if (savedPerNewton === 0) return undefined;
  return { from: saved / savedPerNewton / first, stiffness };
}

/**
 * Joins the rear coupling of one vehicle to the front coupling of the next: stiffness (N/m) and damping (N·s/m) in
 * series, reach and slack (m) added, release (N) the weaker of the two. A half may be rigid (Infinity); two rigid halves
 * make a rigid joint. It couples again when pushed together if both halves do. Throws RangeError when a second stage is
 * softer than the first.
 */
export function makeJoint(rearHalf: Coupling, frontHalf: Coupling): Joint {
  const draftSecond = secondInSeries(
    { stiffness: rearHalf.draftStiffness, second: rearHalf.draftSecond },
    { stiffness: frontHalf.draftStiffness, second: frontHalf.draftSecond },
  );
  const buffSecond = secondInSeries(
    { stiffness: rearHalf.buffStiffness, second: rearHalf.buffSecond },
    { stiffness: frontHalf.buffStiffness, second: frontHalf.buffSecond },
  );
  return {
    freeLength: rearHalf.reach + frontHalf.reach,
    draftStiffness: inSeries(rearHalf.draftStiffness, frontHalf.draftStiffness),
    buffStiffness: inSeries(rearHalf.buffStiffness, frontHalf.buffStiffness),
    damping: inSeries(rearHalf.damping, frontHalf.damping),
    slack: rearHalf.slack + frontHalf.slack,
    ...(draftSecond === undefined ? {} : { draftSecond }),
    ...(buffSecond === undefined ? {} : { buffSecond }),
    release: Math.min(rearHalf.release, frontHalf.release),
    recouples: rearHalf.recouples === true && frontHalf.recouples === true,
  };
}

/**
 * Origin to origin of two coupled vehicles on straight level track with the joint at its free length, m. The free
 * length is measured pivot to pivot in space, so heads fitted at different heights stand a little closer.
 */
export function referenceSpacing(leading: Vehicle, trailing: Vehicle): number {
  const rear = couplerPivot(leading, 'rear');
  const front = couplerPivot(trailing, 'front');
  const free = leading.rear.coupling.reach + trailing.front.coupling.reach;
  const step = rear.up - front.up;
  return front.ahead - rear.ahead + Math.sqrt(Math.max(0, free * free - step * step));
}
