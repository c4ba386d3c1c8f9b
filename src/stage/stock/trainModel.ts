import { GreaterDepth, Group, Matrix4, Mesh, type ShaderMaterial } from 'three';
import type { Vec3 } from '../../core/math/vec3.ts';
import { couplerPivot, jointGeometry, newJointGeometry, newPlacement, placeVehicle } from '../../core/stock/index.ts';
import type { JointGeometry, Placement, Train, Vehicle } from '../../core/stock/types.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';
import type { LensView } from '../../state/types.ts';
import { faintInk, type InkView, inkMaterial, inkMesh, orderInk } from '../ink/ink.ts';
import { stockPalettes } from '../palette.ts';
import { mattMaterial, recolour, stepBehind } from '../solid/matt.ts';
import { couplingPlace, pivotPlace } from './couplingPlace.ts';
import { type Dress, faintColours, faintInkColours, inkColours, lensColours, stageColours } from './dress.ts';
import { axleOffsets } from './running.ts';
import { disposeShapes, lookKey, type Shape, type VehicleShapes, vehicleShapes } from './stockShapes.ts';

/** Faces and ink of one piece on the stage. Its matrix is written by hand every frame. */
class Piece {
  readonly faces: Mesh;
  readonly ink: Mesh;

  constructor(group: Group, shape: Shape, faces: ShaderMaterial, ink: ShaderMaterial) {
    this.faces = new Mesh(shape.faces, faces);
    this.ink = inkMesh(shape.ink, ink);
    for (const mesh of [this.faces, this.ink]) {
      mesh.matrixAutoUpdate = false;
      group.add(mesh);
    }
  }

  show(visible: boolean): void {
    this.faces.visible = visible;
    this.ink.visible = visible;
  }

  stand(matrix: Matrix4): void {
    this.faces.matrix.copy(matrix);
    this.ink.matrix.copy(matrix);
    this.faces.matrixWorldNeedsUpdate = true;
    this.ink.matrixWorldNeedsUpdate = true;
  }

  dress(faces: ShaderMaterial, ink: ShaderMaterial): void {
    this.faces.material = faces;
    this.ink.material = ink;
  }
}

/** One vehicle's pieces. */
interface Car {
  readonly vehicle: Vehicle;
  /** Edges seen through what lies over them, dashed. */
  readonly hidden: Mesh;
  readonly far: Piece;
  readonly shell: Piece;
  readonly fittings: Piece;
  readonly bogies: readonly Piece[];
  readonly wheels: readonly { readonly piece: Piece; readonly end: 'front' | 'rear' | 'middle'; readonly by: number }[];
  readonly couplings: { readonly front: Piece; readonly rear: Piece };
  readonly buffers: readonly { readonly piece: Piece; readonly end: 'front' | 'rear'; readonly side: 0 | 1 }[];
}

const matrix = new Matrix4();
const turning = new Matrix4();
const point = {} as TrackPoint;

/** Dashes of what is seen through something else, screen pixels. */
const hiddenDash = [3, 2.5] as const;

/** A buffer head may be pressed in by this share of its length. */
const mostPress = 0.6;

/** A train on the stage: stands where the solver's chainages put it, every part where the core says it is. */
export class TrainModel {
  readonly group = new Group();
  readonly placements: Placement[];
  readonly joints: JointGeometry[];
  private readonly cars: readonly Car[];
  private readonly shapes = new Map<string, VehicleShapes>();
  private readonly faces: Record<Dress, ShaderMaterial>;
  private readonly inks: Record<Dress, ShaderMaterial>;
  private readonly hiddenInk: ShaderMaterial;
  private chosen: number | null = null;

  constructor(
    readonly train: Train,
    view: InkView,
  ) {
    const dresses = Object.keys(stockPalettes) as Dress[];
    this.faces = Object.fromEntries(
      dresses.map((dress) => [dress, mattMaterial(stockPalettes[dress].faces)]),
    ) as Record<Dress, ShaderMaterial>;
    this.inks = Object.fromEntries(
      dresses.map((dress) => {
        const { strokes, weight } = stockPalettes[dress];
        return [dress, inkMaterial(view, strokes, { weight })];
      }),
    ) as Record<Dress, ShaderMaterial>;
    this.hiddenInk = inkMaterial(view, stockPalettes.vehicle.strokes, { dash: hiddenDash, opacity: 0.75 });
    this.hiddenInk.depthFunc = GreaterDepth;
    this.placements = train.vehicles.map(() => newPlacement());
    this.joints = train.vehicles.slice(1).map(() => newJointGeometry());
    this.cars = train.vehicles.map((vehicle) => this.build(vehicle));
  }

