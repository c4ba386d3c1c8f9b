import { atan, cos, sin, tan } from '../../math/index.ts';
import type { PlanElement } from '../types.ts';
import { arc, straight } from './elements.ts';

/** A turnout out of straight track, as the builder orders it. Lengths m, angles rad. */
export interface TurnoutSpec {
  readonly hand: 'left' | 'right';
  readonly gauge: number;
  /** Radius of the diverging centreline. */
  readonly radius: number;
  /** Angle of a straight crossing; left out: the curve goes on through the crossing. */
  readonly crossingAngle?: number;
  /** Straight from the front joint to where the curve begins. */
  readonly front: number;
  /** Diverging track beyond the nose of the crossing. */
  readonly heel: number;
}

export interface Turnout {
  /** The diverging centreline from the front joint to the heel. */
  readonly elements: readonly PlanElement[];
  /** Along the straight: from where the curve begins to the nose, and from the front joint to opposite the heel, m. */
  readonly lead: number;
  readonly through: number;
  /** Length of the diverging centreline, m. */
  readonly diverging: number;
  /** Angle between the rails at the nose, and between the centrelines at the heel, rad, positive either hand. */
  readonly crossingAngle: number;
  readonly angle: number;
  /** Distance of the centrelines at the heel, m. */
  readonly offset: number;
}

/** How a crossing is measured as 1 in N: across from one leg, square to it, or both ways from the middle line. */
export type CrossingMeasure = 'right-angle' | 'centre-line';

/** The angle, rad, of a crossing of 1 in `number`: tan α = 1/N, or by the middle line tan α/2 = 1/2N. Throws RangeError unless positive. */
export function crossingAngle(number: number, measure: CrossingMeasure): number {
  if (!(number > 0) || !Number.isFinite(number)) throw new RangeError(`There is no crossing of 1 in ${number}.`);
  return measure === 'right-angle' ? atan(1 / number) : 2 * atan(1 / (2 * number));
}

/** 1 - cos x without the loss of digits at small angles. */
const versine = (x: number): number => 2 * sin(x / 2) * sin(x / 2);

/**
 * The diverging track of a turnout. The outer rail of the curve, radius R + G/2, leaves one rail of the straight track at the toe and meets the other,
 * G away, at the nose: a curve through the crossing meets it at the angle α with (R + G/2)(1 - cos α) = G, lead
 * G·cot(α/2). A straight crossing of that angle or a greater one ends the curve on it, and the outer rail runs straight to the
 * nose for (G - (R + G/2)(1 - cos α))/sin α. Throws RangeError when a length is wrong or the curve cannot have turned that far by the nose.
 */
export function turnout(spec: TurnoutSpec): Turnout {
  const { hand, gauge, radius, front, heel } = spec;
  if (
    !(gauge > 0) ||
    !(radius > gauge / 2) ||
    !(front >= 0) ||
    !(heel >= 0) ||
    !Number.isFinite(radius + front + heel)
  ) {
    throw new RangeError(
      'A turnout needs a gauge, a radius over half of it, and lengths of 0 or more before and beyond.',
    );
  }
  const outer = radius + gauge / 2;
  const halfSine = Math.sqrt(gauge / (2 * outer));
  const natural = 2 * atan(halfSine / Math.sqrt((1 - halfSine) * (1 + halfSine)));
  const way = hand === 'left' ? 1 : -1;
  if (spec.crossingAngle === undefined) {
    const turned = natural + heel / radius;
    const elements = [straight(front), arc(radius, way * turned)];
    return measured(elements, outer * sin(natural), natural, turned, front, radius);
  }
  const angle = spec.crossingAngle;
  const left = gauge - outer * versine(angle);
  if (!(angle > 0) || angle >= Math.PI / 2 || left < -gauge * ANGLE_ROUNDING) {
    const degrees = (rad: number): string => ((rad * 180) / Math.PI).toFixed(2);
    throw new RangeError(
      `A curve of ${radius} m has turned by ${degrees(natural)}° at the nose: a straight crossing of ${degrees(angle)}° needs a radius of at most ${(gauge / versine(angle) - gauge / 2).toFixed(4)} m.`,
    );
  }
  const run = Math.max(0, left) / sin(angle);
  const elements = [straight(front), arc(radius, way * angle), straight(run + heel)];
  return measured(elements, outer * sin(angle) + run * cos(angle), angle, angle, front, radius);
}

/** A crossing angle may be computed from the radius: how far, as a share of the gauge, rounding may put the nose before the end of the curve. */
const ANGLE_ROUNDING = 1e-9;

function measured(
  elements: readonly PlanElement[],
  lead: number,
  atNose: number,
  angle: number,
  front: number,
  radius: number,
): Turnout {
  const run = elements[2]?.length ?? 0;
  return {
    elements: elements.filter((element) => element.length > 0),
    lead,
    through: front + radius * sin(angle) + run * cos(angle),
    diverging: elements.reduce((sum, element) => sum + element.length, 0),
    crossingAngle: atNose,
    angle,
    offset: radius * versine(angle) + run * sin(angle),
  };
}

export interface Crossover {
  /** From the front joint of one turnout to that of the other. */
  readonly elements: readonly PlanElement[];
  /** Straight from the end of one curve to the start of the other, m. */
  readonly straight: number;
  /** Between the front joints along the tracks, m. */
  readonly along: number;
}

/**
 * A crossover between parallel straight tracks `spacing` apart, m, of two like turnouts: out along one curve, straight at the angle of
 * the crossing, back along the other. Throws RangeError when the turnout has no straight crossing, or when the curves alone
 * already take more than the spacing.
 */
export function crossover(spec: TurnoutSpec, spacing: number): Crossover {
  const angle = spec.crossingAngle;
  if (angle === undefined)
    throw new RangeError('A crossover needs turnouts with straight crossings: give their angle.');
  turnout(spec);
  const { radius, front } = spec;
  const curves = 2 * radius * versine(angle);
  if (!(spacing >= curves)) {
    throw new RangeError(
      `Two curves of ${radius} m to the crossing angle take ${curves.toFixed(4)} m sideways, more than the ${spacing} m between the tracks.`,
    );
  }
  const middle = (spacing - curves) / sin(angle);
  const turn = spec.hand === 'left' ? angle : -angle;
  const elements = [straight(front), arc(radius, turn), straight(middle), arc(radius, -turn), straight(front)];
  return {
    elements: elements.filter((element) => element.length > 0),
    straight: middle,
    along: 2 * front + 2 * radius * sin(angle) + (middle * sin(angle)) / tan(angle),
  };
}
