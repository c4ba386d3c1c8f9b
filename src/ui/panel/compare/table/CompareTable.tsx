import type { CompareRow } from '../../../../state/study/index.ts';
import { useShow } from '../../../show.ts';
import { useStudy } from '../useStudy.ts';
import { marginRows, measureRows, type TableCell, type TableRow } from './tableRows.ts';
import './compareTable.css';

const marks = { better: '▴', worse: '▾', same: '=' } as const;

/** Railways side by side: every margin, and what each takes. What is better or worse than the railway as it is carries a mark and a weight. */
export function CompareTable() {
  const show = useShow();
  const all = useStudy((state) => state.rows);
  const rows = all.filter(({ compared }) => compared !== null);
  if (rows.length === 0) return null;
  const margins = marginRows(rows, show);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: with many variants it scrolls sideways, by the keyboard too
    <section className="compare-table" aria-label="Comparison" tabIndex={0}>
      <table>
        <caption className="seen-by-readers">Margins and what each takes, against the railway as it is</caption>
        <thead>
          <tr>
            <td />
            {rows.map(({ id, name }) => (
              <th key={id ?? ''} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <Group title="Least margin" rows={margins} span={rows.length} />
        <Group title="What it takes" rows={measureRows(rows, 'track', show)} span={rows.length} />
        <Group title="How it runs" rows={measureRows(rows, 'run', show)} span={rows.length} />
      </table>
      {rows.length > 1 && (
        <p className="quiet about">
          {howRun(rows)} ▴ better than “{rows[0].name}”, ▾ worse, = no difference.
        </p>
      )}
    </section>
  );
}

/** How exactly the margins are known. */
function howRun(rows: readonly CompareRow[]): string {
  const run = rows.flatMap(({ exactness }) => exactness ?? []);
  if (run.every((one) => one === 'run')) return 'Margins in full.';
  return run.every((one) => one === 'steady')
    ? 'Margins by even running.'
    : 'Some margins in full, others by even running.';
}

interface GroupProps {
  readonly title: string;
  readonly rows: readonly TableRow[];
  readonly span: number;
}

function Group({ title, rows, span }: GroupProps) {
  if (rows.length === 0) return null;
  return (
    <tbody>
      <tr className="group">
        <th scope="rowgroup" colSpan={span + 1}>
          {title}
        </th>
      </tr>
      {rows.map(({ key, title: name, cells }) => (
        <tr key={key}>
          <th scope="row">{name}</th>
          {cells.map((cell, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its column
            <Cell key={k} cell={cell} />
          ))}
        </tr>
      ))}
    </tbody>
  );
}

function Cell({ cell: { text, than, fails } }: { readonly cell: TableCell }) {
  return (
    <td className={[than ?? '', fails ? 'fails' : ''].join(' ').trim() || undefined}>
      {text}
      {fails && <span className="seen-by-readers">, fails</span>}
      {than !== null && (
        <>
          <i aria-hidden="true">{marks[than]}</i>
          <span className="seen-by-readers">, {than === 'same' ? 'no difference' : than}</span>
        </>
      )}
    </td>
  );
}
