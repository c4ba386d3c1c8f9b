export { compoundEasement } from './compound.ts';
export { type Connection, type ConnectSpec, connectPoses } from './connect.ts';
export type { BendSpec } from './easedBend.ts';
export { type EasedHelix, easedHelix } from './easedHelix.ts';
export { type Fillet, fillet } from './fillet.ts';
export { type IntersectionAlignment, intersectionAlignment, type Shortfall } from './intersections.ts';
export { chainEnd, type Pose } from './pose.ts';
export { type ReverseBend, reverseBend } from './reverseBend.ts';
