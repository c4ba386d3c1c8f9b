import { makeJoint } from '../stock/index.ts';
import type { SecondStage, Train } from '../stock/types.ts';
import type { JointLaw } from './couplerLaw.ts';

/** A joint stiffer than this is as rigid as plastic gets, and stands for an unyielding bar, N/m. */
export const RIGID = 1e6;

/** Forces of every joint in a form the chain can use: a rigid bar becomes a very stiff one. */
export function jointLaws(train: Train): JointLaw[] {
  return joints(train).map((joint) => ({
    ...(joint.draftSecond === undefined ? {} : { draftSecond: softened(joint.draftSecond) }),
    ...(joint.buffSecond === undefined ? {} : { buffSecond: softened(joint.buffSecond) }),
    draftStiffness: Math.min(joint.draftStiffness, RIGID),
    buffStiffness: Math.min(joint.buffStiffness, RIGID),
    ...(joint.recouples ? { recouples: true } : {}),
    damping: Number.isFinite(joint.damping) ? joint.damping : 0,
    draftPlay: joint.slack / 2,
    buffPlay: joint.slack / 2,
  }));
}

const softened = ({ from, stiffness }: SecondStage): SecondStage => ({ from, stiffness: Math.min(stiffness, RIGID) });

/** Force at which each joint lets go, N. */
export const releases = (train: Train) => Float64Array.from(joints(train), (joint) => joint.release);

const joints = (train: Train) =>
  train.vehicles.slice(1).map((trailing, j) => makeJoint(train.vehicles[j]!.rear.coupling, trailing.front.coupling));
