import { brent, cos, hypot, sin } from '../../math/index.ts';
import { transition } from '../plan/elements.ts';
import type { PlanElement } from '../types.ts';
import { chainEnd } from './pose.ts';

/** More turning than this, rad, in a clothoid between two circles is not sought: half a turn. */
const MOST_TURNING = Math.PI;

/** Signed gap of the circles at both ends of a clothoid, m: their clearance where they are nearest. */
function clearance(length: number, from: number, to: number): number {
  const end = chainEnd({ x: 0, y: 0, heading: 0 }, [transition(length, from, to)]);
  const [dx, dy] = [end.x - sin(end.heading) / to, end.y + cos(end.heading) / to - 1 / from];
  const apart = hypot(dx, dy);
  return from * to > 0 ? Math.abs(1 / from - 1 / to) - apart : apart - Math.abs(1 / from - 1 / to);
}

/**
 * The clothoid from a curve of curvature `from` to one of curvature `to`, 1/m, left positive, whose circles clear each other by
 * `gap` m: one inside the other when both turn the same way, side by side when they turn against each other. It exists and is one only
 * if they do clear each other, for the osculating circles of a clothoid never meet (Kneser); its length is near √(24·gap/|to - from|). Throws RangeError
 * when either is straight, they are equal, the gap is not positive, or the clothoid would turn through more than half a turn.
 */
export function compoundEasement(from: number, to: number, gap: number): PlanElement {
  if (from === 0 || to === 0 || from === to || !Number.isFinite(from + to)) {
    throw new RangeError(
      'A compound easement joins two curves of different curvature; from a straight use an easement.',
    );
  }
  if (!(gap > 0)) {
    throw new RangeError(
      `Circles that clear each other by ${gap} m have no clothoid between them: it must be more than 0.`,
    );
  }
  const sharpest = Math.max(Math.abs(from), Math.abs(to));
  const guess = Math.sqrt((24 * gap) / Math.abs(to - from));
  const longest = MOST_TURNING / sharpest;
  if (!(guess / 2 < longest) || clearance(longest, from, to) < gap) {
    throw new RangeError(`No clothoid of up to half a turn joins curves that clear each other by ${gap} m.`);
  }
  return transition(
    brent((length) => clearance(length, from, to) - gap, guess / 2, longest),
    from,
    to,
  );
}
