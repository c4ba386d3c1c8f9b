import type { RiskDefinition } from './types.ts';
import { slipShares } from './wheelSlip.ts';

/**
 * Wheelspin, as a share: the grip an engine uses against all it has. Slipping wheels have used more than all: their value is one
 * and the share of their turning that is lost, so the margin runs on below zero with the spin.
 */
export const wheelspin: RiskDefinition = {
  id: 'wheelspin',
  subject: 'locomotive',
  unit: 'share',
  plenty: 0.5,
  near: 0.1,
  prepare({ run }) {
    const width = run.locomotives.length;
    const slip = slipShares(run);
    return {
      sample(frame, locomotive, out) {
        const at = frame.index * width + locomotive;
        const slipping = slip[at] > 0;
        out.value = slipping ? 1 + slip[at] : Math.min(1, run.gripUse[at]);
        out.limit = 1;
        out.margin = 1 - out.value;
        out.governing = slipping ? 'slip' : 'grip';
      },
      parts: () => [],
    };
  },
};
