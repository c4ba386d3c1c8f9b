import type { Buffers, Coupling, Drive, Vehicle } from '../../../src/core/stock/types.ts';
import { makeTrack, type Track } from '../../../src/core/track/index.ts';

/** The mirror image of a track: every curve to the other hand. */
export const mirroredTrack = ({ spec }: Track): Track =>
  makeTrack({
    ...spec,
    elements: spec.elements.map((element) => ({
      ...element,
      startCurvature: -element.startCurvature,
      endCurvature: -element.endCurvature,
    })),
  });

/** The same track, lengths by k. */
export function scaledTrack({ spec }: Track, k: number): Track {
  return makeTrack({
    start: spec.start,
    elements: spec.elements.map((element) => ({
      ...element,
      length: element.length * k,
      startCurvature: element.startCurvature / k,
      endCurvature: element.endCurvature / k,
    })),
    profile: {
      points: spec.profile.points.map(({ chainage, height, curve }) => ({
        chainage: chainage * k,
        height: height * k,
        ...(curve === undefined
          ? {}
          : { curve: 'length' in curve ? { length: curve.length * k } : { radius: curve.radius * k } }),
      })),
    },
  });
}

/**
 * The same vehicle, lengths by k, masses and forces by k³ and times by √k, so that gravity is the same: what William Froude's rule of similar models asks for. Stiffness
 * is force by length, damping force by speed; shares, friction and angles are as they were.
 */
export function scaledVehicle(vehicle: Vehicle, k: number): Vehicle {
  const half = (one: Coupling): Coupling => ({
    ...one,
    pivotInset: one.pivotInset * k,
    reach: one.reach * k,
    headHeight: one.headHeight * k,
    headHeightTolerance: one.headHeightTolerance * k,
    facingHeight: one.facingHeight * k,
    engagement: one.engagement * k,
    // Force k³ over stretch k.
    draftStiffness: one.draftStiffness * k ** 2,
    buffStiffness: one.buffStiffness * k ** 2,
    damping: one.damping * k ** 2.5,
    slack: one.slack * k,
    release: one.release * k ** 3,
  });
  const pads = (one: Buffers | null): Buffers | null =>
    one === null
      ? null
      : {
          spacing: one.spacing * k,
          height: one.height * k,
          headWidth: one.headWidth * k,
          headHeight: one.headHeight * k,
          length: one.length * k,
        };
  const end = ({ coupling: one, buffers: pair }: Vehicle['front']) => ({ coupling: half(one), buffers: pads(pair) });
  return {
    ...vehicle,
    mass: vehicle.mass * k ** 3,
    bodyLength: vehicle.bodyLength * k,
    bodyWidth: vehicle.bodyWidth * k,
    bodyHeight: vehicle.bodyHeight * k,
    underside: vehicle.underside * k,
    massHeight: vehicle.massHeight * k,
    massAhead: vehicle.massAhead * k,
    rigidWheelbase: vehicle.rigidWheelbase * k,
    pivotSpacing: vehicle.pivotSpacing * k,
    frontOverhang: vehicle.frontOverhang * k,
    rearOverhang: vehicle.rearOverhang * k,
    wheelRadius: vehicle.wheelRadius * k,
    gauge: vehicle.gauge * k,
    rolling: { ...vehicle.rolling, perSpeed: vehicle.rolling.perSpeed / Math.sqrt(k) },
    drive: vehicle.drive && scaledDrive(vehicle.drive, k),
    front: end(vehicle.front),
    rear: end(vehicle.rear),
  };
}

const scaledDrive = (drive: Drive, k: number): Drive => ({
  ...drive,
  drivenMass: drive.drivenMass * k ** 3,
  slipScale: drive.slipScale * Math.sqrt(k),
  stallForce: drive.stallForce * k ** 3,
  freeSpeed: drive.freeSpeed * Math.sqrt(k),
  rotatingMass: drive.rotatingMass * k ** 3,
  drawbarHeight: drive.drawbarHeight * k,
  drivenWheelbase: drive.drivenWheelbase * k,
});
