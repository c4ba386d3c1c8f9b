import { type AxisScale, between, pan, type Span, valueAt, zoom } from './axis.ts';

/** What a gesture on the axis asks for. */
export type GestureWish =
  | { readonly kind: 'scrub'; readonly x: number }
  | { readonly kind: 'brush'; readonly from: number; readonly to: number }
  | { readonly kind: 'span'; readonly span: Span };

interface Finger {
  readonly start: number;
  now: number;
}

/** A brush narrower than this many pixels was a slip of the hand, not a range. */
const LEAST_BRUSH = 4;

/**
 * Fingers and pointers on the shared axis, as a small state machine: one drags the playhead, with Shift it marks a range
 * to look at, two pinch and push the axis. Works in pixels along the axis; knows nothing of the page.
 */
export class Gestures {
  readonly #fingers = new Map<number, Finger>();
  #brushing = false;
  /** The two values of the axis that a pinch holds under its fingers. */
  #held: readonly [number, number] | null = null;

  get busy(): boolean {
    return this.#fingers.size > 0;
  }

  down(id: number, x: number, axis: AxisScale, shift: boolean): GestureWish | null {
    this.#fingers.set(id, { start: x, now: x });
    if (this.#fingers.size === 2) {
      this.#brushing = false;
      const [a, b] = [...this.#fingers.values()];
      this.#held = [valueAt(axis, a.now), valueAt(axis, b.now)];
      return null;
    }
    if (this.#fingers.size > 2) return null;
    this.#brushing = shift;
    return shift ? { kind: 'brush', from: x, to: x } : { kind: 'scrub', x };
  }

  move(id: number, x: number, axis: AxisScale, full: Span): GestureWish | null {
    const finger = this.#fingers.get(id);
    if (!finger) return null;
    finger.now = x;
    if (this.#held) return this.#pinch(axis, full);
    if (this.#brushing) return { kind: 'brush', from: finger.start, to: x };
    return { kind: 'scrub', x };
  }

  up(id: number, axis: AxisScale, full: Span): GestureWish | null {
    const finger = this.#fingers.get(id);
    this.#fingers.delete(id);
    const brushed = this.#brushing && finger && Math.abs(finger.now - finger.start) >= LEAST_BRUSH;
    if (this.#fingers.size === 0) {
      this.#brushing = false;
      this.#held = null;
    }
    if (!brushed || !finger) return null;
    return { kind: 'span', span: between(axis.kind, valueAt(axis, finger.start), valueAt(axis, finger.now), full) };
  }

  #pinch(axis: AxisScale, full: Span): GestureWish | null {
    const [a, b] = [...this.#fingers.values()];
    if (!a || !b || !this.#held) return null;
    const apart = Math.max(1, Math.abs(b.now - a.now));
    const [first, second] = this.#held;
    const perPixel = Math.abs(second - first) / apart;
    const old = axis.span.to - axis.span.from;
    const closer = zoom(axis.kind, axis.span, full, (perPixel * axis.width) / old, (first + second) / 2);
    // Keep what lay between the fingers between them.
    const middle = closer.from + ((a.now + b.now) / 2 / axis.width) * (closer.to - closer.from);
    return { kind: 'span', span: pan(closer, full, (first + second) / 2 - middle) };
  }
}

/** One notch of a usual wheel is 100 or so; this makes it a third closer. */
const WHEEL_ZOOM = 0.004;

/** What a turn of the wheel at pixel `x` does to the span: closer or further about `x`; sideways, or with Shift, along. */
export function wheelSpan(
  wheel: { readonly deltaX: number; readonly deltaY: number; readonly shift: boolean },
  x: number,
  axis: AxisScale,
  full: Span,
): Span {
  const sideways = wheel.shift ? wheel.deltaX || wheel.deltaY : wheel.deltaX;
  if (wheel.shift || Math.abs(wheel.deltaX) > Math.abs(wheel.deltaY)) {
    return pan(axis.span, full, (sideways / axis.width) * (axis.span.to - axis.span.from));
  }
  return zoom(axis.kind, axis.span, full, Math.exp(wheel.deltaY * WHEEL_ZOOM), valueAt(axis, x));
}
