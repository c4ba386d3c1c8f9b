import { type CSSProperties, type KeyboardEvent, type ReactNode, useContext, useLayoutEffect, useRef } from 'react';
import { Explained } from '../../controls/Explained.tsx';
import { zoom } from '../frame/axis.ts';
import type { BandFrame } from '../frame/bandFrame.ts';
import { LiveText } from '../frame/LiveText.tsx';
import { type Moment, useLive } from '../frame/live.ts';
import { timeAtEnd, timeNextSupport, timeOneCell } from '../frame/navigate.ts';
import { chainageWords } from '../words.ts';
import { RowsContext } from './rows.ts';
import './row.css';
import '../frame/drawing.css';

export interface RowProps {
  readonly frame: BandFrame;
  readonly id: string;
  readonly name: string;
  /** What the name means, for someone who meets it for the first time. */
  readonly explain?: string;
  readonly unit?: string;
  readonly height: number;
  /** The value at the playhead, without its unit. */
  readonly value: (moment: Moment) => string;
  readonly marked?: (moment: Moment) => boolean;
  /** How much another railway's value at the playhead is more; null while there is none beside. */
  readonly beside?: ((moment: Moment) => string) | null;
  /** What stands at pixel (x, y) of the body, in a few words, for the pointer that hovers there. */
  readonly hover?: (x: number, y: number) => string;
  /** A press at pixel (x, y), before the playhead goes there; gives the joint meant, if the row has any. */
  readonly press?: (x: number, y: number) => number | undefined;
  /** Goes to the row's least. */
  readonly enter?: (() => void) | undefined;
  /** It holds things with keys of their own: then it is a group, since a slider may hold none. */
  readonly holds?: boolean;
  readonly upDown?: (direction: 1 | -1) => void;
  readonly right?: ReactNode;
  /** Below the first line of the gutter. */
  readonly gutter?: ReactNode;
  /** The row as text, for a screen reader. */
  readonly table: ReactNode;
  readonly className?: string;
  readonly children: ReactNode;
}

/** One row of the band: gutter, body on the shared axis, right column. The body is a slider that moves the playhead. */
export function Row(props: RowProps) {
  const { frame, id, name, unit, height, value, marked, hover, press, right, gutter, table, children } = props;
  const body = useRef<HTMLDivElement>(null);
  const rows = useContext(RowsContext);
  const { live, layout, axis } = frame;

  useLayoutEffect(() => {
    rows.set(id, { hover, press });
    return () => {
      rows.delete(id);
    };
  });

  useLive(live, (moment) => {
    const element = body.current;
    // Only what a reader is on is spoken; the other rows keep still.
    const said = props.holds ? 'aria-description' : 'aria-valuetext';
    if (!element || (element.hasAttribute(said) && document.activeElement !== element)) return;
    if (!props.holds) element.setAttribute('aria-valuenow', moment.time.toFixed(1));
    const place = Number.isNaN(moment.place) ? '' : `${chainageWords(moment.place, frame.show)}, `;
    const than = frame.beside && props.beside ? `, ${frame.beside.name} ${props.beside(moment)}` : '';
    const now = `${value(moment)} ${unit ?? ''}${than}`;
    element.setAttribute(said, `${place}${moment.time.toFixed(1)} s: ${now}`);
  });

  const onKeyDown = (event: KeyboardEvent) => {
    const now = live.moment?.time ?? 0;
    const time = movedTime(frame, event, now);
    if (time !== undefined) {
      if (time !== null) frame.actions.seek(time);
    } else if (event.key === 'Enter' && props.enter) props.enter();
    else if ((event.key === 'ArrowUp' || event.key === 'ArrowDown') && props.upDown) {
      props.upDown(event.key === 'ArrowUp' ? -1 : 1);
    } else if (event.key === '+' || event.key === '=' || event.key === '-') {
      const about = axis.kind === 'time' ? now : (live.moment?.place ?? axis.span.from);
      frame.setSpan(zoom(axis.kind, axis.span, frame.full, event.key === '-' ? 1.5 : 1 / 1.5, about));
    } else if (event.key === '0') frame.setSpan(null);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const style: CSSProperties = { height };
  return (
    <div className={`gwb-row ${props.className ?? ''}`} data-row={id} style={style}>
      <div className="gwb-gutter">
        <div className="gwb-line">
          {props.explain ? (
            <Explained words={props.explain} className="gwb-name">
              {name}
            </Explained>
          ) : (
            <span className="gwb-name">{name}</span>
          )}
          {unit && !(layout.narrow && props.className?.includes('gwb-margin')) ? (
            <span className="gwb-unit">{unit}</span>
          ) : null}
          <LiveText live={live} className="gwb-value" read={value} {...(marked ? { marked } : {})} />
          {frame.beside && props.beside ? (
            <LiveText live={live} className="gwb-difference" read={props.beside} />
          ) : null}
        </div>
        {gutter}
      </div>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: it is a slider, or a group of handles */}
      {/* biome-ignore lint/a11y/useAriaPropsSupportedByRole: either role takes a name */}
      <div
        ref={body}
        key={props.holds ? 'group' : 'slider'}
        className="gwb-body"
        tabIndex={0}
        aria-label={`${name}, at the playhead`}
        role={props.holds ? 'group' : 'slider'}
        {...(!props.holds && {
          'aria-valuemin': 0,
          'aria-valuenow': 0,
          'aria-valuemax': Number((frame.view.motion?.time.at(-1) ?? 0).toFixed(1)),
        })}
        onKeyDown={onKeyDown}
      >
        {children}
      </div>
      <div className="gwb-right">{right}</div>
      <div className="seen-by-readers">{table}</div>
    </div>
  );
}

/** The time a key moves the playhead to; null when it cannot move; undefined for keys that do not move it. */
function movedTime(frame: BandFrame, event: KeyboardEvent, now: number): number | null | undefined {
  if (event.altKey || event.ctrlKey || event.metaKey) return undefined;
  switch (event.key) {
    case 'ArrowLeft':
      return event.shiftKey ? timeNextSupport(frame, now, -1) : timeOneCell(frame, now, -1);
    case 'ArrowRight':
      return event.shiftKey ? timeNextSupport(frame, now, 1) : timeOneCell(frame, now, 1);
    case 'Home':
      return timeAtEnd(frame, -1);
    case 'End':
      return timeAtEnd(frame, 1);
    default:
      return undefined;
  }
}
