import { type RefObject, useEffect, useRef } from 'react';

/** What a hand does with what it took hold of; px from where it took hold. */
export interface HandHooks {
  /** False where there is nothing to hold. */
  take(key: string): boolean;
  /** A press that went nowhere. */
  press(key: string, keys: { readonly shift: boolean }): void;
  move(dx: number, dy: number, keys: { readonly alt: boolean; readonly shift: boolean }): void;
  letGo(): void;
  putBack(): void;
}

/** What of a drawing is under a pointer or a finger that can be held. */
const handleOf = ({ target }: Event): SVGElement | null =>
  target instanceof Element ? target.closest<SVGElement>('[data-handle]') : null;

/** Below this a press is a choice, not a drag, px. */
const slack = 3;

/** Pointers on everything marked `data-handle` in a drawing. Moves are passed on once a frame; Escape puts back. */
export function useHandDrag(drawing: RefObject<SVGSVGElement | null>, hooks: HandHooks): void {
  const latest = useRef(hooks);
  latest.current = hooks;
  useEffect(() => {
    const element = drawing.current;
    if (!element) return;
    let from: { readonly x: number; readonly y: number; readonly key: string; readonly pointer: number } | null = null;
    let holds = false;
    let waiting = 0;
    let last: PointerEvent | null = null;

    const pass = () => {
      waiting = 0;
      if (from && last && holds)
        latest.current.move(last.clientX - from.x, last.clientY - from.y, { alt: last.altKey, shift: last.shiftKey });
    };
    const end = (kept: boolean) => {
      cancelAnimationFrame(waiting);
      if (kept) pass();
      waiting = 0;
      window.removeEventListener('keydown', onEscape, { capture: true });
      if (holds) {
        if (kept) latest.current.letGo();
        else latest.current.putBack();
      }
      from = null;
      last = null;
      holds = false;
    };
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      end(false);
    };
    const down = (event: PointerEvent) => {
      const handle = handleOf(event);
      if (!handle || event.button !== 0 || from || (event.pointerType === 'touch' && !event.isPrimary)) return;
      // The drawing and not the handle: a handle may be drawn anew while it is held.
      element.setPointerCapture(event.pointerId);
      handle.focus({ preventScroll: true });
      event.preventDefault();
      from = { x: event.clientX, y: event.clientY, key: handle.dataset.handle ?? '', pointer: event.pointerId };
      window.addEventListener('keydown', onEscape, { capture: true });
    };
    // A second finger, wherever it comes down, is not to pull what the first one holds out of its place.
    const another = (event: PointerEvent) => {
      if (!from || event.pointerType !== 'touch' || event.pointerId === from.pointer) return;
      end(false);
      event.stopPropagation();
    };
    // The rows around scroll with a finger, and the browser asks a drawing's box, not its parts, whether they may.
    const touched = (event: TouchEvent) => {
      if (event.cancelable && (from || handleOf(event))) event.preventDefault();
    };
    const move = (event: PointerEvent) => {
      if (!from || event.pointerId !== from.pointer) return;
      if (!holds && Math.hypot(event.clientX - from.x, event.clientY - from.y) < slack) return;
      if (!holds) {
        holds = latest.current.take(from.key);
        if (!holds) return;
      }
      last = event;
      waiting ||= requestAnimationFrame(pass);
    };
    const up = (event: PointerEvent) => {
      if (!from || event.pointerId !== from.pointer) return;
      const pressed = holds ? null : from.key;
      end(true);
      if (pressed !== null) latest.current.press(pressed, { shift: event.shiftKey });
    };
    const cancel = (event: PointerEvent) => {
      if (from && event.pointerId === from.pointer) end(false);
    };
    window.addEventListener('pointerdown', another, { capture: true });
    element.addEventListener('touchstart', touched, { passive: false });
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', cancel);
    return () => {
      end(false);
      window.removeEventListener('pointerdown', another, { capture: true });
      element.removeEventListener('touchstart', touched);
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', cancel);
    };
  }, [drawing]);
}
