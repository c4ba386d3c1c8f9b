import { asin, sin } from '../../math/index.ts';
import { couplerPivot, type End } from '../../stock/index.ts';
import type { Vehicle } from '../../stock/types.ts';
import { standardGravity } from '../../units/index.ts';
import { contactFaces, contactLift } from '../heads/endLift.ts';
import { at, rowLength, standingsOf } from '../moments/standings.ts';
import type { Frame, RiskContext } from '../types.ts';
import { wheelPlay, wheelPlayTolerance } from './wheelPlay.ts';

/** What two coupling forces, the speed and the lean of the track do to one vehicle. N and N·m; to the left and counter-clockwise positive. */
export interface SideForces {
  /** At the front and at the rear coupling, square to the body. */
  frontEnd: number;
  rearEnd: number;
  /** The same on the front and on the rear running gear, by levers. They add up to the same. */
  frontGear: number;
  rearGear: number;
  /** With which a coupling carried by a bogie turns that bogie. */
  frontCouple: number;
  rearCouple: number;
  /** What speed and lean press aside at the height of the mass, by what of the mass is over each running gear. */
  frontMass: number;
  rearMass: number;
  /**
   * What stands on each running gear, square to the rail: weight and the speed on canted track, less what the couplings lift, and what couplings and
   * traction move of it from end to end.
   */
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
  frontMass: 0,
  rearMass: 0,
  frontLoad: 0,
  rearLoad: 0,
});

/** An end that could stand clear of the rail still counts as this share of its weight, so that what it bears is never divided by nothing. */
export const leastLoad = 0.01;

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

