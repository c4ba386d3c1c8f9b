import { log } from '../core/math/index.ts';
import { drivenShareOn, wormLocks } from '../core/stock/index.ts';
import type {
  Buffers,
  CarryingAxle,
  Coupling,
  Drive,
  SecondStage,
  Vehicle,
  WheelProfile,
} from '../core/stock/types.ts';
import {
  bufferDefaults,
  couplingDefaults,
  driveDefaults,
  guideDefaults,
  massPerMm,
  rollingDefaults,
  tableGaugeMm,
  vehicleDefaults,
} from './defaults.ts';
import type { Scene } from './schema/schema.ts';
import type { SceneBuffers, SceneCoupling, SceneDrive, SceneVehicle } from './schema/stockSchema.ts';

const mm = 1e-3;
const gram = 1e-3;
const degree = Math.PI / 180;
const perMm = 1e3;
/** Standard gravity, m/s²: turns the mass on driven wheels into the grip that a motor is sized for. */
const gravity = 9.80665;

/** Coupling of a vehicle that names none. */
const plainCoupling: SceneCoupling = { id: 'plain', kind: 'hook-and-bar' };

/** How much larger things are at this gauge than at the table's. */
const sizeAt = (gaugeMm: number): number => gaugeMm / tableGaugeMm;

/** One half of a joint in SI, with `headOffMm` added to the height of its head. */
function couplingOf(file: SceneCoupling, size: number, headOffMm: number): Coupling {
  const usual = couplingDefaults[file.kind];
  const freeTiltDeg = file.freeTiltDeg ?? usual.freeTiltDeg?.value;
  const length = (given: number | undefined, fallback: number) => (given ?? fallback * size) * mm;
  return {
    kind: file.kind,
    mount: file.mount ?? usual.mount,
    pivotInset: length(file.pivotInsetMm, usual.pivotInsetMm.value),
    reach: length(file.reachMm, usual.reachMm.value),
    headHeight: length(file.headHeightMm, usual.headHeightMm.value) + headOffMm * mm,
    headHeightTolerance: length(file.headHeightToleranceMm, usual.headHeightToleranceMm.value),
    facingHeight: length(file.facingHeightMm, usual.facingHeightMm.value),
    engagement: length(file.engagementMm, usual.engagementMm.value),
    faceTilt: (file.faceTiltDeg ?? usual.faceTiltDeg.value) * degree,
    faceFriction: file.faceFriction ?? usual.faceFriction.value,
    freeSwing: (file.freeSwingDeg ?? usual.freeSwingDeg.value) * degree,
    draftStiffness: (file.draftStiffnessNPerMm ?? usual.draftStiffnessNPerMm.value) * perMm,
    buffStiffness: (file.buffStiffnessNPerMm ?? usual.buffStiffnessNPerMm.value) * perMm,
    damping: file.dampingNsPerM ?? usual.dampingNsPerM.value,
    slack: length(file.slackMm, usual.slackMm.value),
    ...(file.sideHoldMm === undefined ? {} : { sideHold: file.sideHoldMm * mm }),
    ...(freeTiltDeg === undefined ? {} : { freeTilt: freeTiltDeg * degree }),
    release: file.releaseN ?? usual.releaseN?.value ?? Number.POSITIVE_INFINITY,
    ...((file.recouples ?? usual.recouples) ? { recouples: true } : {}),
    ...(file.draftSecond === undefined ? {} : { draftSecond: secondOf(file.draftSecond) }),
    ...(file.buffSecond === undefined ? {} : { buffSecond: secondOf(file.buffSecond) }),
    ...(file.guide === undefined
      ? {}
      : {
          guide: {
            lengthening: length(file.guide.lengthenMm, guideDefaults.lengthenMm.value),
            fullSwing: (file.guide.fullSwingDeg ?? guideDefaults.fullSwingDeg.value) * degree,
          },
        }),
  };
}

const secondOf = (file: { readonly fromMm: number; readonly stiffnessNPerMm: number }): SecondStage => ({
  from: file.fromMm * mm,
  stiffness: file.stiffnessNPerMm * perMm,
});

