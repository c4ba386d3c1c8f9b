import { dogBoneShape } from './dogBone.ts';
import { doubleHelixShape } from './doubleHelix.ts';
import { emptyRoom } from './emptyRoom.ts';
import { helixShape } from './helix.ts';
import { rampShape } from './ramp.ts';
import { reverseCurveShape } from './reverseCurve.ts';
import type { StartingShape } from './shape.ts';
import { switchbackShape } from './switchback.ts';
import { throatShape } from './throat.ts';
import { viaductShape } from './viaduct.ts';

/** Everything a new railway can start from, in the order in which it is offered. */
export const startingShapes: readonly StartingShape[] = [
  emptyRoom,
  helixShape,
  doubleHelixShape,
  rampShape,
  viaductShape,
  switchbackShape,
  dogBoneShape,
  throatShape,
  reverseCurveShape,
];
