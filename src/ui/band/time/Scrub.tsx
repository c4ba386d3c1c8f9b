import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'react';
import { type AxisScale, between, showsAll, tickStep, valueAt, xOf } from '../frame/axis.ts';
import type { BandFrame } from '../frame/bandFrame.ts';
import { useLive } from '../frame/live.ts';
import { frameAt, valueBetween } from '../frame/motion.ts';
import { timeAtEnd, timeAtX, timeNextSupport, timeOneCell } from '../frame/navigate.ts';
import { placeMarks, scrubMarks } from './scrubMarks.ts';
import './scrub.css';

const LINE = 22;
const KNOB = 6;
/** Half the reach of a brush grip, px. */
const GRIP = 7;
/** Between time figures, px. */
const FIGURES = 56;

interface TimeTick {
  readonly x: number;
  readonly text: string;
}

/**
 * Seconds along the scrub. On a chainage axis each stands where the train's reference is at that second, so they crowd
 * where it is slow; a figure that would run into the one before is left out, its tick stays.
 */
function timeTicks(overview: AxisScale, duration: number, xAt: (time: number) => number): TimeTick[] {
  if (!(duration > 0)) return [];
  const step = tickStep({ from: 0, to: duration }, overview.width, FIGURES);
  const ticks: TimeTick[] = [];
  let free = Number.NEGATIVE_INFINITY;
  let freeBack = Number.POSITIVE_INFINITY;
  for (let n = 0; n * step <= duration + 1e-9; n++) {
    const x = xAt(n * step);
    // A train that runs towards smaller chainages fills the scrub from the right.
    const fits = x >= free || x <= freeBack;
    if (fits) {
      free = x + FIGURES * 0.7;
      freeBack = x - FIGURES * 0.7;
    }
    ticks.push({ x, text: fits ? `${Number((n * step).toFixed(2))} s` : '' });
  }
  return ticks;
}

interface Props {
  readonly frame: BandFrame;
  readonly height: number;
}

