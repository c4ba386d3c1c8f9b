import { type RefObject, useEffect, useRef } from 'react';
import type { RowHooks } from '../rows/rows.ts';
import type { BandFrame } from './bandFrame.ts';
import { Gestures, type GestureWish, wheelSpan } from './gestures.ts';
import { timeAtX } from './navigate.ts';

/** What the pointer layer draws over the rows. */
export interface PointerMarks {
  /** Hairline at pixel x with a few words beside it, at height y; null takes it away. */
  hover(at: { readonly x: number; readonly y: number; readonly text: string } | null): void;
  /** A range being marked, in pixels; null takes it away. */
  brush(range: { readonly from: number; readonly to: number } | null): void;
}

/** Something in the row that is dragged itself. */
const onHandle = (event: MouseEvent): boolean =>
  event.target instanceof Element && event.target.closest('[data-handle]') !== null;

/**
 * Pointer, finger and wheel over the bodies of the rows: drag or click moves the playhead (in the carpet: that of the
 * joint pressed), Shift marks a range, two fingers and the wheel zoom, a double click shows all.
 */
export function useBodyPointer(
  stack: RefObject<HTMLElement | null>,
  frame: BandFrame,
  rows: Map<string, RowHooks>,
  marks: PointerMarks,
): void {
  const latest = useRef({ frame, rows, marks });
  latest.current = { frame, rows, marks };

  useEffect(() => {
    const element = stack.current;
    if (!element) return;
    const gestures = new Gestures();
    let joint: number | undefined;

    const xOf = (event: MouseEvent) =>
      event.clientX - element.getBoundingClientRect().left - latest.current.frame.layout.gutter;
    const inBody = (x: number) => x >= 0 && x <= latest.current.frame.layout.body;
    const rowOf = (event: MouseEvent) => {
      const row = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-row]') : null;
      if (!row) return null;
      return {
        hooks: latest.current.rows.get(row.dataset.row ?? ''),
        y: event.clientY - row.getBoundingClientRect().top,
        row,
      };
    };

    const fulfil = (wish: GestureWish | null) => {
      const { frame: now, marks: drawn } = latest.current;
      if (!wish) return;
      if (wish.kind === 'span') now.setSpan(wish.span);
      else if (wish.kind === 'brush') drawn.brush({ from: wish.from, to: wish.to });
      else {
        const x = Math.max(0, Math.min(now.layout.body, wish.x));
        const time = timeAtX(now, now.axis, x, now.live.moment?.time ?? 0, joint);
        if (time !== null) now.actions.seek(time);
      }
    };
    const down = (event: PointerEvent) => {
      const x = xOf(event);
      if (event.button !== 0 || !inBody(x)) return;
      const over = rowOf(event);
      // A handle has the hand to itself.
      if (!over || onHandle(event)) return;
      element.setPointerCapture(event.pointerId);
      if (!gestures.busy) joint = event.shiftKey ? undefined : over.hooks?.press?.(x, over.y);
      latest.current.marks.hover(null);
      fulfil(gestures.down(event.pointerId, x, latest.current.frame.axis, event.shiftKey));
    };
    const move = (event: PointerEvent) => {
      const { frame: now, marks: drawn } = latest.current;
      const x = xOf(event);
      if (gestures.busy) {
        fulfil(gestures.move(event.pointerId, x, now.axis, now.full));
        return;
      }
      const over = event.pointerType === 'touch' || !inBody(x) || onHandle(event) ? null : rowOf(event);
      if (!over) {
        drawn.hover(null);
        return;
      }
      const top = over.row.offsetTop + over.row.offsetHeight / 2;
      drawn.hover({ x, y: top, text: over.hooks?.hover?.(x, over.y) ?? '' });
    };
    const up = (event: PointerEvent) => {
      const { frame: now, marks: drawn } = latest.current;
      fulfil(gestures.up(event.pointerId, now.axis, now.full));
      drawn.brush(null);
    };
    const leave = () => latest.current.marks.hover(null);
    const double = (event: MouseEvent) => {
      if (inBody(xOf(event)) && !onHandle(event)) latest.current.frame.setSpan(null);
    };

    // Several turns of a wheel come within one frame; the axis is redrawn once for all of them.
    let turned = { deltaX: 0, deltaY: 0, shift: false, x: 0 };
    let waiting = 0;
    const wheel = (event: WheelEvent) => {
      const x = xOf(event);
      if (!inBody(x)) return;
      // Where the page itself scrolls (a phone, a desk at twice the size) the plain wheel is the page's.
      const upright = Math.abs(event.deltaY) > Math.abs(event.deltaX);
      if (upright && !event.ctrlKey && document.documentElement.scrollHeight > innerHeight + 1) return;
      event.preventDefault();
      // Lines and pages instead of pixels.
      const scale = event.deltaMode === 1 ? 30 : event.deltaMode === 2 ? 300 : 1;
      turned = {
        deltaX: turned.deltaX + event.deltaX * scale,
        deltaY: turned.deltaY + event.deltaY * scale,
        shift: event.shiftKey,
        x,
      };
      waiting ||= requestAnimationFrame(() => {
        const { frame: now } = latest.current;
        now.setSpan(wheelSpan(turned, turned.x, now.axis, now.full));
        turned = { deltaX: 0, deltaY: 0, shift: false, x: 0 };
        waiting = 0;
      });
    };

    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', up);
    element.addEventListener('pointerleave', leave);
    element.addEventListener('dblclick', double);
    element.addEventListener('wheel', wheel, { passive: false });
    return () => {
      cancelAnimationFrame(waiting);
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', up);
      element.removeEventListener('pointerleave', leave);
      element.removeEventListener('dblclick', double);
      element.removeEventListener('wheel', wheel);
    };
  }, [stack]);
}