function buffersOf(file: SceneBuffers, size: number): Buffers {
  const length = (given: number | undefined, fallback: number) => (given ?? fallback * size) * mm;
  return {
    spacing: length(file.spacingMm, bufferDefaults.spacingMm.value),
    height: length(file.heightMm, bufferDefaults.heightMm.value),
    headWidth: length(file.headWidthMm, bufferDefaults.headWidthMm.value),
    headHeight: length(file.headHeightMm, bufferDefaults.headHeightMm.value),
    length: length(file.lengthMm, bufferDefaults.lengthMm.value),
  };
}

/** A locomotive's drive in SI; by default the motor stalls at a multiple of what the wheels can grip. */
function driveOf(file: SceneDrive, mass: number, size: number): Drive {
  const drivenMass = file.drivenMassG === undefined ? mass : file.drivenMassG * gram;
  const adhesion = file.adhesion ?? driveDefaults.adhesion.value;
  const axles = file.axles === undefined ? undefined : axlesOf(file.axles, drivenMass / mass, adhesion);
  const grip =
    axles === undefined
      ? 1
      : drivenShareOn(
          axles,
          axles.map(({ share }) => share),
        );
  const speed = (given: number | undefined, fallback: number) => (given ?? fallback * size) * mm;
  return {
    drivenMass,
    adhesion,
    slidingAdhesion: file.slidingAdhesion ?? adhesion * driveDefaults.slidingShare.value,
    slipScale: speed(file.slipScaleMmPerS, driveDefaults.slipScaleMmPerS.value),
    stallForce: file.stallForceN ?? driveDefaults.stallForceShare.value * adhesion * grip * drivenMass * gravity,
    freeSpeed: speed(file.freeSpeedMmPerS, driveDefaults.freeSpeedMmPerS.value),
    rotatingMass: (file.rotatingMassG ?? driveDefaults.rotatingMassG.value * size * size * size) * gram,
    worm:
      file.worm ??
      (file.wormLeadDeg === undefined || wormLocks(file.wormLeadDeg * degree, driveDefaults.wormFriction.value)),
    drawbarHeight: speed(file.drawbarHeightMm, driveDefaults.drawbarHeightMm.value),
    drivenWheelbase: speed(file.drivenWheelbaseMm, driveDefaults.drivenWheelbaseMm.value),
    transferShare: file.transferShare ?? driveDefaults.transferShare.value,
    ...(axles === undefined ? {} : { axles }),
  };
}

/** Axles in SI; on the level the driven ones share what stands on them evenly, the idle ones the rest. `adhesion` is the drive's. */
function axlesOf(
  axles: NonNullable<SceneDrive['axles']>,
  drivenShare: number,
  adhesion: number,
): readonly CarryingAxle[] {
  const driven = axles.filter((axle) => axle.driven !== false).length;
  const idle = axles.length - driven;
  return axles.map((axle) => ({
    ahead: axle.aheadMm * mm,
    driven: axle.driven !== false,
    share: axle.driven !== false ? drivenShare / driven : (1 - drivenShare) / idle,
    stiffness: (axle.springNPerMm ?? driveDefaults.axleStiffnessNPerMm.value) * perMm,
    ...(axle.adhesion === undefined ? {} : { grip: axle.adhesion / adhesion }),
  }));
}

/** Wheels as measured, in SI. */
function wheelsOf(file: NonNullable<SceneVehicle['wheels']>): WheelProfile {
  const { backToBackMm, flangeThicknessMm, flangeDepthMm, flangeAngleDeg } = file;
  return {
    ...(backToBackMm === undefined ? {} : { backToBack: backToBackMm * mm }),
    ...(flangeThicknessMm === undefined ? {} : { flangeThickness: flangeThicknessMm * mm }),
    ...(flangeDepthMm === undefined ? {} : { flangeDepth: flangeDepthMm * mm }),
    ...(flangeAngleDeg === undefined ? {} : { flangeAngle: flangeAngleDeg * degree }),
  };
}

