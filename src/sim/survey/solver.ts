import type { Highs } from 'highs';
import type { MendProblem, MendRow } from '../../core/survey/types.ts';

/** A problem to minimise once: one objective of a MendProblem, with rows added. */
export interface LinearTask {
  readonly variables: MendProblem['variables'];
  readonly objective: MendRow['terms'];
  readonly rows: readonly Pick<MendRow, 'terms' | 'most'>[];
}

export type LinearAnswer =
  | { readonly status: 'optimal'; readonly values: Float64Array; readonly value: number; readonly bound: number }
  /** Stopped at the node limit with an answer whose value may be up to value - bound above the least. */
  | { readonly status: 'stopped'; readonly values: Float64Array; readonly value: number; readonly bound: number }
  | { readonly status: 'infeasible' }
  /** Stopped before any answer was found. */
  | { readonly status: 'unknown' };

/** Solves linear and mixed-integer problems exactly. */
export type Solver = (task: LinearTask) => LinearAnswer;

/** Branches looked at before the solver stops: minutes of work. A count and not a time, so that every machine gives the same. */
const mostNodes = 50_000;

let loading: Promise<Solver> | null = null;

/**
 * The solver, loaded when first asked for. `wasmUrl` says where a browser finds its WebAssembly file; Node finds it beside the
 * package. Nothing is fetched from anywhere else.
 */
export function loadSolver(wasmUrl?: string): Promise<Solver> {
  loading ??= import('highs').then(async ({ default: load }) => {
    const highs = await load(wasmUrl === undefined ? {} : { locateFile: () => wasmUrl });
    return (task) => solve(highs, task);
  });
  // A failed load (no network to one's own server) may be tried again.
  loading.catch(() => {
    loading = null;
  });
  return loading;
}

function solve(highs: Highs, { variables, objective, rows }: LinearTask): LinearAnswer {
  if (variables.length === 0) return nothingToChoose(rows);
  const { variableType, modelStatus } = highs.constants;
  const cost = new Float64Array(variables.length);
  for (const [variable, coefficient] of objective) cost[variable] += coefficient;
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of rows) {
    for (const [variable, coefficient] of row.terms) {
      indices.push(variable);
      values.push(coefficient);
    }
    starts.push(indices.length);
  }
  const whole = variables.some((variable) => variable.whole);
  return highs.withModel(
    {
      numCols: variables.length,
      numRows: rows.length,
      colCost: cost,
      colLower: Float64Array.from(variables, ({ least }) => least),
      colUpper: Float64Array.from(variables, ({ most }) => most),
      rowLower: new Float64Array(rows.length).fill(Number.NEGATIVE_INFINITY),
      rowUpper: Float64Array.from(rows, ({ most }) => most),
      matrix: { format: 'csr', numRows: rows.length, numCols: variables.length, starts, indices, values },
      ...(whole
        ? { integrality: variables.map((one) => (one.whole ? variableType.integer : variableType.continuous)) }
        : {}),
    },
    (model): LinearAnswer => {
      // No gap is let pass, so that "optimal" means it.
      model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0, mip_max_nodes: mostNodes });
      const { modelStatus: status } = model.run();
      if (status === modelStatus.infeasible || status === modelStatus.unboundedOrInfeasible) {
        return { status: 'infeasible' };
      }
      const value = model.getObjectiveValue();
      const { colValue } = model.getSolution();
      if (status === modelStatus.optimal) return { status: 'optimal', values: colValue, value, bound: value };
      if (!Number.isFinite(value) || colValue.length < variables.length) return { status: 'unknown' };
      return { status: 'stopped', values: colValue, value, bound: Number(model.info.get('mip_dual_bound')) };
    },
  );
}

/** How far a row without variables may be missed: the solver's own tolerance for rows. */
const rowTolerance = 1e-7;

/** A problem without variables, which the solver does not take: it holds or it does not. */
function nothingToChoose(rows: LinearTask['rows']): LinearAnswer {
  if (rows.some(({ most }) => most < -rowTolerance)) return { status: 'infeasible' };
  return { status: 'optimal', values: new Float64Array(0), value: 0, bound: 0 };
}
