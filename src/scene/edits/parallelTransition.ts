import { atan2, cos, hypot, sin } from '../../core/math/index.ts';
import { chainEnd, compoundEasement, easement, easementLengthForShift, transition } from '../../core/track/index.ts';
import { mmText } from './tidy.ts';

/** A clothoid: curvatures at its ends, 1/m, left positive, and length, m. */
export interface Clothoid {
  readonly from: number;
  readonly to: number;
  readonly length: number;
}

/** The clothoid beside another, and how its neighbours make up for it: turning of an arc, rad left positive, length of a straight, m. */
export interface BesideClothoid extends Clothoid {
  readonly before: { readonly turn: number; readonly length: number };
  readonly after: { readonly turn: number; readonly length: number };
}

const none = { turn: 0, length: 0 };

/**
 * The clothoid between the lines that lie `spacing` m to the left of what another one joins. The line beside a clothoid is none, but what it joins are
 * lines and circles about the same centres, which clear each other by as much: so it is the clothoid of the same shift. Throws RangeError, with the
 * name given, for a curve sharper than the spacing.
 */
export function parallelTransition(one: Clothoid, spacing: number, name: string): BesideClothoid {
  const beside = (curvature: number): number => {
    const stretch = 1 - spacing * curvature;
    if (!(stretch > 0)) {
      throw new RangeError(`${name} is sharper than ${mmText(Math.abs(spacing) * 1000)}: there is no line inside it.`);
    }
    return curvature / stretch;
  };
  const [from, to] = [beside(one.from), beside(one.to)];
  if (one.from === one.to) {
    // An arc or a straight by another name: it keeps its angle.
    return { from, to, length: one.length * (1 - spacing * one.from), before: none, after: none };
  }
  if (one.from === 0 || one.to === 0) return fromStraight(one, from, to);
  const gap = clearance(one);
  const length = compoundEasement(from, to, gap).length;
  const fresh = { from, to, length };
  return {
    ...fresh,
    before: { turn: toCentres(one) - toCentres(fresh), length: 0 },
    after: { turn: turning(one) - toCentres(one) - (turning(fresh) - toCentres(fresh)), length: 0 },
  };
}

function fromStraight(one: Clothoid, from: number, to: number): BesideClothoid {
  const bend = one.from + one.to;
  const old = easement(1 / Math.abs(bend), one.length);
  const length = easementLengthForShift(1 / Math.abs(from + to), old.shift);
  const fresh = easement(1 / Math.abs(from + to), length);
  const arc = { turn: Math.sign(bend) * (old.angle - fresh.angle), length: 0 };
  // The circles touch their tangents opposite each other.
  const straight = { turn: 0, length: old.shiftAt - fresh.shiftAt };
  return one.from === 0
    ? { from, to, length, before: straight, after: arc }
    : { from, to, length, before: arc, after: straight };
}

const turning = ({ from, to, length }: Clothoid): number => ((from + to) / 2) * length;

/** Centres of the circles at both ends, seen from the start and its direction: from the first to the second. */
function centres({ from, to, length }: Clothoid): readonly [x: number, y: number] {
  const end = chainEnd({ x: 0, y: 0, heading: 0 }, [transition(length, from, to)]);
  return [end.x - sin(end.heading) / to, end.y + cos(end.heading) / to - 1 / from];
}

/** Direction from centre to centre, against that of the start, rad. */
function toCentres(one: Clothoid): number {
  const [x, y] = centres(one);
  return atan2(y, x);
}

/** How far the circles at both ends keep clear of each other, m: one inside the other, or side by side. */
function clearance(one: Clothoid): number {
  const [x, y] = centres(one);
  const apart = hypot(x, y);
  const radii = Math.abs(1 / one.from - 1 / one.to);
  return one.from * one.to > 0 ? radii - apart : apart - radii;
}
