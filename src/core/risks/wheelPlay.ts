import { flangeH0Mm, gaugeMm, wheelsetMm } from '../stock/index.ts';

const middle = ([least, greatest]: readonly [number, number]): number => (least + greatest) / 2;

/**
 * How far a wheelset may stand to either side of the middle of the track, in gauges: half of gauge less check and one flange, all in the
 * middle of their limits: (16.5 - 15.2 - 0.8)/2 = 0.25 mm in H0 (0.15 to 0.35), other gauges in proportion. Track laid wide adds half of what it is
 * wider. Source: NEM 310 (2009).
 */
const playInGauges = (gaugeMm.H0 - middle(wheelsetMm[16.5].check) - middle(flangeH0Mm.thickness)) / 2 / gaugeMm.H0;

/** Play of a wheelset to either side on track of a gauge (m), m. */
export const wheelPlay = (gauge: number): number => playInGauges * gauge;

/**
 * Wheels bear on the middle of the rail head and not on its gauge face: half of gauge and one head of 1.0 mm in H0 is 8.75 mm (0.8 to 1.1 mm of head), other
 * gauges in proportion. Common practice, no source.
 */
const headInGauges = 1.0 / 16.5;

/** Sideways distance from the middle of the track to where its wheels bear, m. */
export const halfSpan = (gauge: number): number => (gauge * (1 + headInGauges)) / 2;
