/** Width of a rail head, in gauges: 1.0 mm in H0 (0.8 to 1.1 mm), other gauges in proportion. Common practice, no source. */
const headInGauges = 1.0 / 16.5;

/**
 * Between the middles of the rail heads of a track of `gauge`, m, which is measured between their inner faces. Wheels bear on these middles, and cant is the difference
 * in height of the two: full size it is counted over 1502 mm on a gauge of 1435 mm (permanent way practice; NR/L2/TRK2049, quoted on pwayblog.com).
 */
export const railCentres = (gauge: number): number => gauge * (1 + headInGauges);
