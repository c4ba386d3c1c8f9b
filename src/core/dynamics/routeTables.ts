import { hypot, sin } from '../math/index.ts';
import {
  axleLoads,
  drivenShareOn,
  jointGeometry,
  makeJoint,
  newJointGeometry,
  newPlacement,
  placeVehicle,
  referenceSpacing,
} from '../stock/index.ts';
import type { CarryingAxle, Train, Vehicle, VehicleEnd } from '../stock/types.ts';
import { chainageAtRail, railAt, type Track, trackPoint } from '../track/index.ts';
import { classesOf } from './classes.ts';
import { curveDragShare } from './curveDrag.ts';
import type { ForceModel } from './types.ts';

/**
 * What the route asks of each vehicle and each coupled pair, tabulated along the rail before the run.
 *
 * The run's coordinate is the rail distance σ of a vehicle's origin, not its chainage: speed is dσ/dt, and a vehicle's
 * height is a function of σ alone, so the work of gravity is exactly a difference of potentials. Between nodes the
 * solver interpolates linearly; the potential is the exact integral of that interpolation, so the energy account
 * closes in the tabulated world, which differs from the exact one by O(node²) (a few 1e-8 of grade at 2 mm).
 */
export interface RouteTables {
  /** σ of node 0 and distance between nodes, m. */
  readonly origin: number;
  readonly node: number;
  readonly nodes: number;
  /** Chainage at each node, m. */
  readonly chainage: Float64Array;
  /** Every vehicle class one after another; `VEHICLE_STRIDE` values a node: see the offsets below. */
  readonly vehicle: Float64Array;
  /** Offset into `vehicle` of each vehicle's class, by vehicle. */
  readonly vehicleAt: Int32Array;
  /** Height of the origin above node 0's, the integral of the tabulated sine, by class, same node grid, m. */
  readonly height: Float64Array;
  readonly heightAt: Int32Array;
  /**
   * What driven axles grip over what they would on level track without tyres, node by node of those vehicles that name their axles, one
   * class after another; `gripAt` is the offset by vehicle, -1 where it is the same everywhere.
   */
  readonly grip: Float64Array;
  readonly gripAt: Int32Array;
  /**
   * By joint class: pivot distance minus what it would be on straight track at the same spacing, less what guides lead
   * the heads out, m. Negative in curves where bodies stand across the arc: the joint is that much shorter.
   */
  readonly joint: Float64Array;
  readonly jointAt: Int32Array;
  /** Rail distance between the origins of coupled vehicles at free length on straight track, by joint, m. */
  readonly spacing: Float64Array;
}

/** Two vehicles coupled to each other. */
export interface Pair {
  readonly leading: Vehicle;
  readonly trailing: Vehicle;
}

/** Values a node: mean sine of the grade, mean cosine, curve drag as a share of weight, sine of half the subtended angle. */
export const VEHICLE_STRIDE = 4;

/** Spacing of nodes, m: a sixth of the shortest overhang met in practice; linear interpolation errs by node²/8 times curvature of the grade. */
const NODE = 0.002;

/**
 * Tabulates a route for a train between two rail distances.
 *
 * @param from lowest σ any vehicle's origin may reach, m
 * @param to highest, m
 * @param node distance between nodes, m; the run's own fine one when left out
 */
export function tabulateRoute(
  track: Track,
  train: Train,
  forces: ForceModel,
  from: number,
  to: number,
  node = NODE,
): RouteTables {
  return fillTables(
    track,
    train,
    forces,
    from,
    to,
    node,
    (kind, chainage, rows) => {
      tabulateVehicle(track, kind, forces, chainage, node, rows);
    },
    (pair, out) => {
      tabulatePair(track, pair.leading, pair.trailing, from, node, out);
    },
  );
}

