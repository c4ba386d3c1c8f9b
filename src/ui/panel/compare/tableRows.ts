import { riskTitle, showAmount } from '../../../core/findings/index.ts';
import type { RiskId } from '../../../core/risks/types.ts';
import { formatNumber, thinSpace } from '../../../core/units/index.ts';
import type { CompareRow, Costs } from '../../../state/study/index.ts';
import { distanceShown, gradeShown, lengthShown, radiusShown, type Show } from '../../show.ts';

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

interface CostKind {
  readonly key: string;
  readonly title: string;
  readonly of: (costs: Costs) => number | null;
  readonly text: (value: number, costs: Costs, show: Show) => string;
  /** 1: more is better; -1: less is. */
  readonly better: 1 | -1;
}

const joined = ({ shown: [figure, unit] }: { readonly shown: readonly [string, string] }): string =>
  unit === '' ? figure : `${figure}${thinSpace}${unit}`;

const squareFoot = 0.3048 * 0.3048;

const kinds: readonly CostKind[] = [
  {
    key: 'length',
    title: 'Strip',
    of: ({ length }) => length,
    text: (value, _, show) => joined(distanceShown(value, show)),
    better: -1,
  },
  {
    key: 'deck',
    title: 'Deck to cut',
    of: ({ deck }) => deck,
    text: (value, _, { lengthUnit }) =>
      lengthUnit === 'mm'
        ? `${formatNumber(value, { digits: 2 })}${thinSpace}m²`
        : `${formatNumber(value / squareFoot, { digits: 1 })}${thinSpace}ft²`,
    better: -1,
  },
  {
    key: 'room',
    title: 'Room',
    of: ({ width, depth }) => width * depth,
    text: (_, { width, depth }, show) =>
      `${lengthShown(width, show).shown[0].replace(/\.\d+$/, '')} × ${lengthShown(depth, show).shown[0].replace(/\.\d+$/, '')}`,
    better: -1,
  },
  {
    key: 'rise',
    title: 'Rise',
    of: ({ rise }) => rise,
    text: (value, _, show) => joined(lengthShown(value, show)),
    better: 1,
  },
  {
    key: 'steepest',
    title: 'Steepest',
    of: ({ steepest }) => steepest,
    text: (value, _, show) => joined(gradeShown(value, show)),
    better: -1,
  },
  {
    key: 'tightest',
    title: 'Tightest',
    of: ({ tightest }) => (Number.isFinite(tightest) ? tightest : null),
    text: (value, _, show) => joined(radiusShown(value, show)),
    better: 1,
  },
  {
    key: 'headroom',
    title: 'Headroom',
    of: ({ headroom }) => headroom,
    text: (value, _, show) => joined(lengthShown(value, show)),
    better: 1,
  },
];

/** What each railway takes to build; rows that say nothing are left out. */
export function costRows(rows: readonly CompareRow[], show: Show): TableRow[] {
  return kinds.flatMap(({ key, title, of, text, better }) => {
    const values = rows.map(({ costs }) => costs && of(costs));
    if (values.every((value) => value === null)) return [];
    const [first] = values;
    const cells = rows.map(({ costs }, k): TableCell => {
      const value = values[k];
      if (costs === null || value === null) return nothing;
      const than = k === 0 || first === null ? null : standing(value, first, better);
      return { text: text(value, costs, show), than, fails: false };
    });
    return [{ key, title, cells }];
  });
}

function standing(value: number, than: number, better: 1 | -1): 'better' | 'worse' | 'same' {
  if (Math.abs(value - than) <= same * Math.max(Math.abs(value), Math.abs(than))) return 'same';
  return (value - than) * better > 0 ? 'better' : 'worse';
}
