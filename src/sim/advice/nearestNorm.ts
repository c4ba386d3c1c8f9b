import { log } from '../../core/math/index.ts';
import { gaugeMm, type Scale } from '../../core/stock/index.ts';

/** The row of the European norms whose gauge is nearest to this one, mm, in proportion. */
export function nearestNorm(gauge: number): Scale {
  const rows = Object.entries(gaugeMm) as [Scale, number][];
  const off = (other: number): number => Math.abs(log(other / gauge));
  return rows.reduce((best, row) => (off(row[1]) < off(best[1]) ? row : best))[0];
}
