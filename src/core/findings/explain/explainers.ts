import type { RiskId } from '../../risks/types.ts';
import { explainBufferLock } from './explainBufferLock.ts';
import { explainCouplerSwing } from './explainCouplerSwing.ts';
import type { Explainer } from './explainer.ts';
import { explainHeadroom } from './explainHeadroom.ts';
import { explainHeights } from './explainHeights.ts';
import { explainOverride } from './explainOverride.ts';
import { explainOverturning } from './explainOverturning.ts';
import { explainParting } from './explainParting.ts';
import { explainPassing } from './explainPassing.ts';
import { explainJackKnife, explainStringLining, explainWheelClimb } from './explainSideways.ts';
import { explainStall } from './explainStall.ts';
import { explainStructure } from './explainStructure.ts';
import { explainWheelspin } from './explainWheelspin.ts';

export const explainers: Readonly<Record<RiskId, Explainer>> = {
  stall: explainStall,
  wheelspin: explainWheelspin,
  'buffer-lock': explainBufferLock,
  'coupler-swing': explainCouplerSwing,
  override: explainOverride,
  parting: explainParting,
  'wheel-climb': explainWheelClimb,
  'string-lining': explainStringLining,
  'jack-knife': explainJackKnife,
  overturning: explainOverturning,
  'axle-lift': explainHeights,
  grounding: explainHeights,
  'bar-lift': explainHeights,
  headroom: explainHeadroom,
  passing: explainPassing,
  structure: explainStructure,
};