/** The whole trial at a glance: the line to scrub on, what happened by name, and the brush over what the rows show. */
export function Scrub({ frame, height }: Props) {
  const { view, axis, full, reference, live, show, fonts, actions, layout } = frame;
  const { motion, result } = view;
  const { width } = axis;
  const overview = useMemo<AxisScale>(() => ({ kind: axis.kind, span: full, width }), [axis.kind, full, width]);
  const xAt = useMemo(() => {
    if (axis.kind === 'time' || !motion || !reference) return (time: number) => xOf(overview, time);
    return (time: number) => xOf(overview, valueBetween(reference, frameAt(motion.time, time)));
  }, [axis.kind, motion, reference, overview]);
  const duration = motion?.time.at(-1) ?? 0;
  const ticks = useMemo(() => (motion ? timeTicks(overview, duration, xAt) : []), [motion, overview, duration, xAt]);
  const marks = useMemo(
    () => (result ? placeMarks(scrubMarks(result, show), xAt, width, `11.5px ${fonts.letter}`) : []),
    [result, show, xAt, width, fonts],
  );
  const zoomed = !showsAll(axis.span, full);
  const from = xOf(overview, axis.span.from);
  const to = xOf(overview, axis.span.to);
  const start = motion ? xAt(0) : 0;

  const knob = useRef<SVGCircleElement>(null);
  const played = useRef<SVGLineElement>(null);
  const stem = useRef<SVGPathElement>(null);
  const figures = useRef<(SVGTextElement | null)[]>([]);
  const slider = useRef<HTMLDivElement>(null);
  useLive(live, (moment) => {
    if (!motion) return;
    const x = xAt(moment.time);
    knob.current?.setAttribute('cx', x.toFixed(1));
    played.current?.setAttribute('x2', x.toFixed(1));
    // From the knob to where the playhead enters the rows: straight down unless the rows are zoomed.
    const inSight = moment.x >= -0.5 && moment.x <= width + 0.5;
    stem.current?.classList.toggle('gwb-slanted', zoomed);
    stem.current?.setAttribute('d', inSight ? `M${x.toFixed(1)},${LINE + KNOB}L${moment.x.toFixed(1)},${height}` : '');
    for (const [index, figure] of figures.current.entries()) {
      if (figure) figure.style.visibility = Math.abs(ticks[index]?.x - moment.x) < 22 && !zoomed ? 'hidden' : '';
    }
    slider.current?.setAttribute('aria-valuenow', moment.time.toFixed(1));
    slider.current?.setAttribute('aria-valuetext', `${moment.time.toFixed(1)} s of ${duration.toFixed(1)} s`);
  });

  const hold = useRef<'scrub' | 'from' | 'to' | 'brush' | null>(null);
  const brushStart = useRef(0);
  const xOfEvent = (event: PointerEvent<HTMLDivElement>) =>
    event.clientX - event.currentTarget.getBoundingClientRect().left;
  const drag = (x: number) => {
    const at = valueAt(overview, Math.max(0, Math.min(width, x)));
    if (hold.current === 'from') frame.setSpan(between(axis.kind, Math.min(at, axis.span.to), axis.span.to, full));
    else if (hold.current === 'to')
      frame.setSpan(between(axis.kind, axis.span.from, Math.max(at, axis.span.from), full));
    else if (hold.current === 'brush') frame.setSpan(between(axis.kind, brushStart.current, at, full));
    else {
      const time = timeAtX(frame, overview, Math.max(0, Math.min(width, x)), live.moment?.time ?? 0);
      if (time !== null) actions.seek(time);
    }
  };
  const down = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const x = xOfEvent(event);
    const knobX = motion && live.moment ? xAt(live.moment.time) : Number.NaN;
    const reach = layout.narrow ? 2 * GRIP : GRIP;
    if (event.shiftKey) {
      hold.current = 'brush';
      brushStart.current = valueAt(overview, x);
      return;
    }
    // The knob is on top of the brush; then its grips; anywhere else the playhead comes to the hand.
    if (Math.abs(x - knobX) <= KNOB + 2) hold.current = 'scrub';
    else if (Math.abs(x - from) <= reach) hold.current = 'from';
    else if (Math.abs(x - to) <= reach) hold.current = 'to';
    else hold.current = 'scrub';
    if (hold.current === 'scrub') drag(x);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const now = live.moment?.time ?? 0;
    const direction = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : null;
    let time: number | null;
    if (direction) time = event.shiftKey ? timeNextSupport(frame, now, direction) : timeOneCell(frame, now, direction);
    else if (event.key === 'Home' || event.key === 'End') time = timeAtEnd(frame, event.key === 'End' ? 1 : -1);
    else return;
    event.preventDefault();
    event.stopPropagation();
    if (time !== null) actions.seek(time);
  };

  return (
    <div
      ref={slider}
      className="gwb-scrub"
      style={{ width, height }}
      role="slider"
      tabIndex={0}
      aria-label="Moment of the trial"
      aria-valuemin={0}
      aria-valuemax={Number(duration.toFixed(1))}
      aria-valuenow={0}
      onPointerDown={down}
      onPointerMove={(event) => {
        if (hold.current) drag(xOfEvent(event));
      }}
      onPointerUp={() => {
        hold.current = null;
      }}
      onPointerCancel={() => {
        hold.current = null;
      }}
      onDoubleClick={() => frame.setSpan(null)}
      onKeyDown={onKeyDown}
    >
      <svg width={width} height={height} aria-hidden="true">
        {zoomed ? (
          <path d={`M${from},${LINE + 5}L0,${height}H${width}L${to},${LINE + 5}Z`} className="gwb-fan" />
        ) : null}
        <line x1={0} x2={width} y1={LINE} y2={LINE} className="gwb-scrub-line" />
        {motion ? <line ref={played} x1={start} x2={start} y1={LINE} y2={LINE} className="gwb-played" /> : null}
        {ticks.map((tick, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: ticks are numbered by their multiple of the step
          <g key={index}>
            <line x1={tick.x} x2={tick.x} y1={LINE} y2={LINE + 5} className="gwb-tick" />
            <text
              ref={(text) => {
                figures.current[index] = text;
              }}
              x={tick.x}
              y={LINE + 14}
              textAnchor="middle"
              className="gwb-axis-figure"
            >
              {tick.text}
            </text>
          </g>
        ))}
        {zoomed ? (
          <rect x={from} y={LINE - 5} width={Math.max(2, to - from)} height={10} rx={1} className="gwb-brush" />
        ) : (
          <path d={`M0.5,${LINE - 5}v10M${width - 0.5},${LINE - 5}v10`} className="gwb-brush" />
        )}
        {marks.map(({ mark, x, textX }) => (
          <g key={`${mark.time} ${mark.name}`} className={mark.marked ? 'gwb-event gwb-bad' : 'gwb-event'}>
            <line x1={x} x2={x} y1={textX === null ? LINE - 6 : LINE - 9} y2={LINE - 3} />
            {textX === null ? null : (
              <text x={textX} y={LINE - 12} textAnchor="middle" className="gwb-axis-figure">
                {mark.name}
              </text>
            )}
          </g>
        ))}
        {motion ? (
          <>
            <path ref={stem} className="gwb-stem" />
            <circle ref={knob} cx={start} cy={LINE} r={KNOB} className="gwb-knob" />
          </>
        ) : null}
        <path d={`M${from},${LINE - 8}v16M${to},${LINE - 8}v16`} className="gwb-grips" />
      </svg>
    </div>
  );
}
