import { createRequire } from 'node:module';

/** The part of odex that is used here. Its own types are sources that a strict compiler will not pass. */
interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(
    slope: (t: number, y: number[]) => number[],
    from: number,
    start: readonly number[],
    to: number,
  ): { readonly y: number[] };
}

const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (dimension: number) => OdexSolver };

/** Gragg-Bulirsch-Stoer extrapolation of odex 2, at one absolute and relative tolerance. */
export function odexSolver(dimension: number, tolerance: number): OdexSolver {
  const solver = new Solver(dimension);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 10_000_000;
  return solver;
}