/** Lays out the tables and fills them class by class: rows of a vehicle but for their height, columns of a pair. */
export function fillTables(
  track: Track,
  train: Train,
  forces: ForceModel,
  from: number,
  to: number,
  node: number,
  fillVehicle: (kind: Vehicle, chainage: Float64Array, rows: Float64Array) => void,
  fillPair: (pair: Pair, out: Float64Array) => void,
): RouteTables {
  const nodes = Math.ceil((to - from) / node) + 2;
  const vehicleClasses = classesOf(train.vehicles, (v) => v);
  const pairs = train.vehicles.slice(1).map((trailing, j): Pair => ({ leading: train.vehicles[j]!, trailing }));
  const pairClasses = classesOf(
    pairs,
    (p) => p,
    (p, q) => p.leading === q.leading && p.trailing === q.trailing,
  );

  const chainage = new Float64Array(nodes);
  for (let k = 0; k < nodes; k++) chainage[k] = chainageAtRail(track, from + k * node);

  const vehicle = new Float64Array(vehicleClasses.kinds.length * nodes * VEHICLE_STRIDE);
  const height = new Float64Array(vehicleClasses.kinds.length * nodes);
  vehicleClasses.kinds.forEach((kind, c) => {
    const rows = vehicle.subarray(c * nodes * VEHICLE_STRIDE, (c + 1) * nodes * VEHICLE_STRIDE);
    fillVehicle(kind, chainage, rows);
    sumHeights(rows, node, height.subarray(c * nodes, (c + 1) * nodes));
  });
  const sprung = vehicleClasses.kinds.flatMap((kind, c) =>
    kind.drive?.axles ? [{ c, kind, axles: kind.drive.axles }] : [],
  );
  const grip = new Float64Array(sprung.length * nodes);
  sprung.forEach(({ kind, axles }, g) => {
    tabulateGrip(track, kind, axles, forces, chainage, grip.subarray(g * nodes, (g + 1) * nodes));
  });
  const joint = new Float64Array(pairClasses.kinds.length * nodes);
  pairClasses.kinds.forEach((pair, c) => {
    fillPair(pair, joint.subarray(c * nodes, (c + 1) * nodes));
  });

  return {
    origin: from,
    node,
    nodes,
    chainage,
    vehicle,
    vehicleAt: Int32Array.from(vehicleClasses.of, (c) => c * nodes * VEHICLE_STRIDE),
    height,
    heightAt: Int32Array.from(vehicleClasses.of, (c) => c * nodes),
    grip,
    gripAt: Int32Array.from(vehicleClasses.of, (c) => {
      const g = sprung.findIndex((one) => one.c === c);
      return g < 0 ? -1 : g * nodes;
    }),
    joint,
    jointAt: Int32Array.from(pairClasses.of, (c) => c * nodes),
    spacing: Float64Array.from(pairs, (p) => referenceSpacing(p.leading, p.trailing)),
  };
}

/** Height above node 0 by the tabulated potential of vehicle `i` at σ, m: the exact integral of the interpolated sine. */
export function tabulatedHeight(tables: RouteTables, i: number, sigma: number): number {
  const x = (sigma - tables.origin) / tables.node;
  const k = Math.floor(x);
  const t = x - k;
  const at = (tables.vehicleAt[i] as number) + k * VEHICLE_STRIDE;
  const s0 = tables.vehicle[at] as number;
  const s1 = tables.vehicle[at + VEHICLE_STRIDE] as number;
  return (tables.height[(tables.heightAt[i] as number) + k] as number) + tables.node * t * (s0 + 0.5 * t * (s1 - s0));
}

/** Chainage at a rail distance, m: interpolated between nodes, where it is as good as straight (1e-10 m at 2 mm). */
export const chainageAt = (tables: RouteTables, sigma: number): number => between(tables, tables.chainage, 0, sigma);

/** Pivot distance of joint j less that on straight track, m, with the middle of its two origins at a rail distance. */
export const pivotShift = (tables: RouteTables, j: number, middle: number): number =>
  between(tables, tables.joint, tables.jointAt[j]!, middle);

/** What the driven axles of vehicle `i` grip at σ over what they would on level track without tyres. */
export const gripShareAt = (tables: RouteTables, i: number, sigma: number): number =>
  tables.gripAt[i]! < 0 ? 1 : between(tables, tables.grip, tables.gripAt[i]!, sigma);

/** A column of one value a node, from `offset` on, between its nodes. */
function between({ origin, node, nodes }: RouteTables, column: Float64Array, offset: number, sigma: number): number {
  const x = (sigma - origin) / node;
  const k = Math.min(Math.max(Math.floor(x), 0), nodes - 2);
  const from = column[offset + k]!;
  return from + (column[offset + k + 1]! - from) * (x - k);
}