  private build(vehicle: Vehicle): Car {
    const key = lookKey(vehicle);
    const shapes = this.shapes.get(key) ?? vehicleShapes(vehicle);
    this.shapes.set(key, shapes);
    const dress = usualDress(vehicle);
    const piece = (shape: Shape, as: Dress = dress): Piece =>
      new Piece(this.group, shape, this.faces[as], this.inks[as]);
    const bogie = shapes.bogie;
    const hidden = inkMesh(shapes.far.ink, this.hiddenInk);
    hidden.matrixAutoUpdate = false;
    hidden.visible = false;
    this.group.add(hidden);
    return {
      vehicle,
      hidden,
      far: piece(shapes.far),
      shell: piece(shapes.shell),
      fittings: piece(shapes.fittings),
      bogies: bogie === null ? [] : [piece(bogie), piece(bogie)],
      wheels: axleOffsets(vehicle).map((axle) => ({ ...axle, piece: piece(shapes.wheelset, 'vehicle') })),
      couplings: { front: piece(shapes.coupling.front, 'vehicle'), rear: piece(shapes.coupling.rear, 'vehicle') },
      buffers: (['front', 'rear'] as const).flatMap((end) => {
        const shape = shapes.buffer[end];
        if (shape === null) return [];
        return ([0, 1] as const).map((side) => ({ piece: piece(shape, 'vehicle'), end, side }));
      }),
    };
  }

  /** Marks the two vehicles of a joint; null marks none. */
  choose(joint: number | null): void {
    if (joint === this.chosen) return;
    this.chosen = joint;
    this.cars.forEach((car, i) => {
      const dress = joint !== null && (i === joint || i === joint + 1) ? 'chosen' : usualDress(car.vehicle);
      for (const piece of [car.far, car.shell, car.fittings]) piece.dress(this.faces[dress], this.inks[dress]);
    });
  }

  /** Takes the colours of the lens or those of the stage. */
  underLens(lens: boolean): void {
    for (const dress of Object.keys(this.faces) as Dress[])
      recolour(this.faces[dress], (lens ? lensColours : stageColours)[dress]);
  }

  /** Draws it pale, behind another train in the same place; or as it is. */
  faint(faint: boolean): void {
    for (const dress of Object.keys(this.faces) as Dress[]) {
      recolour(this.faces[dress], (faint ? faintColours : stageColours)[dress]);
      stepBehind(this.faces[dress], faint);
      faintInk(this.inks[dress], faint, (faint ? faintInkColours : inkColours)[dress], false);
    }
    orderInk(this.group, faint);
  }

  /** Shows one vehicle in full detail or as seen from afar. */
  detail(index: number, near: boolean): void {
    this.cars[index].far.show(!near);
    this.showDetail(index, near);
  }

  /**
   * Shows what the lens does on a joint: both vehicles in detail and no other. From above their shells are drawn as
   * outlines; along the train the trailing one is left out up to its coupling and buffer heads.
   */
  detailForLens(joint: number, view: LensView): void {
    this.cars.forEach((car, i) => {
      const partner = i === joint || i === joint + 1;
      car.far.show(false);
      this.showDetail(i, partner);
      if (!partner) return;
      if (view === 'above') car.shell.faces.visible = false;
      if (view === 'along' && i === joint + 1) {
        for (const piece of [car.shell, car.fittings, ...car.bogies, ...car.wheels.map((wheel) => wheel.piece)])
          piece.show(false);
      }
    });
  }

  /** Shows the train through what lies over it: for the plan, where upper turns cover lower ones. */
  showHidden(visible: boolean): void {
    for (const car of this.cars) car.hidden.visible = visible;
  }

  private showDetail(index: number, visible: boolean): void {
    const car = this.cars[index];
    car.shell.show(visible);
    car.fittings.show(visible);
    for (const piece of car.bogies) piece.show(visible);
    for (const { piece } of car.wheels) piece.show(visible);
    for (const { piece } of car.buffers) piece.show(visible);
    car.couplings.front.show(visible);
    car.couplings.rear.show(visible);
  }

  /** Stands every vehicle at its path chainage (m). Returns false when one does not fit the track there. */
  stand(track: Track, chainages: Float64Array): boolean {
    const { vehicles } = this.train;
    try {
      for (let i = 0; i < vehicles.length; i++) placeVehicle(track, vehicles[i], chainages[i], this.placements[i]);
    } catch (error) {
      if (error instanceof RangeError) return false;
      throw error;
    }
    this.joints.forEach((out, j) => {
      jointGeometry(vehicles[j], vehicles[j + 1], this.placements[j], this.placements[j + 1], out);
    });
    for (let i = 0; i < this.cars.length; i++) this.pose(this.cars[i], i, track);
    return true;
  }

