import { atan2, cos } from '../../math/index.ts';
import type { Frame, RiskContext } from '../types.ts';
import { curvatureAt } from '../wheels/curvatureAt.ts';

/**
 * Columns of a row that says how one vehicle stands at a frame. Kept as one row of numbers a vehicle, since every sideways risk reads them and numbers in
 * closures are made anew at each change.
 */
export const at = {
  /** Line of pivots against the body and against what carries the coupling, in plan, rad; cosine of the first. */
  frontLine: 0,
  rearLine: 1,
  frontCarrier: 2,
  rearCarrier: 3,
  frontAlong: 4,
  rearAlong: 5,
  /** Rise of the line against the body, for each metre of it, and its length, m. */
  frontRise: 6,
  rearRise: 7,
  frontPins: 8,
  rearPins: 9,
  /** Under the running points, 1/m. */
  frontCurvature: 10,
  rearCurvature: 11,
  /** Share of the weight that presses square on the rails, and that draws to the left; cosine of the lean. */
  square: 12,
  leftward: 13,
  lean: 14,
  /** (m/s)²; N at the rail. */
  speedSquared: 15,
  traction: 16,
} as const;

export const rowLength = 17;

/** How the vehicles of a trial stand, each looked at once a frame. */
export interface Standings {
  readonly rows: Float64Array;
  look(frame: Frame, vehicle: number): void;
}

/** One for each trial: all sideways risks share it. */
const known = new WeakMap<RiskContext, Standings>();

/** The standings of a trial, the same object every time they are asked for. */
export function standingsOf(context: RiskContext): Standings {
  let standings = known.get(context);
  if (standings === undefined) {
    standings = makeStandings(context);
    known.set(context, standings);
  }
  return standings;
}

/** Angle in plan from one direction to another, counter-clockwise, rad. */
const planTurn = (a: readonly [number, number, number], b: readonly [number, number, number]): number =>
  atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);

function makeStandings({ train: { vehicles }, run, path: { track } }: RiskContext): Standings {
  const rows = new Float64Array(vehicles.length * rowLength);
  const engineOf = Int32Array.from(vehicles, (_, i) => run.locomotives.indexOf(i));
  const frontOnBogie = vehicles.map(({ bogies, front }) => bogies && front.coupling.mount === 'bogie');
  const rearOnBogie = vehicles.map(({ bogies, rear }) => bogies && rear.coupling.mount === 'bogie');
  /** Frame each row was made from: the object, which is posed anew, and its index. */
  const frames = new Array<Frame | null>(vehicles.length).fill(null);
  const indices = new Int32Array(vehicles.length).fill(-1);
  return {
    rows,
    look(frame, vehicle) {
      if (indices[vehicle] === frame.index && frames[vehicle] === frame) return;
      indices[vehicle] = frame.index;
      frames[vehicle] = frame;
      const row = vehicle * rowLength;
      const placement = frame.placements[vehicle];
      const engine = engineOf[vehicle];
      rows[row + at.traction] = engine < 0 ? 0 : run.railForce[frame.index * run.locomotives.length + engine];
      rows[row + at.lean] = placement.roll === 0 ? 1 : cos(placement.roll);
      rows[row + at.square] = placement.up[2];
      rows[row + at.leftward] = 0 - placement.left[2];
      const speed = run.speed[frame.index * run.vehicles + vehicle];
      rows[row + at.speedSquared] = speed * speed;
      rows[row + at.frontCurvature] = curvatureAt(track, placement.frontChainage);
      rows[row + at.rearCurvature] = curvatureAt(track, placement.rearChainage);
      if (vehicle > 0) {
        const joint = frame.joints[vehicle - 1];
        const turned = frontOnBogie[vehicle] ? planTurn(placement.ahead, placement.frontTangent) : 0;
        rows[row + at.frontCarrier] = joint.swingTrailing;
        rows[row + at.frontLine] = joint.swingTrailing + turned;
        rows[row + at.frontAlong] = cos(joint.swingTrailing + turned);
        rows[row + at.frontRise] = joint.rise - placement.ahead[2];
        rows[row + at.frontPins] = joint.pinDistance;
      }
      if (vehicle + 1 < vehicles.length) {
        const joint = frame.joints[vehicle];
        const turned = rearOnBogie[vehicle] ? planTurn(placement.ahead, placement.rearTangent) : 0;
        rows[row + at.rearCarrier] = joint.swingLeading;
        rows[row + at.rearLine] = joint.swingLeading + turned;
        rows[row + at.rearAlong] = cos(joint.swingLeading + turned);
        rows[row + at.rearRise] = joint.rise - placement.ahead[2];
        rows[row + at.rearPins] = joint.pinDistance;
      }
    },
  };
}
