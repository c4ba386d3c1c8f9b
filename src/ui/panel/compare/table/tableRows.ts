import { riskTitle, showAmount } from '../../../../core/findings/index.ts';
import type { RiskId } from '../../../../core/risks/types.ts';
import { type CompareRow, type Measure, measures } from '../../../../state/study/index.ts';
import type { Show } from '../../../show.ts';
import { measureWords } from '../measureWords.ts';

/** One cell of the table: what it says, and how it stands to the railway as it is. */
export interface TableCell {
  readonly text: string;
  readonly than: 'better' | 'worse' | 'same' | null;
  readonly fails: boolean;
}

export interface TableRow {
  readonly key: string;
  readonly title: string;
  readonly cells: readonly TableCell[];
}

/** Differences below this share of the greater are none a builder would notice. */
const same = 5e-3;

const nothing: TableCell = { text: '–', than: null, fails: false };

/** The margins of every risk that has something to say anywhere, the closest call first. */
export function marginRows(rows: readonly CompareRow[], show: Show): TableRow[] {
  const all = rows.map((row) => leastByRisk(row));
  const least = new Map<RiskId, number>();
  for (const risks of all) {
    for (const [risk, { share }] of risks) least.set(risk, Math.min(share, least.get(risk) ?? share));
  }
  const order = [...least].sort((a, b) => a[1] - b[1]).map(([risk]) => risk);
  return order.map((risk) => {
    const first = all[0]?.get(risk);
    const cells = all.map((risks, k): TableCell => {
      const own = risks.get(risk);
      if (own === undefined) return nothing;
      const than = k === 0 || first === undefined ? null : standing(own.margin, first.margin, 1);
      return { text: showAmount(own.margin, own.unit, show), than, fails: own.margin < 0 };
    });
    return { key: risk, title: riskTitle(risk), cells };
  });
}

/** The least margin of each risk over the trials of a railway. */
function leastByRisk({ compared }: CompareRow) {
  const least = new Map<RiskId, { margin: number; share: number; unit: Parameters<typeof showAmount>[1] }>();
  if (!compared?.probe.ok) return least;
  for (const { risks } of compared.probe.trials) {
    for (const { risk, margin, share, unit } of risks) {
      const before = least.get(risk);
      if (before === undefined || share < before.share) least.set(risk, { margin, share, unit });
    }
  }
  return least;
}

/** What the trials of each railway come to, or what its tracks take; measures of which none has anything to say are left out. */
export function measureRows(rows: readonly CompareRow[], of: Measure['of'], show: Show): TableRow[] {
  return measures.flatMap((measure) => {
    if (measure.of !== of) return [];
    const values = rows.map(({ compared }) => compared && measure.value(compared.probe));
    if (values.every((value) => value === null || !Number.isFinite(value))) return [];
    const [first] = values;
    const cells = values.map((value, k): TableCell => {
      if (value === null) return nothing;
      const than = k === 0 || first === null ? null : standing(value, first, measure.better === 'more' ? 1 : -1);
      return { text: measureWords(measure, value, show), than, fails: false };
    });
    return [{ key: measure.id, title: measure.title, cells }];
  });
}

function standing(value: number, than: number, better: 1 | -1): 'better' | 'worse' | 'same' {
  const within = Number.isFinite(value - than) ? same * Math.max(Math.abs(value), Math.abs(than)) : 0;
  if (value === than || Math.abs(value - than) <= within) return 'same';
  return (value - than) * better > 0 ? 'better' : 'worse';
}
