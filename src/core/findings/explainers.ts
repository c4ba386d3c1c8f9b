import type { RiskId } from '../risks/types.ts';
import { explainBufferLock } from './explainBufferLock.ts';
import { explainCouplerSwing } from './explainCouplerSwing.ts';
import type { Explainer } from './explainer.ts';
import { explainHeadroom } from './explainHeadroom.ts';
import { explainOverride } from './explainOverride.ts';
import { explainParting } from './explainParting.ts';
import { explainStall } from './explainStall.ts';
import { explainWheelspin } from './explainWheelspin.ts';

export const explainers: Readonly<Record<RiskId, Explainer>> = {
  stall: explainStall,
  wheelspin: explainWheelspin,
  'buffer-lock': explainBufferLock,
  'coupler-swing': explainCouplerSwing,
  override: explainOverride,
  parting: explainParting,
  headroom: explainHeadroom,
};
