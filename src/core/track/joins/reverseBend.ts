import { brent, cos, sin } from '../../math/index.ts';
import { straight } from '../plan/elements.ts';
import type { PlanElement } from '../types.ts';
import { bendElements, bendReach } from './easedBend.ts';

/** Track that leaves one line and takes up another beside it. Lengths m, angle rad. */
export interface ReverseBend {
  readonly elements: readonly PlanElement[];
  /** Radius used: the one asked for, or a greater one where easements alone make the bends. */
  readonly radius: number;
  /** How far it turns, and how much of the lines it takes. */
  readonly angle: number;
  readonly along: number;
}

/**
 * An S of two like bends, eased at all four ends and with `middle` m of straight between, from a line to the parallel one `offset`
 * m to its left (negative: right). Where the offset is too small for the radius the bends are all easement, and of the greater
 * radius that fits. Throws RangeError when the offset needs more than a right angle, or is 0.
 */
export function reverseBend(offset: number, radius: number, ease: number, middle: number): ReverseBend {
  const aside = Math.abs(offset);
  if (!(aside > 0) || !(radius > 0) || !(ease >= 0) || !(middle >= 0)) {
    throw new RangeError('A reverse bend needs an offset, a radius, and lengths of 0 or more.');
  }
  const reach = (at: number, angle: number): number => 2 * bendReach(at, ease, angle).aside + middle * sin(angle);
  const least = ease / radius;
  const most = Math.PI / 2;
  if (least > most || reach(radius, most) < aside) {
    const gives = least > most ? 0 : reach(radius, most);
    throw new RangeError(
      `An S of radius ${radius} m reaches ${gives.toFixed(4)} m aside before it turns through a right angle, not ${aside} m.`,
    );
  }
  let used = radius;
  let angle = least;
  if (reach(radius, least) <= aside) angle = brent((turn) => reach(radius, turn) - aside, least, most);
  else {
    // All easement: the turn is what the easements give, and falls with curvature to nothing.
    const curvature = brent((k) => (k === 0 ? 0 : reach(1 / k, ease * k)) - aside, 0, 1 / radius);
    used = 1 / curvature;
    angle = ease * curvature;
  }
  const turn = Math.sign(offset) * angle;
  const bend = { radius: used, easeIn: ease, easeOut: ease };
  const chain = [...(bendElements(bend, turn) ?? []), straight(middle), ...(bendElements(bend, -turn) ?? [])];
  return {
    elements: chain.filter((element) => element.length > 0),
    radius: used,
    angle,
    along: 2 * bendReach(used, ease, angle).ahead + middle * cos(angle),
  };
}