/** Fills one class: sine from the exact placement's height of the centre of mass, cosine, curve drag, half-angle. */
function tabulateVehicle(
  track: Track,
  vehicle: Vehicle,
  forces: ForceModel,
  chainage: Float64Array,
  node: number,
  rows: Float64Array,
): void {
  const nodes = chainage.length;
  const placement = newPlacement();
  const point = trackPoint(track, 0);
  const z = new Float64Array(nodes);
  const between = betweenFaces(vehicle);
  for (let k = 0; k < nodes; k++) {
    placeVehicle(track, vehicle, chainage[k] as number, placement);
    z[k] = placement.origin[2] + vehicle.massAhead * placement.ahead[2];
    trackPoint(track, placement.frontChainage, point);
    const front = point.curvature;
    const frontCosine = 1 / hypot(1, point.grade);
    trackPoint(track, placement.rearChainage, point);
    const rear = point.curvature;
    const cosine = 0.5 * (frontCosine + 1 / hypot(1, point.grade));
    const row = k * VEHICLE_STRIDE;
    rows[row + 1] = cosine;
    rows[row + 2] = 0.5 * cosine * (curveDragShare(vehicle, front, forces) + curveDragShare(vehicle, rear, forces));
    rows[row + 3] = Math.abs(sin((between * (front + rear)) / 4));
  }
  for (let k = 0; k < nodes; k++) {
    const a = Math.max(k - 1, 0);
    const b = Math.min(k + 1, nodes - 1);
    rows[k * VEHICLE_STRIDE] = ((z[b] as number) - (z[a] as number)) / ((b - a) * node);
  }
}

/** The potential: the exact integral of the interpolated sine. */
function sumHeights(rows: Float64Array, node: number, height: Float64Array): void {
  for (let k = 1; k < height.length; k++) {
    const mean = 0.5 * ((rows[(k - 1) * VEHICLE_STRIDE] as number) + (rows[k * VEHICLE_STRIDE] as number));
    height[k] = (height[k - 1] as number) + node * mean;
  }
}

/**
 * Fills one engine's grip share: its axles stand on the profile along the rail, the frame on them as `axleLoads` says. The
 * cosine of the grade and the drawbar's pull are taken elsewhere.
 */
function tabulateGrip(
  track: Track,
  vehicle: Vehicle,
  axles: readonly CarryingAxle[],
  forces: ForceModel,
  chainage: Float64Array,
  out: Float64Array,
): void {
  const point = trackPoint(track, 0);
  const rise = new Float64Array(axles.length);
  const loads = new Float64Array(axles.length);
  for (let k = 0; k < out.length; k++) {
    const middle = trackPoint(track, chainage[k]!, point);
    const cosine = 1 / hypot(1, middle.grade);
    for (let a = 0; a < axles.length; a++) {
      rise[a] = trackPoint(track, chainage[k]! + axles[a]!.ahead * cosine, point).z;
    }
    axleLoads(axles, vehicle.mass * forces.gravity, rise, loads);
    out[k] = drivenShareOn(axles, loads);
  }
}

/** From contact face to contact face of a vehicle's couplings, m. */
export const betweenFaces = (vehicle: Vehicle): number =>
  vehicle.bodyLength + headBeyondBody(vehicle.front) + headBeyondBody(vehicle.rear);

/** How far a coupling's contact face stands beyond the body end, m. */
const headBeyondBody = ({ coupling }: VehicleEnd): number => coupling.reach - coupling.pivotInset;

/** Fills one pair class: the pivots' distance in space at free spacing, less the free length and what guides add to it, node by node of their middle. */
function tabulatePair(
  track: Track,
  leading: Vehicle,
  trailing: Vehicle,
  from: number,
  node: number,
  out: Float64Array,
): void {
  const half = 0.5 * referenceSpacing(leading, trailing);
  const free = makeJoint(leading.rear.coupling, trailing.front.coupling).freeLength;
  const a = newPlacement();
  const b = newPlacement();
  const geometry = newJointGeometry();
  for (let k = 0; k < out.length; k++) {
    const middle = from + k * node;
    placeVehicle(track, leading, chainageAtRail(track, middle + half), a);
    placeVehicle(track, trailing, chainageAtRail(track, middle - half), b);
    jointGeometry(leading, trailing, a, b, geometry);
    out[k] = geometry.pinDistance - geometry.lengthening - free;
  }
}

/** Range of σ a run may touch: from wholly behind its start to wholly past its finish, m. */
export function routeRange(track: Track, startRail: number, trainLength: number): { from: number; to: number } {
  const margin = trainLength + 0.5;
  return { from: Math.min(startRail, railAt(track, 0)) - margin, to: railAt(track, track.length) + margin };
}