  private pose(car: Car, i: number, track: Track): void {
    const { vehicle } = car;
    const placed = this.placements[i];
    frame(placed.origin, placed.ahead, placed.left, placed.up);
    for (const piece of [car.far, car.shell, car.fittings]) piece.stand(matrix);
    car.hidden.matrix.copy(matrix);
    car.hidden.matrixWorldNeedsUpdate = true;
    car.bogies.forEach((piece, n) => {
      const way = n === 0 ? 1 : -1;
      const axis = n === 0 ? placed.frontTangent : placed.rearTangent;
      frameAlong(moved(placed.origin, placed.ahead, (way * vehicle.pivotSpacing) / 2), axis);
      piece.stand(matrix);
    });
    for (const { piece, end, by } of car.wheels) {
      const at = end === 'front' ? placed.frontChainage : end === 'rear' ? placed.rearChainage : placed.chainage;
      const axis = vehicle.bogies ? (end === 'front' ? placed.frontTangent : placed.rearTangent) : placed.ahead;
      trackPoint(track, at + by, point);
      frameAlong([point.x, point.y, point.z + vehicle.wheelRadius], axis);
      matrix.multiply(turning.makeRotationY((at + by) / vehicle.wheelRadius));
      piece.stand(matrix);
    }
    const mates = { front: this.matePivot(i - 1, 'rear'), rear: this.matePivot(i + 1, 'front') };
    for (const end of ['front', 'rear'] as const) {
      const place = couplingPlace(vehicle, placed, end, mates[end]);
      frame(place.pivot, place.out, place.left, place.up);
      car.couplings[end].stand(matrix);
    }
    for (const { piece, end, side } of car.buffers) this.poseBuffer(i, piece, end, side);
  }

  private matePivot(index: number, end: 'front' | 'rear'): Vec3 | null {
    const mate = this.train.vehicles[index];
    return mate === undefined ? null : pivotPlace(mate, this.placements[index], end);
  }

  private poseBuffer(i: number, piece: Piece, end: 'front' | 'rear', side: 0 | 1): void {
    const vehicle = this.train.vehicles[i];
    const { buffers, coupling } = vehicle[end];
    if (buffers === null) return;
    const way = end === 'front' ? 1 : -1;
    const placed = this.placements[i];
    const joint = this.joints[end === 'front' ? i - 1 : i];
    // Faces that the solver has run into each other give way, each by half.
    const gap = joint === undefined ? 0 : joint.bufferGap[side];
    const press = gap < 0 ? Math.min(-gap / 2, mostPress * buffers.length) : 0;
    const bodyEnd = couplerPivot(vehicle, end).ahead + way * coupling.pivotInset;
    const x = bodyEnd + way * (buffers.length - press);
    const y = ((side === 0 ? 1 : -1) * buffers.spacing) / 2;
    const at: Vec3 = [0, 0, 0];
    for (let axis = 0; axis < 3; axis++) {
      at[axis] =
        placed.origin[axis] + x * placed.ahead[axis] + y * placed.left[axis] + buffers.height * placed.up[axis];
    }
    const out: Vec3 = [way * placed.ahead[0], way * placed.ahead[1], way * placed.ahead[2]];
    frame(at, out, [way * placed.left[0], way * placed.left[1], way * placed.left[2]], placed.up);
    piece.stand(matrix);
  }

  dispose(): void {
    for (const shapes of this.shapes.values()) disposeShapes(shapes);
    for (const material of [...Object.values(this.faces), ...Object.values(this.inks), this.hiddenInk])
      material.dispose();
  }
}

const usualDress = (vehicle: Vehicle): Dress =>
  vehicle.kind === 'locomotive' || vehicle.kind === 'tender' ? 'engine' : 'vehicle';

/** Writes a right-handed frame into the module's matrix. */
function frame(at: Vec3, x: Vec3, y: Vec3, z: Vec3): void {
  matrix.set(x[0], y[0], z[0], at[0], x[1], y[1], z[1], at[1], x[2], y[2], z[2], at[2], 0, 0, 0, 1);
}

/** The same for something that lies along `axis` with its left level. */
function frameAlong(at: Vec3, axis: Vec3): void {
  const level = Math.hypot(axis[0], axis[1]);
  const left: Vec3 = [-axis[1] / level, axis[0] / level, 0];
  frame(at, axis, left, [-axis[2] * left[1], axis[2] * left[0], level]);
}

const moved = (at: Vec3, way: Vec3, by: number): Vec3 => [
  at[0] + by * way[0],
  at[1] + by * way[1],
  at[2] + by * way[2],
];
