import { flangeH0Mm, gaugeMm } from '../../stock/index.ts';
import type { Wheelset } from './wheelPlay.ts';

/**
 * Lift at which the tip of a flange is level with the rail and guides no more, in gauges, and how far that may be off either way: 0.9 ± 0.3 mm
 * for 16.5 mm gauge. Source: NEM 310 (2009), flange depth D of 0.6 to 1.2 mm in H0.
 */
const [shallowest, deepest] = flangeH0Mm.depth;
const depthInGauges = (shallowest + deepest) / 2 / gaugeMm.H0;
const toleranceInGauges = (deepest - shallowest) / 2 / gaugeMm.H0;

/** Depth of flange that guides, m: what was measured, or the usual. */
export const flangeDepth = ({ wheels, gauge }: Wheelset): number => wheels?.flangeDepth ?? depthInGauges * gauge;

/** How far that may be off either way, m: nothing where it was measured. */
export const flangeDepthTolerance = ({ wheels, gauge }: Wheelset): number =>
  wheels?.flangeDepth === undefined ? toleranceInGauges * gauge : 0;
