import type { Finding } from '../../../core/findings/types.ts';
import type { RiskId } from '../../../core/risks/types.ts';

/** A row of the band that can be folded and moved. */
export type RowId = 'section' | 'curvature' | 'speed' | 'carpet' | RiskId;

/** Which rows the person wants, in which order; null for a row set by itself to what fits. */
export interface RowChoice {
  readonly order: readonly RowId[];
  readonly folded: ReadonlySet<RowId>;
}

const DRAWN: readonly RowId[] = ['section', 'curvature', 'speed', 'carpet'];

/** A choice as text to keep. */
export const writeRowChoice = ({ order, folded }: RowChoice): string => JSON.stringify({ order, folded: [...folded] });

/** Reads what `writeRowChoice` wrote; null for anything else. Rows that no longer are simply find no row. */
export function readRowChoice(text: string | null): RowChoice | null {
  try {
    const read: unknown = JSON.parse(text ?? 'null');
    if (typeof read !== 'object' || read === null) return null;
    const { order, folded } = read as { readonly order?: unknown; readonly folded?: unknown };
    const isNames = (list: unknown): list is RowId[] =>
      Array.isArray(list) && list.every((name) => typeof name === 'string');
    return isNames(order) && isNames(folded) ? { order, folded: new Set(folded) } : null;
  } catch {
    return null;
  }
}

/** All rows there are for a trial: the drawn ones, then its risks from the gravest down. */
export function allRows(risks: readonly RiskId[], findings: readonly Finding[]): RowId[] {
  const gravity = new Map<RiskId, number>();
  for (const [index, finding] of findings.entries()) if (!gravity.has(finding.risk)) gravity.set(finding.risk, index);
  const place = (risk: RiskId) => gravity.get(risk) ?? findings.length;
  // Sorting is stable, so risks without a finding keep the order they are registered in.
  return [...DRAWN, ...[...risks].sort((a, b) => place(a) - place(b))];
}

/**
 * The rows that fit into `room` px: the drawn ones first (curvature the first to go, the speed next), then as many risks
 * as there is room for, from the gravest down, and always at least three of them. `silent` rows have nothing to say.
 */
export function fittingRows(
  rows: readonly RowId[],
  heightOf: (row: RowId) => number,
  room: number,
  silent: ReadonlySet<RowId>,
): RowId[] {
  const LEAST_RISKS = 3;
  const risks = rows.filter((row) => !DRAWN.includes(row) && !silent.has(row));
  const total = (chosen: readonly RowId[]) => chosen.reduce((sum, row) => sum + heightOf(row), 0);
  const musts = risks.slice(0, LEAST_RISKS);
  let drawn = rows.filter((row) => DRAWN.includes(row));
  for (const row of ['curvature', 'speed'] as const) {
    if (total([...drawn, ...musts]) > room) drawn = drawn.filter((one) => one !== row);
  }
  const chosen = [...drawn, ...musts];
  for (const risk of risks.slice(LEAST_RISKS)) {
    if (total([...chosen, risk]) <= room) chosen.push(risk);
  }
  return chosen;
}

/** The rows of a person's choice that this trial has, in their order; rows never seen before go last. */
export function chosenRows(rows: readonly RowId[], choice: RowChoice): RowId[] {
  return orderedRows(rows, choice.order).filter((row) => !choice.folded.has(row));
}

export function orderedRows(rows: readonly RowId[], order: readonly RowId[]): RowId[] {
  return [...order.filter((row) => rows.includes(row)), ...rows.filter((row) => !order.includes(row))];
}

/** The order with one row moved up (-1) or down (1) among those this trial has. */
export function movedRow(order: readonly RowId[], row: RowId, by: -1 | 1): RowId[] {
  const at = order.indexOf(row);
  const to = at + by;
  if (at < 0 || to < 0 || to >= order.length) return [...order];
  const moved = [...order];
  moved[at] = moved[to];
  moved[to] = row;
  return moved;
}
