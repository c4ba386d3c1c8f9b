/**
 * What a step costs at the least when each vehicle waits for the one before: the bare recurrence, elimination of a
 * tridiagonal system over the train and back substitution, and nothing else: no forces, no tables, no checks, no motion.
 *
 * @returns ms for the steps, and a number that depends on all of them, so that none can be left out
 */
export function chainBound(vehicles: number, steps: number): { took: number; check: number } {
  const upper = new Float64Array(vehicles);
  const right = new Float64Array(vehicles);
  let check = 0;
  const began = performance.now();
  for (let k = 0; k < steps; k++) {
    let c = 0;
    let d = check * 1e-9;
    for (let i = 0; i < vehicles; i++) {
      const pivot = 1 / (3 + c);
      d = (1 + d) * pivot;
      c = -pivot;
      upper[i] = c;
      right[i] = d;
    }
    let mean = 0;
    for (let i = vehicles - 1; i >= 0; i--) mean = right[i]! - upper[i]! * mean;
    check = mean;
  }
  return { took: performance.now() - began, check };
}
