import { type Ref, useImperativeHandle, useRef } from 'react';
import { valueAt } from './frame/axis.ts';
import type { BandFrame } from './frame/bandFrame.ts';
import { useLive } from './frame/live.ts';
import type { PointerMarks } from './frame/useBodyPointer.ts';
import { axisTicks } from './rows/AxisRow.tsx';
import { chainageFigure } from './words.ts';
import './overlay.css';

/** The grid behind the rows: one line a figure of the axis. */
export function Grid({ frame, height }: { readonly frame: BandFrame; readonly height: number }) {
  const { axis, layout, show } = frame;
  return (
    <svg className="gwb-grid" width={axis.width} height={height} style={{ left: layout.gutter }} aria-hidden="true">
      {axisTicks({ axis, show }).map((tick) => (
        <line key={tick.text} x1={tick.x} x2={tick.x} y1={0} y2={height} />
      ))}
    </svg>
  );
}

/** Over the rows: the playhead, the pointer's hairline with what stands there, and a range being marked. */
export function Overlay({ frame, marks }: { readonly frame: BandFrame; readonly marks: Ref<PointerMarks> }) {
  const { axis, layout, live, show, view } = frame;
  const playhead = useRef<HTMLDivElement>(null);
  const hairline = useRef<HTMLDivElement>(null);
  const words = useRef<HTMLDivElement>(null);
  const place = useRef<HTMLDivElement>(null);
  const brush = useRef<HTMLDivElement>(null);
  const { density } = layout;

  useLive(live, ({ x }) => {
    const element = playhead.current;
    if (!element) return;
    element.style.visibility = x >= -0.5 && x <= axis.width + 0.5 ? '' : 'hidden';
    // On whole device pixels the line keeps its weight while it moves.
    element.style.transform = `translateX(${Math.round(x * density) / density}px)`;
  });

  useImperativeHandle(
    marks,
    (): PointerMarks => ({
      hover: (at) => {
        if (!hairline.current || !words.current || !place.current) return;
        hairline.current.hidden = at === null;
        if (!at) return;
        hairline.current.style.transform = `translateX(${at.x}px)`;
        const value = valueAt(axis, at.x);
        place.current.textContent = axis.kind === 'time' ? `${value.toFixed(1)} s` : chainageFigure(value, show);
        words.current.textContent = at.text;
        words.current.hidden = at.text === '';
        words.current.style.top = `${at.y}px`;
        hairline.current.classList.toggle('gwb-flip', at.x > axis.width * 0.72);
      },
      brush: (range) => {
        if (!brush.current) return;
        brush.current.hidden = range === null;
        if (!range) return;
        const from = Math.max(0, Math.min(range.from, range.to));
        const to = Math.min(axis.width, Math.max(range.from, range.to));
        brush.current.style.transform = `translateX(${from}px)`;
        brush.current.style.width = `${to - from}px`;
      },
    }),
    [axis, show],
  );

  return (
    <div className="gwb-overlay" style={{ left: layout.gutter, width: axis.width }} aria-hidden="true">
      <div ref={brush} className="gwb-range" hidden />
      {view.motion ? <div ref={playhead} className="gwb-playhead" /> : null}
      <div ref={hairline} className="gwb-hairline" hidden>
        <div ref={words} className="gwb-hover" />
        <div ref={place} className="gwb-hover gwb-hover-place" />
      </div>
    </div>
  );
}
