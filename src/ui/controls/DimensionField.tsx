import { type KeyboardEvent, type PointerEvent, useEffect, useId, useRef, useState } from 'react';
import type { Reading } from '../../core/units/index.ts';
import { isCommandChord, leaveField, useSelectAgain } from './fieldKeys.ts';
import './dimensionField.css';

interface DimensionFieldProps {
  readonly label: string;
  /** SI, or a plain share. */
  readonly value: number;
  /** The value as the field shows it: figure and unit apart, since they are set apart. */
  readonly shown: readonly [figure: string, unit: string];
  /** The same value in its other forms. */
  readonly others: string;
  /** Understands what a builder types. */
  readonly read: (text: string) => Reading;
  /** One press of an arrow key and one pixel of a drag, in the value's unit. */
  readonly step: number;
  readonly least: number;
  readonly most: number;
  /** Makes it this. What it gives back is why that cannot be: the field says it and keeps what was typed. */
  readonly onChange: (value: number) => string | null | undefined;
  /** A drag of the label: everything between is one change. */
  readonly onDragStart: () => void;
  readonly onDragEnd: () => void;
  readonly onDragCancel: () => void;
  /** Where a drag is led to, and why, in words; with Alt it is free. Null: nowhere. */
  readonly leads?: (value: number) => { readonly value: number; readonly words: string } | null;
  /** The value that a cure shown as a ghost would give. */
  readonly ghost?: string | undefined;
}

/** Without the dust of binary fractions that a step leaves behind. */
const stepped = (value: number, by: number): number => Math.round((value + by) * 1e9) / 1e9;

/** A number a builder can type in any form, step with the arrow keys, or change by dragging its label sideways. */
export function DimensionField(props: DimensionFieldProps) {
  const { label, value, shown, others, read, step, least, most, onChange, ghost } = props;
  const id = useId();
  // What was typed stays as it is until the field is left; null while nothing is being typed.
  const [typed, setTyped] = useState<string | null>(null);
  const [message, setMessage] = useState('');
  const [refused, setRefused] = useState(false);
  // What the message speaks of: once the value is another, it says nothing any more.
  const told = useRef(value);
  useEffect(() => {
    if (value !== told.current) {
      setMessage('');
      setRefused(false);
    }
    told.current = value;
  }, [value]);
  const drag = useRef<{ readonly x: number; readonly value: number } | null>(null);

  const held = (wanted: number) => Math.min(most, Math.max(least, wanted));
  const say = (words: string, isRefusal: boolean) => {
    setMessage(words);
    setRefused(isRefusal);
  };
  /** False when it cannot be this; the field then says why. */
  const put = (wanted: number, understood: string): boolean => {
    const why = wanted === value ? null : onChange(wanted);
    if (!why) told.current = wanted;
    say(why || understood, Boolean(why));
    return !why;
  };
  const take = (text: string): boolean => {
    const reading = read(text);
    if (reading.ok) return put(reading.value, reading.read);
    say(reading.message, true);
    return false;
  };
  const [field, selectAgain] = useSelectAgain();
  /** Escape has put away what was typed: leaving the field is not to take it. */
  const dropped = useRef(false);
  /** False when what was typed cannot be taken. */
  const leave = (): boolean => {
    if (typed === null || dropped.current) return true;
    if (typed.trim() === shown.join(' ').trim()) say('', false);
    else if (!take(typed)) return false;
    setTyped(null);
    return true;
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    // Letters are the field's own, and undo while something is typed; other commands are the page's here too.
    const command = isCommandChord(event);
    if (!command || (typed !== null && event.key.toLowerCase() === 'z')) event.stopPropagation();
    if (command) return;
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (by !== undefined) {
      event.preventDefault();
      setTyped(null);
      put(held(stepped(value, by * step * (event.shiftKey ? 10 : 1))), '');
    } else if (event.key === 'Enter') {
      if (leave()) selectAgain();
    } else if (event.key === 'Escape') {
      setTyped(null);
      say('', false);
      dropped.current = true;
      leaveField(event.currentTarget);
      dropped.current = false;
    }
  };

  const startDrag = (event: PointerEvent<HTMLLabelElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { x: event.clientX, value };
    props.onDragStart();
    const label = event.currentTarget;
    const onKey = (pressed: globalThis.KeyboardEvent) => {
      if (pressed.key !== 'Escape') return;
      pressed.preventDefault();
      endDrag(false);
    };
    window.addEventListener('keydown', onKey, { capture: true });
    label.addEventListener(
      'lostpointercapture',
      () => window.removeEventListener('keydown', onKey, { capture: true }),
      {
        once: true,
      },
    );
  };
  const moveDrag = (event: PointerEvent) => {
    if (!drag.current) return;
    const wanted = held(stepped(drag.current.value, Math.round((event.clientX - drag.current.x) / 3) * step));
    const led = event.altKey ? null : (props.leads?.(wanted) ?? null);
    const to = led?.value ?? wanted;
    if (to !== value || (led?.words ?? '') !== message) put(to, led?.words ?? '');
  };
  const endDrag = (kept: boolean) => {
    if (!drag.current) return;
    drag.current = null;
    say('', false);
    if (kept) props.onDragEnd();
    else props.onDragCancel();
  };

  const wrong = refused && message !== '';
  return (
    <div className="dimension-field">
      <label
        htmlFor={id}
        title="Drag sideways to change"
        onPointerDown={startDrag}
        onPointerMove={moveDrag}
        onPointerUp={() => endDrag(true)}
        onPointerCancel={() => endDrag(false)}
      >
        {label}
      </label>
      <span className="line">
        <input
          ref={field}
          id={id}
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          style={{ width: `calc(${Math.max(1, (typed ?? shown[0]).length)}ch + 2px)` }}
          value={typed ?? shown[0]}
          aria-describedby={`${id}-said`}
          aria-invalid={wrong}
          onChange={(event) => setTyped(event.target.value)}
          onFocus={(event) => event.target.select()}
          onBlur={leave}
          onKeyDown={onKeyDown}
        />
        {typed === null && <span className="unit">{shown[1]}</span>}
        <span className="others">{others}</span>
      </span>
      {ghost && <span className="ghost-value">{ghost}</span>}
      <span id={`${id}-said`} className={wrong ? 'said wrong' : 'said'} role={wrong ? 'alert' : undefined}>
        {message}
      </span>
    </div>
  );
}
