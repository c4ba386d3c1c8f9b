export { axleGap, middleAxleLift } from './axleGap.ts';
export { axleLoads, drivenShareOn } from './axleLoads.ts';
export { placeCoupled, standTrain } from './coupled.ts';
export { couplerPivot, type End, frontReach, lengthOverBuffers, rearReach } from './ends.ts';
export { type Envelope, type Road, standsClearFrom } from './foulingPoint.ts';
export { guideLengthening } from './guide.ts';
export { makeJoint, referenceSpacing } from './joint.ts';
export { jointGeometry, newJointGeometry } from './jointGeometry.ts';
export { newPlacement, placeVehicle, pointOnVehicle } from './placement.ts';
export * from './standards/index.ts';
export { sweptKinds } from './sweptKinds.ts';
export { type BodyOutline, bodyOutline, type SweptWidth, sweptWidth } from './sweptWidth.ts';
export {
  centreThrow,
  centreThrowHandbook,
  cornerThrow,
  endThrow,
  endThrowHandbook,
  reverseOffsetHandbook,
} from './throw.ts';
export { turnVehicle } from './turn.ts';
export type * from './types.ts';
export { transferredWeight } from './weightTransfer.ts';
export { wormLocks } from './worm.ts';
