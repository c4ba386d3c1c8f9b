import { formatLength } from '../../../core/units/index.ts';
import type { Axis } from '../../../state/types.ts';

/** A stretch of chainage (m) or of time (s), `from` < `to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** The shared axis: a span laid over `width` CSS pixels, growing to the right. */
export interface AxisScale {
  readonly kind: Axis;
  readonly span: Span;
  readonly width: number;
}

/** Nothing on a model railway is looked at closer than this: a coupler head, and half a dozen recorded frames. */
const LEAST_SPAN: Readonly<Record<Axis, number>> = { chainage: 0.05, time: 0.1 };

export function xOf(axis: AxisScale, value: number): number {
  return ((value - axis.span.from) / (axis.span.to - axis.span.from)) * axis.width;
}

export function valueAt(axis: AxisScale, x: number): number {
  return axis.span.from + (x / axis.width) * (axis.span.to - axis.span.from);
}

/** A span of the same length pushed back inside `full`, or `full` itself when it is longer. */
export function keepInside(span: Span, full: Span): Span {
  const length = span.to - span.from;
  if (length >= full.to - full.from) return full;
  const from = Math.min(full.to - length, Math.max(full.from, span.from));
  return { from, to: from + length };
}

/** The span seen when `factor` (below 1: closer) is applied with the value `about` staying where it is. */
export function zoom(kind: Axis, span: Span, full: Span, factor: number, about: number): Span {
  const old = span.to - span.from;
  const length = Math.min(full.to - full.from, Math.max(LEAST_SPAN[kind], old * factor));
  const from = about - ((about - span.from) / old) * length;
  return keepInside({ from, to: from + length }, full);
}

export function pan(span: Span, full: Span, by: number): Span {
  return keepInside({ from: span.from + by, to: span.to + by }, full);
}

/** A span with these two ends in either order, not shorter than can be looked at. */
export function between(kind: Axis, a: number, b: number, full: Span): Span {
  const middle = (a + b) / 2;
  const half = Math.max(Math.abs(a - b), LEAST_SPAN[kind]) / 2;
  return keepInside({ from: middle - half, to: middle + half }, full);
}

/** Whether the whole of `full` is on view, within rounding. */
export function showsAll(span: Span, full: Span): boolean {
  return span.to - span.from >= (full.to - full.from) * (1 - 1e-9);
}

/** The step of 1, 2 or 5 times a power of ten that puts ticks at least `leastGap` pixels apart. */
export function tickStep(span: Span, width: number, leastGap: number): number {
  const least = ((span.to - span.from) / Math.max(1, width)) * leastGap;
  const power = 10 ** Math.floor(Math.log10(least));
  const figure = [1, 2, 5, 10].find((candidate) => candidate * power >= least * (1 - 1e-9)) ?? 10;
  return figure * power;
}

export interface Tick {
  readonly value: number;
  /** As written: as many decimals as the step needs. */
  readonly text: string;
}

export function ticksOf(span: Span, width: number, leastGap: number): Tick[] {
  const step = tickStep(span, width, leastGap);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const ticks: Tick[] = [];
  // Whole multiples, so that no tick drifts; a hair of slack lets an end that is itself a multiple keep its tick.
  for (let n = Math.ceil(span.from / step - 1e-9); n * step <= span.to + step * 1e-9; n++) {
    ticks.push({ value: n * step, text: (n === 0 ? 0 : n * step).toFixed(decimals) });
  }
  return ticks;
}

/** Steps of an axis in inches that a rule or a tape is marked with; beyond, whole tens of feet. */
const INCH_STEPS = [1 / 8, 1 / 4, 1 / 2, 1, 3, 6, 12, 24, 60, 120, 240, 600, 1200, 2400, 6000, 12000];
const METRES_PER_INCH = 0.0254;

/** Ticks of a chainage axis for builders in inches: `6″`, `2′`, `2′ 6″`. Values in m. */
export function footTicks(span: Span, width: number, leastGap: number): Tick[] {
  const least = ((span.to - span.from) / Math.max(1, width) / METRES_PER_INCH) * leastGap;
  const step = INCH_STEPS.find((candidate) => candidate >= least * (1 - 1e-9)) ?? least;
  const ticks: Tick[] = [];
  for (let n = Math.ceil(span.from / METRES_PER_INCH / step - 1e-9); ; n++) {
    const value = n * step * METRES_PER_INCH;
    if (value > span.to + step * METRES_PER_INCH * 1e-9) return ticks;
    const text = formatLength(value, { unit: 'ft', fraction: 8 });
    // Zero feet and zero inches alike: nothing.
    ticks.push({ value, text: n === 0 ? '0' : text });
  }
}
