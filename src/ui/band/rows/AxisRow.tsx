import { useMemo, useRef } from 'react';
import { footTicks, ticksOf, xOf } from '../frame/axis.ts';
import type { BandFrame } from '../frame/bandFrame.ts';
import { ROW_HEIGHT } from '../frame/layout.ts';
import { useLive } from '../frame/live.ts';
import { chainageFigure, chainageUnit } from '../words.ts';
import { RowList, type RowListProps } from './RowList.tsx';
import './axis.css';

/** Between figures of the axis, px. */
const FIGURES = 34;

/** Half widths of the flag's edges and of a letter in it and on the axis, px: figures that it would cut give way to it. */
const FLAG_EDGE = 7;
const FLAG_LETTER = 3.1;
const FIGURE_LETTER = 2.8;
/** Feet and inches are wider. */
const FEET = 44;

export function axisTicks({ axis, show }: Pick<BandFrame, 'axis' | 'show'>) {
  const inFeet = axis.kind === 'chainage' && show.lengthUnit === 'in';
  const ticks = inFeet ? footTicks(axis.span, axis.width, FEET) : ticksOf(axis.span, axis.width, FIGURES);
  return ticks.map((tick) => ({ text: tick.text, x: xOf(axis, tick.value) }));
}

/** The foot of the band: figures of the shared axis, the playhead's flag, and the list of rows. */
export function AxisRow({ frame, list }: { readonly frame: BandFrame; readonly list: RowListProps }) {
  const { axis, show, live, trackName, layout, view } = frame;
  const ticks = useMemo(() => axisTicks({ axis, show }), [axis, show]);
  const flag = useRef<HTMLDivElement>(null);
  const figures = useRef<(SVGTextElement | null)[]>([]);
  useLive(live, (moment) => {
    const element = flag.current;
    if (!element) return;
    const text = axis.kind === 'time' ? moment.time.toFixed(1) : chainageFigure(moment.place, show);
    if (element.textContent !== text) element.textContent = text;
    const off = !(moment.x >= -0.5 && moment.x <= axis.width + 0.5);
    element.style.visibility = off ? 'hidden' : '';
    element.style.transform = `translateX(${moment.x.toFixed(2)}px) translateX(-50%)`;
    for (const [index, figure] of figures.current.entries()) {
      const tick = ticks[index];
      if (!figure || !tick) continue;
      const clear = FLAG_EDGE + text.length * FLAG_LETTER + tick.text.length * FIGURE_LETTER;
      figure.style.visibility = !off && Math.abs(tick.x - moment.x) < clear ? 'hidden' : '';
    }
  });
  return (
    <div className="gwb-row gwb-axis" style={{ height: ROW_HEIGHT.axis + (layout.narrow ? 1 : 0) }}>
      <div className="gwb-gutter">
        <div className="gwb-line">
          <span className="gwb-sub">{axis.kind === 'time' ? 'Time from the start' : `Chainage, ${trackName}`}</span>
          <span className="gwb-unit">{axis.kind === 'time' ? 's' : chainageUnit(show)}</span>
        </div>
      </div>
      <div className="gwb-axis-body">
        <svg className="gwb-draw" width={axis.width} height={ROW_HEIGHT.axis} aria-hidden="true">
          {ticks.map((tick, index) => (
            <g key={tick.text}>
              <line x1={tick.x} x2={tick.x} y1={0} y2={4} className="gwb-tick" />
              <text
                ref={(text) => {
                  figures.current[index] = text;
                }}
                x={tick.x}
                y={14.5}
                textAnchor="middle"
                className="gwb-axis-figure"
              >
                {tick.text}
              </text>
            </g>
          ))}
        </svg>
        {view.motion ? <div ref={flag} className="gwb-flag" aria-hidden="true" /> : null}
      </div>
      <div className="gwb-right">
        <RowList {...list} narrow={layout.narrow} />
      </div>
    </div>
  );
}
