import type { ReactNode } from 'react';
import { type Probe, passesBy, type SweepState } from '../../../../state/study/index.ts';
import { figure } from '../words.ts';
import './sweepChart.css';

/** A sweep as far as it is drawn. */
export interface DrawnSweep extends Pick<SweepState, 'points' | 'gauge' | 'limits'> {
  readonly ask: Pick<SweepState['ask'], 'from' | 'to'>;
  readonly line: { readonly edges: readonly { readonly passes: number; readonly fails: number }[] } | null;
}

export interface SweepDrawing {
  readonly sweep: DrawnSweep;
  readonly unit: string;
  /** What is varied. */
  readonly title: string;
  readonly chosen: number | null;
  readonly onChoose: (at: number) => void;
}

export type Swept = { readonly at: number; readonly probe: Probe };

const size = { width: 312, height: 190, left: 44, right: 8, top: 20, bottom: 36 };

/** The field that curves are drawn in. */
export const field = {
  left: size.left,
  right: size.width - size.right,
  top: size.top,
  bottom: size.height - size.bottom,
} as const;

/** Place of a swept value across the field. */
export function acrossOf({ from, to }: DrawnSweep['ask']): (at: number) => number {
  const low = Math.min(from, to);
  const span = Math.abs(to - from);
  return (at) => field.left + ((at - low) / span) * (field.right - field.left);
}

export const inOrder = (points: DrawnSweep['points']): Swept[] => [...points].sort((a, b) => a.at - b.at);

interface SweepFrameProps extends SweepDrawing {
  readonly label: string;
  /** Height of a run's dot. */
  readonly heightOf: (probe: Probe) => number;
  readonly children: ReactNode;
}

/** A curve over the swept number: its axis, every run a dot, every edge of what passes a line; `children` are drawn under them. */
export function SweepFrame({ sweep, unit, title, chosen, onChoose, label, heightOf, children }: SweepFrameProps) {
  const { ask, gauge, limits, line } = sweep;
  const x = acrossOf(ask);
  const passes = passesBy(gauge, limits);
  const lettered = (line?.edges ?? []).map(({ passes: good, fails }) => ({ at: (good + fails) / 2, good }));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
    <svg className="sweep-chart" viewBox={`0 0 ${size.width} ${size.height}`} role="group" aria-label={label}>
      {children}
      {lettered.map(({ at, good }) => (
        <g key={at} className="edge">
          <line x1={x(at)} x2={x(at)} y1={field.top} y2={field.bottom} />
          <text x={Math.min(Math.max(x(at), 30), size.width - 30)} y={field.top - 6} textAnchor="middle">
            {figure(good)}
          </text>
        </g>
      ))}
      {inOrder(sweep.points).map(({ at, probe }) => {
        const good = passes(probe);
        const select = () => onChoose(at);
        return (
          // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
          <circle
            key={at}
            className={`dot${good ? '' : ' fails'}${at === chosen ? ' chosen' : ''}`}
            role="button"
            tabIndex={0}
            aria-label={`${figure(at)} ${unit}, ${good ? 'passes' : 'fails'}`}
            cx={x(at)}
            cy={heightOf(probe)}
            r={at === chosen ? 5 : 3.5}
            onClick={select}
            onKeyDown={(event) => {
              if (event.key === 'Enter' || event.key === ' ') select();
            }}
          />
        );
      })}
      <text className="axis" x={field.left} y={field.bottom + 14}>
        {figure(Math.min(ask.from, ask.to))}
      </text>
      <text className="axis" x={field.right} y={field.bottom + 14} textAnchor="end">
        {figure(Math.max(ask.from, ask.to))} {unit}
      </text>
      <text className="axis" x={(field.left + field.right) / 2} y={size.height - 8} textAnchor="middle">
        {title}
      </text>
    </svg>
  );
}