/** Standard mass of a vehicle by its length over buffers at the nearest gauge of the standard, kg (NEM 302, 2015). */
export function standardMass(overBuffersMm: number, gaugeMm: number): number {
  let nearest = massPerMm[0];
  for (const entry of massPerMm) {
    if (Math.abs(log(entry[0] / gaugeMm)) < Math.abs(log(nearest[0] / gaugeMm))) nearest = entry;
  }
  return nearest[1] * overBuffersMm * gram;
}

/** What one entry of a train changes about its vehicle. */
export interface VehicleChange {
  readonly massG?: number | undefined;
  readonly headHeightOffMm?: { readonly front?: number; readonly rear?: number } | undefined;
}

/** A vehicle of the file in SI with every default filled in; its front faces ahead. Throws RangeError when nothing is left of the body. */
export function vehicleOf(scene: Scene, file: SceneVehicle, change: VehicleChange = {}): Vehicle {
  const size = sizeAt(scene.scale.gaugeMm);
  const ends = file.bufferEnds ?? 'both';
  const buffers = file.buffers === undefined ? null : buffersOf(file.buffers, size);
  const frontBuffers = ends === 'rear' ? null : buffers;
  const rearBuffers = ends === 'front' ? null : buffers;
  const faces = (frontBuffers?.length ?? 0) + (rearBuffers?.length ?? 0);
  const bodyLength = file.lengthMm === undefined ? (file.overBuffersMm ?? 0) * mm - faces : file.lengthMm * mm;
  const pivotSpacing = (file.bogies?.centresMm ?? file.wheelbaseMm ?? 0) * mm;
  const overhang = bodyLength - pivotSpacing;
  const frontOverhang = file.frontOverhangMm === undefined ? overhang / 2 : file.frontOverhangMm * mm;
  const mass =
    change.massG !== undefined
      ? change.massG * gram
      : file.massG !== undefined
        ? file.massG * gram
        : standardMass((bodyLength + faces) / mm, scene.scale.gaugeMm);
  const coupling = (id: string | undefined) => scene.couplings?.find((entry) => entry.id === id) ?? plainCoupling;
  const off = (end: 'front' | 'rear') => (file.headHeightOffMm?.[end] ?? 0) + (change.headHeightOffMm?.[end] ?? 0);
  const length = (given: number | undefined, fallback: number) => (given ?? fallback * size) * mm;
  return {
    name: file.name,
    kind: file.kind,
    mass,
    bodyLength,
    bodyWidth: length(file.widthMm, vehicleDefaults.widthMm.value),
    bodyHeight: length(file.heightMm, vehicleDefaults.heightMm.value),
    underside: length(file.undersideMm, vehicleDefaults.undersideMm.value),
    massHeight: length(file.massHeightMm, vehicleDefaults.massHeightMm.value),
    massAhead: (file.massAheadMm ?? 0) * mm,
    pivotSpacing,
    frontOverhang,
    rearOverhang: overhang - frontOverhang,
    rigidWheelbase: file.bogies === undefined ? pivotSpacing : file.bogies.wheelbaseMm * mm,
    bogies: file.bogies !== undefined,
    ...(file.axles === undefined ? {} : { axles: file.axles }),
    ...(file.bogies?.axles === undefined ? {} : { bogieAxles: file.bogies.axles }),
    wheelRadius: length(file.wheelDiameterMm, vehicleDefaults.wheelDiameterMm.value) / 2,
    gauge: scene.scale.gaugeMm * mm,
    ...(file.wheels === undefined ? {} : { wheels: wheelsOf(file.wheels) }),
    front: {
      coupling: couplingOf(coupling(file.frontCoupling ?? file.coupling), size, off('front')),
      buffers: frontBuffers,
    },
    rear: {
      coupling: couplingOf(coupling(file.rearCoupling ?? file.coupling), size, off('rear')),
      buffers: rearBuffers,
    },
    rolling: {
      coulomb: (file.rollingPercent ?? rollingDefaults.percent.value) / 100,
      perSpeed: (file.rollingPercentPerMPerS ?? rollingDefaults.percentPerMPerS.value) / 100,
      breakaway: file.breakaway ?? rollingDefaults.breakaway.value,
    },
    drive: file.drive === undefined ? null : driveOf(file.drive, mass, size),
  };
}
