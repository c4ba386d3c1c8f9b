import { asin, atan2, cos, hypot, sin } from '../../math/index.ts';
import { wrappedAngle } from '../angle.ts';
import { straight } from '../plan/elements.ts';
import type { PlanElement } from '../types.ts';
import { ANGLE_ROUNDING, bendElements, easedEnd } from './easedBend.ts';
import { fillet } from './fillet.ts';
import { chainLength, type Pose } from './pose.ts';

/** One way to lay track between two places. */
export interface Connection {
  /** L, R and S: bends left and right, straights. */
  readonly kind: 'S' | 'SLS' | 'SRS' | 'LSL' | 'LSR' | 'RSL' | 'RSR';
  readonly elements: readonly PlanElement[];
  readonly length: number;
}

export interface ConnectSpec {
  readonly radius: number;
  /** Of every easement, m; 0 for none. */
  readonly easement: number;
  /** Least straight between two bends, m. */
  readonly straight: number;
}

/** A straight shorter than 0 by less than this, m, is 0; a place this far off a line is on it. */
const LENGTH_ROUNDING = 1e-12;

/**
 * Every connection from one pose to another, shortest first: straight, bend, straight; and bend, straight, bend, both ways round. A bend with
 * easements is the arc of a circle of radius R + shift that its tangents pass `shiftAt` before and after, so the
 * common tangents of two such circles give the second kind in closed form. Bends turn through less than one turn more than their
 * easements need. Empty when nothing fits with this radius and these easements. Throws RangeError for a radius that is not positive or an easement too long for it.
 */
export function connectPoses(from: Pose, to: Pose, spec: ConnectSpec): Connection[] {
  const end = easedEnd(spec.radius, spec.easement);
  const found = [...oneBend(from, to, spec)];
  for (const first of [1, -1] as const) {
    for (const last of [1, -1] as const) {
      const elements = twoBends(from, to, spec, end, first, last);
      const hand = (way: 1 | -1) => (way === 1 ? 'L' : 'R');
      if (elements !== null) {
        found.push({ kind: `${hand(first)}S${hand(last)}`, elements, length: chainLength(elements) });
      }
    }
  }
  return found.sort((p, q) => p.length - q.length);
}

/** On one line, or by one bend about the intersection of the two lines. */
function* oneBend(from: Pose, to: Pose, { radius, easement }: ConnectSpec): Generator<Connection> {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const ahead = dx * cos(from.heading) + dy * sin(from.heading);
  const aside = dy * cos(from.heading) - dx * sin(from.heading);
  const turn = wrappedAngle(to.heading - from.heading);
  const across = sin(turn);
  if (Math.abs(turn) <= ANGLE_ROUNDING) {
    if (Math.abs(aside) <= LENGTH_ROUNDING && ahead > 0) {
      yield { kind: 'S', elements: [straight(ahead)], length: ahead };
    }
    return;
  }
  if (Math.PI - Math.abs(turn) <= ANGLE_ROUNDING) return;
  const corner = fillet({ radius, easeIn: easement, easeOut: easement }, turn);
  const after = aside / across - corner.tangentOut;
  const before = ahead - (aside / across) * cos(turn) - corner.tangentIn;
  if (corner.elements === null || before < -LENGTH_ROUNDING || after < -LENGTH_ROUNDING) return;
  const chain = [straight(Math.max(0, before)), ...corner.elements, straight(Math.max(0, after))];
  const elements = chain.filter((element) => element.length > 0);
  yield { kind: turn > 0 ? 'SLS' : 'SRS', elements, length: chainLength(elements) };
}

function twoBends(
  from: Pose,
  to: Pose,
  { radius, easement, straight: least }: ConnectSpec,
  end: ReturnType<typeof easedEnd>,
  first: 1 | -1,
  last: 1 | -1,
): PlanElement[] | null {
  const { shift, shiftAt } = end;
  const big = radius + shift;
  const centre = ({ x, y, heading }: Pose, ahead: number, way: 1 | -1) => ({
    x: x + ahead * cos(heading) - way * big * sin(heading),
    y: y + ahead * sin(heading) + way * big * cos(heading),
  });
  const a = centre(from, shiftAt, first);
  const b = centre(to, -shiftAt, last);
  const apart = hypot(b.x - a.x, b.y - a.y);
  const towards = atan2(b.y - a.y, b.x - a.x);
  let heading = towards;
  let tangent = apart;
  if (first !== last) {
    // The inner tangent: it crosses the line of centres at the angle whose sine is 2(R + shift) over their distance.
    if (!(apart >= 2 * big)) return null;
    heading = towards + first * asin((2 * big) / apart);
    tangent = Math.sqrt((apart - 2 * big) * (apart + 2 * big));
  }
  const middle = tangent - 2 * shiftAt;
  if (middle < least - LENGTH_ROUNDING) return null;
  const turning = (way: 1 | -1, by: number): number => {
    const needed = 2 * end.angle;
    let turn = (way * by) % (2 * Math.PI);
    while (turn < needed - ANGLE_ROUNDING) turn += 2 * Math.PI;
    while (turn >= needed + 2 * Math.PI - ANGLE_ROUNDING) turn -= 2 * Math.PI;
    return way * turn;
  };
  const bend = { radius, easeIn: easement, easeOut: easement };
  const out = bendElements(bend, turning(first, heading - from.heading));
  const back = bendElements(bend, turning(last, to.heading - heading));
  if (out === null || back === null) return null;
  return [...out, straight(Math.max(0, middle)), ...back].filter((element) => element.length > 0);
}
