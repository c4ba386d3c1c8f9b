import type { Show } from '../../core/findings/index.ts';
import { metresPerInch, thinSpace } from '../../core/units/index.ts';
import type { PageMark, PageTrack } from '../../sim/page/index.ts';
import { fine, numbers, path } from './drawing.ts';
import { element, type Markup } from './markup.ts';
import { around } from './numbered.ts';

/** Size of the drawing and the least air around the lines, in units of the drawing. */
const width = 1000;
const mostHigh = 620;
const air = 46;
const bar = 30;

/** Lengths of scale bars, in their own unit: the longest that takes no more than a fifth of the width is drawn. */
const bars = { mm: [50, 100, 200, 500, 1000, 2000, 5000], in: [2, 4, 6, 12, 24, 48, 96, 192] } as const;
const metresPer = { mm: 1e-3, in: metresPerInch } as const;

/** All tracks from above, to scale, bad places numbered as in the sections. North is up. */
export function planDrawing(tracks: readonly PageTrack[], marks: readonly PageMark[], show: Show): Markup {
  const all = tracks.flatMap(({ line }) => line);
  const [west, east] = extent(all.map(({ x }) => x));
  const [south, north] = extent(all.map(({ y }) => y));
  const scale = Math.min(
    (width - 2 * air) / Math.max(1e-3, east - west),
    (mostHigh - 2 * air) / Math.max(1e-3, north - south),
  );
  const high = Math.max(120, scale * (north - south) + 2 * air);
  const shift = (width - scale * (east - west)) / 2;
  const at = ({ x, y }: { readonly x: number; readonly y: number }): [number, number] => [
    shift + scale * (x - west),
    high - air - scale * (y - south),
  ];
  const lines = tracks.map(({ name, line }) => ({ name, places: line.map(at) }));
  const numbered = around(
    marks.map(({ number, place: [x, y] }) => ({ number, at: at({ x, y }) })),
    lines.flatMap(({ places }) => places),
    [width, high],
  );
  const { lengthUnit } = show;
  const unit = metresPer[lengthUnit];
  const long = [...bars[lengthUnit]].reverse().find((size) => size * unit * scale < width / 5) ?? bars[lengthUnit][0];
  const barWidth = long * unit * scale;
  return element(
    'svg',
    { class: 'plan', viewBox: `0 0 ${width} ${fine(high + bar)}`, role: 'img', 'aria-label': 'Plan of the railway' },
    lines.map(({ places }) => element('path', { class: 'bed', d: path(places) })),
    lines.map(({ places }) => element('path', { class: 'rail', d: path(places) })),
    lines.map(({ name, places: [[x, y]] }) => element('text', { class: 'name', x: fine(x), y: fine(y + 22) }, name)),
    element('path', {
      class: 'tick',
      d: path([
        [width - air - barWidth, high + 8],
        [width - air, high + 8],
      ]),
    }),
    element(
      'text',
      { class: 'scale', x: fine(width - air - barWidth / 2), y: fine(high + 24) },
      `${long}${thinSpace}${lengthUnit}`,
    ),
    numbers(numbered),
  );
}

const extent = (values: readonly number[]): [number, number] =>
  values.reduce(
    ([low, high], value) => [Math.min(low, value), Math.max(high, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
