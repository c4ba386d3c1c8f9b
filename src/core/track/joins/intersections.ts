import { atan2, hypot } from '../../math/index.ts';
import { wrappedAngle } from '../angle.ts';
import { straight } from '../plan/elements.ts';
import type { PlanElement } from '../types.ts';
import type { BendSpec } from './easedBend.ts';
import { type Fillet, fillet } from './fillet.ts';
import type { Pose } from './pose.ts';

/** What an alignment by intersection points lacks. */
export interface Shortfall {
  /** Corner, counted from 1 among the inner points: its easements turn further than the corner. Leg, counted from 1: the bends at its ends need more. */
  readonly where: 'corner' | 'leg';
  readonly number: number;
  /** rad at a corner, m on a leg: what is missing. */
  readonly missing: number;
}

export interface IntersectionAlignment {
  readonly start: Pose;
  /** Null when anything is missing. */
  readonly elements: readonly PlanElement[] | null;
  readonly fillets: readonly (Fillet | null)[];
  readonly shortfalls: readonly Shortfall[];
}

/** Two points nearer than this, m, give a leg no direction. */
const NO_LEG = 1e-9;

/** A leg or a turn short by less than this is met: rounding of coordinates, m and rad. */
const SHORT_ROUNDING = 1e-12;

/**
 * The classical alignment: straights from point to point [x, y], m, and a bend at each inner one. `bends` has one entry
 * for each inner point; where the straights go on without turning it is not used. Throws RangeError when their numbers do not match,
 * when there are fewer than two points or two coincide, or a leg runs straight back.
 */
export function intersectionAlignment(
  points: readonly (readonly [number, number])[],
  bends: readonly BendSpec[],
): IntersectionAlignment {
  if (points.length < 2 || bends.length !== points.length - 2) {
    throw new RangeError(`${points.length} points want ${Math.max(0, points.length - 2)} bends, not ${bends.length}.`);
  }
  const legs = points.slice(1).map(([x, y], i) => {
    const [dx, dy] = [x - points[i][0], y - points[i][1]];
    const length = hypot(dx, dy);
    if (!(length > NO_LEG)) throw new RangeError(`Points ${i + 1} and ${i + 2} coincide.`);
    return { length, heading: atan2(dy, dx) };
  });
  const turns = bends.map((_, i) => wrappedAngle(legs[i + 1].heading - legs[i].heading));
  const fillets = bends.map((bend, i) => (Math.abs(turns[i]) <= SHORT_ROUNDING ? null : fillet(bend, turns[i])));
  const shortfalls: Shortfall[] = [];
  fillets.forEach((corner, i) => {
    if (corner !== null && corner.elements === null) {
      shortfalls.push({ where: 'corner', number: i + 1, missing: -corner.arcAngle });
    }
  });
  const straights = legs.map(({ length }, i) => {
    const left = length - (fillets[i - 1]?.tangentOut ?? 0) - (fillets[i]?.tangentIn ?? 0);
    if (left < -SHORT_ROUNDING) shortfalls.push({ where: 'leg', number: i + 1, missing: -left });
    return Math.max(0, left);
  });
  const chain = straights.flatMap((length, i) => [straight(length), ...(fillets[i]?.elements ?? [])]);
  return {
    start: { x: points[0][0], y: points[0][1], heading: legs[0].heading },
    elements: shortfalls.length === 0 ? chain.filter((element) => element.length > 0) : null,
    fillets,
    shortfalls,
  };
}