function endingOf(vehicle: Vehicle, end: End, play: number): Ending {
  const { pivotSpacing, bogies, rigidWheelbase } = vehicle;
  const { coupling } = vehicle[end];
  const { ahead, up } = couplerPivot(vehicle, end);
  const onBogie = coupling.mount === 'bogie' && bogies;
  const gear = ((end === 'front' ? 1 : -1) * pivotSpacing) / 2;
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

/** Sideways forces of a trial's vehicles: `look` at one, then `write` for every pair of coupling forces to judge. */
export interface SideForcesOf {
  /** Curvature under the front and the rear running point of a vehicle looked at, 1/m. */
  frontCurvature(vehicle: number): number;
  rearCurvature(vehicle: number): number;
  /** Takes in how a vehicle and its couplings stand at a posed frame. */
  look(frame: Frame, vehicle: number): void;
  /**
   * Writes what a force at the front and one at the rear (N, draft positive, 0 without a joint) do to a vehicle looked at. `level`: as if the
   * track had no cant there.
   */
  write(vehicle: number, front: number, rear: number, skew: -1 | 0 | 1, out: SideForces, level?: boolean): void;
}

/**
 * Sideways forces of couplings on the running gear, from the real line between the pivots and not from length over radius: draft F turned by ψ against the
 * body pulls with F·sin ψ. Levers about the other gear share it out. A coupling on a bogie bears on that bogie alone and turns it besides. A line of pivots
 * that rises by e against the body lifts with F·e; pushed, leaning contact faces may lift with F·tan(β - φ) as well.
 *
 * `skew` adds what the play between wheels and rails makes of a push: this vehicle and its neighbours stand askew from rail to rail
 * (1: this one turned to the left), each the same way, which turns every drawbar between them the other way. In draft a train pulls itself straight and play counts for nothing.
 *
 * `plays` are the play of the wheels of each vehicle, m, where it is not to be the usual one; `speedFactor` 0 judges the same moment at rest.
 */
export function sideForces(context: RiskContext, plays?: readonly number[], speedFactor: 0 | 1 = 1): SideForcesOf {
  if (plays !== undefined || speedFactor === 0) return makeSideForces(context, plays, speedFactor);
  let usual = known.get(context);
  if (usual === undefined) {
    usual = makeSideForces(context, plays, speedFactor);
    known.set(context, usual);
  }
  return usual;
}

/** The same with the least and with the most play that the wheels may have. */
export function sideForcesOfPlay(context: RiskContext): {
  readonly snuggest: SideForcesOf;
  readonly loosest: SideForcesOf;
} {
  const withPlay = (way: -1 | 1): SideForcesOf =>
    sideForces(
      context,
      context.train.vehicles.map((vehicle) => wheelPlay(vehicle) + way * wheelPlayTolerance(vehicle)),
    );
  return { snuggest: withPlay(-1), loosest: withPlay(1) };
}

/** The usual ones of each trial: all sideways risks share them. */
const known = new WeakMap<RiskContext, SideForcesOf>();

/** Two ends, each against body and carrier, askew to the right, not at all, and to the left. */
const sinesPerVehicle = 12;

function makeSideForces(context: RiskContext, plays: readonly number[] | undefined, speedFactor: 0 | 1): SideForcesOf {
  const { vehicles } = context.train;
  const playOf = plays ?? vehicles.map(wheelPlay);
  const fronts = vehicles.map((vehicle, i) => endingOf(vehicle, 'front', playOf[i]));
  const rears = vehicles.map((vehicle, i) => endingOf(vehicle, 'rear', playOf[i]));
  /** What a push of 1 N lifts by the leaning faces of each joint, N. */
  const facesLift = Float64Array.from(vehicles.slice(1), (trailing, j) => {
    const { tilt, friction } = contactFaces(vehicles[j].rear.coupling, trailing.front.coupling);
    return contactLift(1, tilt, friction);
  });
  const standings = standingsOf(context);
  const { rows } = standings;
  /** Sines that hold for a frame, worked out when first asked for: NaN until then. By vehicle, end, body or carrier, and way askew. */
  const sines = new Float64Array(vehicles.length * sinesPerVehicle).fill(Number.NaN);
  const frames = new Array<Frame | null>(vehicles.length).fill(null);
  const indices = new Int32Array(vehicles.length).fill(-1);

  /** Sine of the angle from a body (or what carries the coupling) to the line of pivots, with the train standing askew one way or the other or not at all. */
  const sineOf = (vehicle: number, rear: 0 | 1, carrier: 0 | 1, askew: -1 | 0 | 1): number => {
    const place = vehicle * sinesPerVehicle + (2 * rear + carrier) * 3 + askew + 1;
    if (!Number.isNaN(sines[place])) return sines[place];
    const row = vehicle * rowLength;
    const { aside, bodySkew, bogieSkew } = rear === 0 ? fronts[vehicle] : rears[vehicle];
    const line =
      carrier === 0 ? (rear === 0 ? at.frontLine : at.rearLine) : rear === 0 ? at.frontCarrier : at.rearCarrier;
    let fold = 0;
    if (askew !== 0) {
      const mate = rear === 0 ? rears[vehicle - 1] : fronts[vehicle + 1];
      fold = askew * turnOf(aside + mate.aside, rows[row + (rear === 0 ? at.frontPins : at.rearPins)]);
    }
    sines[place] = sin(rows[row + line] - fold - askew * (carrier === 0 ? bodySkew : bogieSkew));
    return sines[place];
  };

  return {
    frontCurvature: (vehicle) => rows[vehicle * rowLength + at.frontCurvature],
    rearCurvature: (vehicle) => rows[vehicle * rowLength + at.rearCurvature],
    look(frame, vehicle) {
      standings.look(frame, vehicle);
      if (indices[vehicle] === frame.index && frames[vehicle] === frame) return;
      indices[vehicle] = frame.index;
      frames[vehicle] = frame;
      sines.fill(Number.NaN, vehicle * sinesPerVehicle, (vehicle + 1) * sinesPerVehicle);
    },
    write(index, pulled, trailed, skew, out, level = false) {
      const { mass, massAhead, massHeight, pivotSpacing } = vehicles[index];
      const row = index * rowLength;
      const ahead = fronts[index];
      const behind = rears[index];
      out.frontEnd = 0;
      out.frontCouple = 0;
      if (pulled !== 0) {
        const askew = pulled < 0 ? skew : 0;
        out.frontEnd = pulled * sineOf(index, 0, 0, askew);
        if (ahead.bogieArm !== 0) out.frontCouple = ahead.bogieArm * pulled * sineOf(index, 0, 1, askew);
      }
      out.rearEnd = 0;
      out.rearCouple = 0;
      if (trailed !== 0) {
        const askew = trailed < 0 ? skew : 0;
        out.rearEnd = -trailed * sineOf(index, 1, 0, askew);
        if (behind.bogieArm !== 0) out.rearCouple = -behind.bogieArm * trailed * sineOf(index, 1, 1, askew);
      }
      const frontArm = 0.5 + ahead.at / pivotSpacing;
      const rearArm = 0.5 + behind.at / pivotSpacing;
      out.frontGear = out.frontEnd * frontArm + out.rearEnd * rearArm;
      out.rearGear = out.frontEnd + out.rearEnd - out.frontGear;

      const lean = rows[row + at.lean];
      const square = level ? rows[row + at.square] / lean : rows[row + at.square];
      const upright = level ? 1 : lean;
      const leftward = level ? 0 : rows[row + at.leftward];
      const speedSquared = speedFactor * rows[row + at.speedSquared];
      const frontShare = 0.5 + massAhead / pivotSpacing;
      const frontMass = mass * frontShare;
      const rearMass = mass - frontMass;
      const frontWhirl = frontMass * speedSquared * rows[row + at.frontCurvature];
      const rearWhirl = rearMass * speedSquared * rows[row + at.rearCurvature];
      out.frontMass = frontMass * standardGravity * leftward - frontWhirl * upright;
      out.rearMass = rearMass * standardGravity * leftward - rearWhirl * upright;

      const weight = mass * standardGravity * square;
      let frontUp = 0;
      let rearUp = 0;
      // What the rail does not take at its own height, the mass takes at its: in a blow most of it. Drag at the rail is left out.
      let couple = -rows[row + at.traction] * massHeight;
      if (pulled !== 0) {
        frontUp = pulled * rows[row + at.frontRise] + (pulled < 0 ? -pulled * facesLift[index - 1] : 0);
        couple += pulled * (ahead.height - massHeight) * rows[row + at.frontAlong];
      }
      if (trailed !== 0) {
        rearUp = -trailed * rows[row + at.rearRise] + (trailed < 0 ? -trailed * facesLift[index] : 0);
        couple -= trailed * (behind.height - massHeight) * rows[row + at.rearAlong];
      }
      // On cant that leans in, speed presses on the rails as well.
      const all = weight + (frontWhirl + rearWhirl) * leftward - frontUp - rearUp;
      const load =
        weight * frontShare + frontWhirl * leftward - frontUp * frontArm - rearUp * rearArm + couple / pivotSpacing;
      const least = leastLoad * weight;
      const borne = Math.max(all, 2 * least);
      out.frontLoad = Math.min(Math.max(load, least), borne - least);
      out.rearLoad = borne - out.frontLoad;
    },
  };
}

/** Turn (rad) of a drawbar whose ends stand that far aside of each other (m). */
const turnOf = (aside: number, length: number): number => asin(Math.min(1, aside / Math.max(length, aside)));
