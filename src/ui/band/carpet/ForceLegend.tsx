import { useCallback } from 'react';
import type { BandFrame } from '../frame/bandFrame.ts';
import { type Paint, Painted } from '../frame/Painted.tsx';
import { bentTicks, type ForceColours } from './colourScales.ts';
import { patternsOf } from './patterns.ts';
import './legend.css';

interface Props {
  readonly frame: BandFrame;
  readonly colours: ForceColours;
  /** Of the row: what does not fit is left out from below. */
  readonly height: number;
}

const BAR = 8;
/** Half of the grey middle, as a share of a side. */
const SLACK_SHARE = 0.09;
/** Between figures, and between bare ticks, as shares of a side. */
const FIGURES_APART = 0.42;
const FIGURES_APART_NARROW = 0.55;
const TICKS_APART = 0.1;

/** The force scale with its bent ticks, the slack class and the thread. */
export function ForceLegend({ frame, colours, height }: Props) {
  const { layout, inks, paint: mode } = frame;
  const width = layout.right - 28;
  const half = width / 2;
  const paint = useCallback<Paint>(
    (context) => {
      const columns = context.canvas.width;
      const rows = context.canvas.height;
      const patterns =
        mode === 'pattern' ? patternsOf(context, layout.density, getComputedStyle(context.canvas).color) : null;
      for (let c = 0; c < columns; c++) {
        const at = ((c + 0.5) / columns) * 2 - 1;
        const size = Math.abs(at);
        const force = Math.sign(at) * colours.greatest * size ** (1 / 0.55);
        const shade = patterns
          ? patterns.fill(force, colours.greatest)
          : colours.shade(at < 0 ? 'buff' : 'draft', size);
        const slack = size < SLACK_SHARE;
        if (slack && patterns) continue;
        context.fillStyle = slack ? inks.slack : shade;
        context.fillRect(c, 0, 1, rows);
      }
    },
    [colours, inks, mode, layout.density],
  );
  const figures = bentTicks(colours.greatest, layout.narrow ? FIGURES_APART_NARROW : FIGURES_APART);
  const ticks = bentTicks(colours.greatest, TICKS_APART);
  const both = [-1, 1] as const;
  return (
    <div className="gwb-legend">
      <div className="gwb-legend-title">coupler force, N</div>
      <Painted width={width} height={BAR} density={layout.density} paint={paint} className="gwb-scale" />
      <svg className="gwb-ticks" width={width} height={15} aria-hidden="true">
        {both.flatMap((side) =>
          ticks.map(({ force, at }) => {
            const x = Math.min(width - 0.5, Math.max(0.5, half + side * at * half));
            return <line key={`${side} ${force}`} x1={x} x2={x} y1={0} y2={3} className="gwb-tick" />;
          }),
        )}
        {both.flatMap((side) =>
          figures.map(({ force, at }) => (
            <text
              key={`${side} ${force}`}
              x={half + side * at * half}
              y={13}
              textAnchor={at < 1 ? 'middle' : side < 0 ? 'start' : 'end'}
              className="gwb-axis-figure"
            >
              {force}
            </text>
          )),
        )}
      </svg>
      <div className="gwb-ends">
        <span>◂ buff</span>
        <span>draft ▸</span>
      </div>
      {height >= 72 ? (
        <div className="gwb-key">
          <span className="gwb-slack-key" /> slack{layout.narrow ? '' : ', floating'}
        </div>
      ) : null}
      {height >= 90 && !layout.narrow ? (
        <div className="gwb-key">
          <svg width="8" height="10" aria-hidden="true">
            <line x1="1" y1="0.5" x2="7" y2="9.5" className="gwb-thread" />
          </svg>
          train at this moment
        </div>
      ) : null}
    </div>
  );
}
