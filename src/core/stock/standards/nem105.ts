import { structureGaugeMm } from './nem102.ts';
import { gaugeMm, type Scale } from './scales.ts';

/** Clear of the structure gauge that a tunnel leaves on either side, in gauges. Source: NEM 105 (2013). */
const clearOfGauge = 0.3;

/**
 * Width (m) of the mouth of a single-track tunnel: BL1 + 0.3·G on either side, and on either side the widening E (m) of the
 * curve it lies in. Source: NEM 105 (2013), with BL1 of NEM 102 (2017).
 */
export const tunnelWidth = (scale: Exclude<Scale, 'II'>, widening = 0): number =>
  (structureGaugeMm[scale].bl1 + 2 * clearOfGauge * gaugeMm[scale]) / 1000 + 2 * widening;
