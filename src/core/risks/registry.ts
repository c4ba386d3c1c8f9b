import { axleLift } from './axleLift.ts';
import { barLift } from './barLift.ts';
import { bufferLock } from './bufferLock.ts';
import { couplerSwing } from './couplerSwing.ts';
import { grounding } from './grounding.ts';
import { headroom } from './headroom.ts';
import { jackKnife } from './jackKnife.ts';
import { override } from './override.ts';
import { overturning } from './overturning.ts';
import { parting } from './parting.ts';
import { passing } from './passing.ts';
import { stall } from './stall.ts';
import { stringLining } from './stringLining.ts';
import { structure } from './structure.ts';
import type { RiskDefinition, RiskId } from './types.ts';
import { wheelClimb } from './wheelClimb.ts';
import { wheelspin } from './wheelspin.ts';

/** Every risk the project knows of; whatever shows, plots or ranks risks iterates over this list. */
export const risks: readonly RiskDefinition[] = [
  stall,
  wheelspin,
  override,
  bufferLock,
  couplerSwing,
  parting,
  wheelClimb,
  stringLining,
  jackKnife,
  overturning,
  axleLift,
  grounding,
  barLift,
  headroom,
  passing,
  structure,
];

/** The definition of one risk. */
export function riskById(id: RiskId): RiskDefinition {
  const found = risks.find((risk) => risk.id === id);
  if (found === undefined) throw new RangeError(`There is no risk called ${id}`);
  return found;
}
