/** How much below zero a reduced cost must be to count, in terms of the weights: rounding of sums of a few terms. */
const worthwhile = 1e-12;

/** Turns of the simplex method; a unit of ten vehicles needs some dozens. */
const mostTurns = 1000;

/**
 * How a chain of stiff bodies rests: lifts `u` ≥ 0 of least energy Σ weights·u such that every row of `rows`·u reaches its `least`. Weights ≥ 0. Solved
 * exactly through its dual, max Σ least·y with rowsᵀ·y ≤ weights and y ≥ 0, where y = 0 is a start: the forces in the stops. By the simplex method with
 * Bland's rule. Throws RangeError when no lift satisfies the rows.
 */
export function leastEnergyLifts(
  weights: readonly number[],
  rows: readonly (readonly number[])[],
  least: readonly number[],
): Float64Array {
  const n = weights.length;
  const m = rows.length;
  const width = m + n + 1;
  // One line for every lift: its column of the rows, its slack, its weight. The last line is the objective.
  const table = Array.from({ length: n + 1 }, (_, i) => {
    const line = new Float64Array(width);
    for (let j = 0; j < m; j++) line[j] = i < n ? rows[j][i] : -least[j];
    if (i < n) {
      line[m + i] = 1;
      line[width - 1] = weights[i];
    }
    return line;
  });
  const basis = Int32Array.from(weights, (_, i) => m + i);
  const cost = table[n];
  for (let turn = 0; turn < mostTurns; turn++) {
    let enter = 0;
    while (enter < width - 1 && cost[enter] >= -worthwhile) enter++;
    // The prices of the dual's lines are the lifts.
    if (enter === width - 1) return cost.slice(m, m + n);
    let leave = -1;
    let ratio = Number.POSITIVE_INFINITY;
    for (let i = 0; i < n; i++) {
      const pivot = table[i][enter];
      if (pivot <= worthwhile) continue;
      const next = table[i][width - 1] / pivot;
      if (next < ratio || (next === ratio && basis[i] < basis[leave])) {
        ratio = next;
        leave = i;
      }
    }
    if (leave < 0) break;
    pivotOn(table, leave, enter);
    basis[leave] = enter;
  }
  throw new RangeError('No position of the vehicles satisfies their bars');
}

function pivotOn(table: readonly Float64Array[], line: number, column: number): void {
  const chosen = table[line];
  const by = chosen[column];
  for (let j = 0; j < chosen.length; j++) chosen[j] /= by;
  for (const other of table) {
    const share = other[column];
    if (other === chosen || share === 0) continue;
    for (let j = 0; j < chosen.length; j++) other[j] -= share * chosen[j];
    other[column] = 0;
  }
}
