/** Gauge and the fixed shift of a curve by its easement, mm. Source: NEM 113 (2016). */
const shifts: readonly (readonly [gaugeMm: number, shiftMm: number])[] = [
  [6.5, 3],
  [9, 4],
  [12, 6],
  [16.5, 9],
  [22.5, 13],
  [32, 18],
  [45, 25],
  [64, 36],
];

const mm = 1e-3;

/** Easements are set out in steps of this, m. */
const roundTo = 0.05;

/** Shift (m) of a curve of this gauge (m) by its easement; between the standard's gauges in proportion. */
export function easementShift(gauge: number): number {
  const gaugeMm = gauge / mm;
  const above = shifts.findIndex(([known]) => known >= gaugeMm);
  if (above === 0) return (shifts[0][1] * gauge) / shifts[0][0];
  const [lowGauge, lowShift] = shifts[above < 0 ? shifts.length - 1 : above - 1];
  if (above < 0) return (lowShift * gauge) / lowGauge;
  const [highGauge, highShift] = shifts[above];
  return mm * (lowShift + ((gaugeMm - lowGauge) / (highGauge - lowGauge)) * (highShift - lowShift));
}

/** Length (m) of the easement of a curve of `radius` (m): √(24·f·R), to the nearest 50 mm. Source: NEM 113 (2016). */
export function easementLength(gauge: number, radius: number): number {
  const exact = Math.sqrt(24 * easementShift(gauge) * radius);
  return Math.max(1, Math.round(exact / roundTo)) * roundTo;
}

/** The next length (m) worth trying where an easement of `present` length is not enough: half as long again. */
export function longerEasement(present: number, standard: number): number {
  if (present < standard - roundTo / 2) return standard;
  return Math.ceil((1.5 * present) / roundTo - 1e-9) * roundTo;
}
