import type { Measure, Probe } from '../../../../state/study/index.ts';
import { useShow } from '../../../show.ts';
import { measureWords } from '../measureWords.ts';
import { evenTicks, spanOf } from '../scales.ts';
import { acrossOf, field, inOrder, type SweepDrawing, SweepFrame } from './SweepFrame.tsx';

interface MeasureChartProps extends SweepDrawing {
  readonly measure: Measure;
}

/** Room kept between the curve and the edges of the field, as a share of it. */
const kept = 0.1;

/** How many values are written at the side. */
const written = 4;

/** A measure against the swept number: its curve in its own unit, and its limits where some are set. */
export function MeasureChart({ measure, ...drawing }: MeasureChartProps) {
  const show = useShow();
  const { ask, limits, points: unordered } = drawing.sweep;
  const own = limits.filter((limit) => limit.measure === measure.id);
  const x = acrossOf(ask);
  const points = inOrder(unordered).map(({ at, probe }) => ({ at, value: finite(measure.value(probe)) }));
  const span = spanOf([...points.map(({ value }) => value), ...own.map(({ amount }) => amount)], kept);
  if (span === null) {
    return <p className="quiet about">{measure.title}: nothing to say in this range.</p>;
  }
  const y = (value: number) =>
    field.bottom - ((value - span.low) / (span.high - span.low)) * (field.bottom - field.top);
  const heightOf = (probe: Probe) => {
    const value = finite(measure.value(probe));
    return value === null ? field.bottom : y(value);
  };
  return (
    <SweepFrame {...drawing} label={`${measure.title} over the sweep`} heightOf={heightOf}>
      {own.map(({ bound, amount }) => {
        const [top, bottom] = bound === 'most' ? [field.top, y(amount)] : [y(amount), field.bottom];
        return (
          <rect
            key={bound}
            className="beyond"
            x={field.left}
            y={top}
            width={field.right - field.left}
            height={Math.max(0, bottom - top)}
          />
        );
      })}
      {evenTicks(span, written).map((value) => (
        <g key={value}>
          <line className="plenty" x1={field.left} x2={field.right} y1={y(value)} y2={y(value)} />
          <text className="axis" x={field.left - 4} y={y(value) + 3.5} textAnchor="end">
            {measureWords(measure, value, show)}
          </text>
        </g>
      ))}
      {runsOf(points).map((run) => (
        <g key={run[0].at} className="curve">
          <polyline points={run.map(({ at, value }) => `${x(at)},${y(value)}`).join(' ')} />
        </g>
      ))}
      {own.map(({ bound, amount }) => (
        <line key={bound} className="limit" x1={field.left} x2={field.right} y1={y(amount)} y2={y(amount)} />
      ))}
    </SweepFrame>
  );
}

const finite = (value: number | null): number | null => (value !== null && Number.isFinite(value) ? value : null);

interface Known {
  readonly at: number;
  readonly value: number;
}

/** Neighbours that have something to say, in pieces: a curve is not drawn over what could not be run. */
function runsOf(points: readonly { readonly at: number; readonly value: number | null }[]): Known[][] {
  const runs: Known[][] = [];
  let open: Known[] | null = null;
  for (const { at, value } of points) {
    if (value === null) open = null;
    else if (open === null) {
      open = [{ at, value }];
      runs.push(open);
    } else open.push({ at, value });
  }
  return runs;
}
