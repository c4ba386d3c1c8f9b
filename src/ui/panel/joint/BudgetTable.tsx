import { useMemo, useState } from 'react';
import { type BudgetLabel, errorBudgets } from '../../../core/risks/index.ts';
import { placeWords } from '../../../state/index.ts';
import { trackChainage } from '../../band/frame/motion.ts';
import { marginFigure, marginUnit } from '../../band/words.ts';
import { useDesk, useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';

const lineWords: Readonly<Record<BudgetLabel, string>> = {
  'planned-track': 'planned track',
  'built-track': 'as built',
  'fitted-heads': 'heads as fitted',
  'leading-head': 'leading head',
  'trailing-head': 'trailing head',
  supports: 'supports',
};

/** What makes the heads of this joint differ in height where they differ most, with the play of each, against what holds them. */
export function BudgetTable({ joint }: { readonly joint: number }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="budget" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Error budget</summary>
      {open && <Lines joint={joint} />}
    </details>
  );
}

/** Worked out only when looked at: every support near every joint is moved for it. */
function Lines({ joint }: { readonly joint: number }) {
  const { actions } = useDesk();
  const show = useShow();
  const trial = useSession((state) => state.trial);
  const result = useSession((state) => state.result);
  const budgets = useMemo(
    () => (trial && result && result.trialId === trial.id ? errorBudgets({ ...trial, run: result.run }) : []),
    [trial, result],
  );
  const budget = budgets[joint];
  if (!trial || !result || !budget) return <p className="quiet">Not before the trial is solved.</p>;
  const figure = (value: number) => marginFigure(value, 'length', show).replace(/^\+/, '');
  const { engagement, facing, worstCase, likely, mismatch, frame } = budget;
  const lines = budget.lines.filter(({ value, tolerance }) => value !== 0 || tolerance !== 0);
  return (
    <>
      <table>
        <caption className="seen-by-readers">Error budget of the heads, {marginUnit('length', show)}</caption>
        <thead>
          <tr>
            <th scope="col">{marginUnit('length', show)}</th>
            <th scope="col">known</th>
            <th scope="col">±</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ label, value, tolerance }) => (
            <tr key={label}>
              <th scope="row">{lineWords[label]}</th>
              <td>{value === 0 ? '' : figure(value)}</td>
              <td>{tolerance === 0 ? '' : figure(tolerance)}</td>
            </tr>
          ))}
          <tr className="sum">
            <th scope="row">as known</th>
            <td colSpan={2}>{figure(mismatch)}</td>
          </tr>
          <tr>
            <th scope="row">likely</th>
            <td colSpan={2}>{figure(likely)}</td>
          </tr>
          <tr>
            <th scope="row">at worst</th>
            <td colSpan={2}>{figure(worstCase)}</td>
          </tr>
          {Number.isFinite(engagement) && (
            <tr className={mismatch > engagement ? 'sum fails' : 'sum'}>
              <th scope="row">holds pulled</th>
              <td colSpan={2}>{figure(engagement)}</td>
            </tr>
          )}
          {Number.isFinite(facing) && (
            <tr className={mismatch > facing ? 'fails' : undefined}>
              <th scope="row">holds pushed</th>
              <td colSpan={2}>{figure(facing)}</td>
            </tr>
          )}
        </tbody>
      </table>
      <button
        type="button"
        className="link"
        onClick={() => {
          actions.pause();
          actions.seek(result.run.time[frame]);
        }}
      >
        at {placeWords(trackChainage(trial.path, budget.chainage), show)}
      </button>
    </>
  );
}
