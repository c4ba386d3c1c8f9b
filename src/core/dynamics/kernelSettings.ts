import { transferredWeight } from '../stock/index.ts';
import type { Vehicle } from '../stock/types.ts';
import type { JointLaw } from './couplerLaw.ts';
import type { Address, Kernel } from './kernel/load.ts';

/** Where a joint has no second stage. */
const NEVER = Number.POSITIVE_INFINITY;

/** Gives joint j of a train in the kernel its law. */
export function setLaw(kernel: Kernel, train: Address, j: number, law: JointLaw): void {
  const { draftStiffness, buffStiffness, draftPlay, buffPlay, draftSecond, buffSecond, damping } = law;
  const draftKnee = draftSecond?.from ?? NEVER;
  const buffKnee = buffSecond?.from ?? NEVER;
  kernel.setLaw(
    train,
    j,
    draftStiffness,
    draftKnee,
    draftSecond?.stiffness ?? draftStiffness,
    draftPlay,
    buffStiffness,
    buffKnee,
    buffSecond?.stiffness ?? buffStiffness,
    buffPlay,
    damping,
  );
}

/** Gives engine e of a train in the kernel its drive, and the table of its grip along the route. */
export function setDrive(
  kernel: Kernel,
  train: Address,
  e: number,
  vehicle: number,
  drive: NonNullable<Vehicle['drive']>,
  gripTable: Address,
): void {
  kernel.setEngine(
    train,
    e,
    vehicle,
    drive.drivenMass,
    drive.adhesion,
    drive.slidingAdhesion,
    drive.slipScale,
    drive.stallForce,
    drive.freeSpeed,
    drive.rotatingMass,
    drive.worm,
    transferredWeight(drive, 1),
    gripTable,
  );
}
