import { asin, atan2, cos, sin } from '../math/index.ts';
import { couplerPivot, type End } from '../stock/index.ts';
import type { Vehicle } from '../stock/types.ts';
import { standardGravity } from '../units/index.ts';
import type { Frame, RiskContext } from './types.ts';
import { wheelPlay } from './wheelPlay.ts';

/** What two coupling forces do to one vehicle. N and N·m; to the left and counter-clockwise positive. */
export interface SideForces {
  /** At the front and at the rear coupling, square to the body. */
  frontEnd: number;
  rearEnd: number;
  /** On the front and on the rear running gear, by levers. They add up to the same. */
  frontGear: number;
  rearGear: number;
  /** With which a coupling carried by a bogie turns that bogie. */
  frontCouple: number;
  rearCouple: number;
  /** What stands on each running gear, square to the rail: weight, and what couplings and traction move of it from end to end. */
  frontLoad: number;
  rearLoad: number;
}

export const newSideForces = (): SideForces => ({
  frontEnd: 0,
  rearEnd: 0,
  frontGear: 0,
  rearGear: 0,
  frontCouple: 0,
  rearCouple: 0,
  frontLoad: 0,
  rearLoad: 0,
});

/** An end that could stand clear of the rail still counts as this share of its weight, so that what it bears is never divided by nothing. */
const leastLoad = 0.01;

/** What of an end stays the same all along the route. Lengths m, angles rad. */
interface Ending {
  /** Where its side force comes on the body ahead of the origin: the pivot, or the middle of the bogie that carries it. */
  readonly at: number;
  /** From the middle of the carrying bogie ahead to the pivot; 0 on the body. */
  readonly bogieArm: number;
  readonly onBogie: boolean;
  readonly height: number;
  /** How far aside the pivot stands, and how far body and bogie stand askew, when wheels lie against opposite rails. */
  readonly aside: number;
  readonly bodySkew: number;
  readonly bogieSkew: number;
}

function endingOf(vehicle: Vehicle, end: End): Ending {
  const { pivotSpacing, bogies, rigidWheelbase, gauge } = vehicle;
  const { coupling } = vehicle[end];
  const { ahead, up } = couplerPivot(vehicle, end);
  const onBogie = coupling.mount === 'bogie' && bogies;
  const gear = ((end === 'front' ? 1 : -1) * pivotSpacing) / 2;
  const play = wheelPlay(gauge);
  const bodySkew = (2 * play) / pivotSpacing;
  const bogieSkew = (2 * play) / rigidWheelbase;
  return {
    at: onBogie ? gear : ahead,
    bogieArm: onBogie ? ahead - gear : 0,
    onBogie,
    height: up,
    aside: onBogie ? play + bogieSkew * Math.abs(ahead - gear) : bodySkew * Math.abs(ahead),
    bodySkew,
    bogieSkew,
  };
}

/** Angle in plan from one direction to another, counter-clockwise, rad. */
const planTurn = (a: readonly [number, number, number], b: readonly [number, number, number]): number =>
  atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);

/**
 * Sideways forces of couplings on the running gear, from the real line between the pivots and not from length over radius: draft F turned by ψ against the
 * body pulls with F·sin ψ. Levers about the other gear share it out. A coupling on a bogie bears on that bogie alone and turns it besides.
 *
 * `skew` adds what the play between wheels and rails makes of a push: this vehicle and its neighbours stand askew from rail to rail
 * (1: this one turned to the left), each the same way, which turns every drawbar between them the other way. In draft a train pulls itself straight and play counts for nothing.
 */
export function sideForces({ train: { vehicles }, run }: RiskContext) {
  const engineOf = vehicles.map((_, i) => run.locomotives.indexOf(i));
  const fronts = vehicles.map((vehicle) => endingOf(vehicle, 'front'));
  const rears = vehicles.map((vehicle) => endingOf(vehicle, 'rear'));
  const lineAngle = { front: 0, rear: 0 };
  const carrierAngle = { front: 0, rear: 0 };
  const drawbarTurn = { front: 0, rear: 0 };
  let index = 0;
  let traction = 0;
  let level = 1;

  return {
    /** Takes in how a vehicle and its couplings stand at a posed frame. */
    look(frame: Frame, vehicle: number): void {
      index = vehicle;
      const placement = frame.placements[vehicle];
      const engine = engineOf[vehicle];
      traction = engine < 0 ? 0 : run.railForce[frame.index * run.locomotives.length + engine];
      level = placement.up[2];
      if (vehicle > 0) {
        const joint = frame.joints[vehicle - 1];
        const turned = fronts[vehicle].onBogie ? planTurn(placement.ahead, placement.frontTangent) : 0;
        carrierAngle.front = joint.swingTrailing;
        lineAngle.front = joint.swingTrailing + turned;
        drawbarTurn.front = turnOf(rears[vehicle - 1].aside + fronts[vehicle].aside, joint.pinDistance);
      }
      if (vehicle + 1 < vehicles.length) {
        const joint = frame.joints[vehicle];
        const turned = rears[vehicle].onBogie ? planTurn(placement.ahead, placement.rearTangent) : 0;
        carrierAngle.rear = joint.swingLeading;
        lineAngle.rear = joint.swingLeading + turned;
        drawbarTurn.rear = turnOf(rears[vehicle].aside + fronts[vehicle + 1].aside, joint.pinDistance);
      }
    },
    /** Writes what a force at the front and one at the rear (N, draft positive, 0 without a joint) do to the vehicle looked at. */
    write(front: number, rear: number, skew: -1 | 0 | 1, out: SideForces): void {
      const { mass, massAhead, massHeight, pivotSpacing } = vehicles[index];
      const ahead = fronts[index];
      const behind = rears[index];
      const frontSkew = front < 0 ? skew : 0;
      const rearSkew = rear < 0 ? skew : 0;
      out.frontEnd = front * sin(lineAngle.front - frontSkew * (drawbarTurn.front + ahead.bodySkew));
      out.rearEnd = -rear * sin(lineAngle.rear - rearSkew * (drawbarTurn.rear + behind.bodySkew));
      out.frontGear = out.frontEnd * (0.5 + ahead.at / pivotSpacing) + out.rearEnd * (0.5 + behind.at / pivotSpacing);
      out.rearGear = out.frontEnd + out.rearEnd - out.frontGear;
      out.frontCouple =
        ahead.bogieArm * front * sin(carrierAngle.front - frontSkew * (drawbarTurn.front + ahead.bogieSkew));
      out.rearCouple =
        -behind.bogieArm * rear * sin(carrierAngle.rear - rearSkew * (drawbarTurn.rear + behind.bogieSkew));
      const all = mass * standardGravity * level;
      // What the rail does not take at its own height, the mass takes at its: in a blow most of it. Drag at the rail is left out.
      const couple =
        front * (ahead.height - massHeight) * cos(lineAngle.front) -
        rear * (behind.height - massHeight) * cos(lineAngle.rear) -
        traction * massHeight;
      const load = all * (0.5 + massAhead / pivotSpacing) + couple / pivotSpacing;
      out.frontLoad = Math.min(Math.max(load, leastLoad * all), (1 - leastLoad) * all);
      out.rearLoad = all - out.frontLoad;
    },
  };
}

/** Turn (rad) of a drawbar whose ends stand that far aside of each other (m). */
const turnOf = (aside: number, length: number): number => asin(Math.min(1, aside / Math.max(length, aside)));
