import type { MendTask, ShimStep } from '../../../core/survey/types.ts';
import { useShow } from '../../show.ts';
import { millimetreFigure, workWords } from './words.ts';

interface ShimTableProps {
  readonly steps: readonly ShimStep[];
  readonly task: MendTask;
}

/** The work in its order: what to do at which support, and the rail top before and after. */
export function ShimTable({ steps, task }: ShimTableProps) {
  const show = useShow();
  return (
    <table className="survey-table shims">
      <caption className="seen-by-readers">What to do, in this order</caption>
      <thead>
        <tr>
          <th scope="col">support</th>
          <th scope="col">{task.adjuster.kind === 'nut' ? `nut, ${task.adjuster.thread}` : 'pieces'}</th>
          <th scope="col" className="number">
            by
          </th>
          <th scope="col" className="number">
            rail top, {show.lengthUnit}
          </th>
        </tr>
      </thead>
      <tbody>
        {steps.map((step) => (
          <tr key={step.support}>
            <th scope="row">{step.support + 1}</th>
            <td>
              <b>{workWords(step, show)}</b>
            </td>
            <td className="number">{millimetreFigure(step.change, show, 2, true)}</td>
            <td className="number">
              {millimetreFigure(step.before, show)} → {millimetreFigure(step.after, show)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
