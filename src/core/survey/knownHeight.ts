import type { Row } from './rows.ts';

/** A row that says where one support stands. */
export function knownHeight(count: number, support: number, departure: number, deviation: number): Row {
  const heights = new Float64Array(count);
  heights[support] = 1;
  return { reading: -1, observed: departure, planned: 0, deviation, halfStep: 0, heights, others: [] };
}
