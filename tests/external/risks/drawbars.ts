import type { RiskId } from '../../../src/core/risks/types.ts';
import type { Solved } from '../../sim/solved.ts';
import { along, angle, apart, type Bend, type Body, bisect, bodyAt, type Point, pointOn } from './bodies.ts';

const g = 9.80665;

/** A vehicle as its drawbars see it, mm: between running points, and from its middle to the pins at either end. */
export interface Shape {
  readonly a: number;
  readonly pin: number;
}

/**
 * Turn of both drawbars of the vehicle in question against its body, rad, and their lengths in plan, mm, at the places that the run gives: in plan, where a length along the grade is less by half of its square, and pins
 * `up` mm on a body that leans back.
 */
export function drawbars(
  { run, worst }: Solved,
  risk: RiskId,
  bends: readonly Bend[],
  grade: number,
  up: number,
  shapes: readonly Shape[],
) {
  const { frame, subject } = worst(risk);
  const level = Math.cos(Math.atan(grade));
  const lean = -up * Math.sin(Math.atan(grade));
  /** A body by the chainage midway between its pivots. */
  const body = (vehicle: number, { a }: Shape): Body => {
    const middle = run.chainage[frame * run.vehicles + vehicle] * 1000;
    const length = a * level;
    const half = bisect(
      (x) => apart(pointOn(bends, middle + x), pointOn(bends, middle - x)) - length,
      0.45 * length,
      0.6 * length,
    );
    return bodyAt(bends, middle + half, length);
  };
  const pinOf = (own: Body, { a, pin }: Shape, end: 1 | -1): Point => along(own, a * level, end * pin * level + lean);
  const [before, own, behind] = shapes;
  const vehicle = body(subject, own);
  const [ahead, after] = [pinOf(body(subject - 1, before), before, -1), pinOf(body(subject + 1, behind), behind, 1)];
  const [front, rear] = [pinOf(vehicle, own, 1), pinOf(vehicle, own, -1)];
  return {
    drawn: angle([ahead[0] - front[0], ahead[1] - front[1]]) - angle(vehicle.ahead),
    trailed: angle([rear[0] - after[0], rear[1] - after[1]]) - angle(vehicle.ahead),
    lengths: [apart(ahead, front), apart(rear, after)],
    joint: frame * (run.vehicles - 1) + subject,
    speed: run.speed[frame * run.vehicles + subject],
  };
}

/** Play of a wheelset from rail to rail, mm: 16.5 less 15.2 and 0.8, the middles of NEM 310 (2009). */
export const play = 16.5 - 15.2 - 0.8;

/**
 * Sideways forces on the front and the rear running gear of a vehicle that is pushed at both ends, N, left positive, standing askew to the left (1), to the right (-1): a body turns by play/a, its pins stand play/a times their
 * distance aside, and the drawbars fold back by what both their pins stand aside over their length.
 */
export function pushed(
  bars: ReturnType<typeof drawbars>,
  buff: Float64Array,
  shapes: readonly Shape[],
  skew: 1 | -1,
): readonly [number, number] {
  const [before, own, behind] = shapes;
  const aside = ({ a, pin }: Shape): number => (play / a) * pin;
  const turn = (other: Shape, length: number): number =>
    skew * (Math.asin((aside(own) + aside(other)) / length) + play / own.a);
  const front = buff[bars.joint - 1] * Math.sin(bars.drawn - turn(before, bars.lengths[0]));
  const rear = -buff[bars.joint] * Math.sin(bars.trailed - turn(behind, bars.lengths[1]));
  // Levers about the other running gear.
  const near = 0.5 + own.pin / own.a;
  const far = 0.5 - own.pin / own.a;
  return [front * near + rear * far, front * far + rear * near];
}

/**
 * What stands on the front and on the rear running gear of a pushed vehicle, N: half the weight each, square to the grade, less and more by what the pushes at `up` mm, 22 mm up where the mass is, turn over `a` mm. A drawbar that
 * stands aslant pushes along the body with its cosine only.
 */
export function stands(
  bars: ReturnType<typeof drawbars>,
  buff: Float64Array,
  mass: number,
  grade: number,
  up: number,
  a: number,
): readonly [number, number] {
  const along = buff[bars.joint] * Math.cos(bars.trailed) - buff[bars.joint - 1] * Math.cos(bars.drawn);
  const moved = (along * (22 - up)) / a;
  const half = (mass * g * Math.cos(Math.atan(grade))) / 2;
  return [half + moved, half - moved];
}
