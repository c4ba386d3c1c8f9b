import type { BufferGeometry } from 'three';
import type { Vehicle } from '../../core/stock/types.ts';
import { inkGeometry } from '../ink/ink.ts';
import { solidGeometry } from '../solid/matt.ts';
import type { Solid } from '../solid/solid.ts';
import { bodyParts } from './body.ts';
import { bufferHead, couplingHalf } from './couplingSolid.ts';
import { bogieFrame, wheelset } from './running.ts';

/** A piece ready for the card: its faces and its ink. */
export interface Shape {
  readonly faces: BufferGeometry;
  readonly ink: BufferGeometry;
}

/** All pieces of one kind of vehicle, shared by all of its kind in a train. */
export interface VehicleShapes {
  readonly far: Shape;
  readonly shell: Shape;
  readonly fittings: Shape;
  readonly bogie: Shape | null;
  readonly wheelset: Shape;
  readonly coupling: { readonly front: Shape; readonly rear: Shape };
  readonly buffer: { readonly front: Shape | null; readonly rear: Shape | null };
}

export function shapeOf(solid: Solid): Shape {
  return { faces: solidGeometry(solid), ink: inkGeometry(solid.strokes) };
}

export function vehicleShapes(vehicle: Vehicle): VehicleShapes {
  const { far, shell, fittings } = bodyParts(vehicle);
  const head = (end: 'front' | 'rear'): Shape | null => {
    const { buffers } = vehicle[end];
    return buffers === null ? null : shapeOf(bufferHead(buffers));
  };
  return {
    far: shapeOf(far),
    shell: shapeOf(shell),
    fittings: shapeOf(fittings),
    bogie: vehicle.bogies ? shapeOf(bogieFrame(vehicle)) : null,
    wheelset: shapeOf(wheelset(vehicle)),
    coupling: {
      front: shapeOf(couplingHalf(vehicle.front.coupling)),
      rear: shapeOf(couplingHalf(vehicle.rear.coupling)),
    },
    buffer: { front: head('front'), rear: head('rear') },
  };
}

export function disposeShapes(shapes: VehicleShapes): void {
  for (const shape of [
    shapes.far,
    shapes.shell,
    shapes.fittings,
    shapes.bogie,
    shapes.wheelset,
    shapes.coupling.front,
    shapes.coupling.rear,
    shapes.buffer.front,
    shapes.buffer.rear,
  ]) {
    shape?.faces.dispose();
    shape?.ink.dispose();
  }
}

/** What makes two vehicles look alike: everything but their name, mass and mechanics. */
export function lookKey(vehicle: Vehicle): string {
  const { name: _name, mass: _mass, massHeight: _up, massAhead: _ahead, rolling: _rolling, drive, ...look } = vehicle;
  return JSON.stringify({ ...look, drive: drive !== null });
}
