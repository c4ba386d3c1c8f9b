import type { RiskId } from '../../core/risks/types.ts';
import { keepsLimit, type MeasureLimit } from './measure/index.ts';
import type { Probe, RiskMeasure } from './types.ts';

/** What a study looks at: whether all is well, or one risk alone. */
export type Gauge = 'all' | RiskId;

/** Whether a probe passes by a gauge: every trial, or every trial's margin of the one risk; and keeps every limit of a measure. */
export function passesBy(gauge: Gauge, limits: readonly MeasureLimit[] = []): (probe: Probe) => boolean {
  return (probe) => {
    if (!probe.ok || !limits.every((limit) => keepsLimit(probe, limit))) return false;
    if (gauge === 'all') return probe.trials.every(({ passes }) => passes);
    return probe.trials.every(({ risks }) => risks.every(({ risk, margin }) => risk !== gauge || margin >= 0));
  };
}

/** The closest call of a probe by a gauge, and whose trial it was; null where nothing can happen or nothing could be run. */
export function closestCall(probe: Probe, gauge: Gauge): (RiskMeasure & { readonly trialId: string }) | null {
  if (!probe.ok) return null;
  let least: (RiskMeasure & { readonly trialId: string }) | null = null;
  for (const { trialId, risks } of probe.trials) {
    for (const measure of risks) {
      if (gauge !== 'all' && measure.risk !== gauge) continue;
      if (least === null || measure.share < least.share) least = { ...measure, trialId };
    }
  }
  return least;
}
