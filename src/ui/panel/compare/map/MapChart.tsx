import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { contoursOf, joinedLines } from '../../../../core/study/index.ts';
import {
  closestCall,
  type Knob,
  type MapState,
  type Measure,
  type Probe,
  passesBy,
} from '../../../../state/study/index.ts';
import { useShow } from '../../../show.ts';
import { measureWords } from '../measureWords.ts';
import { evenTicks, spanOf } from '../scales.ts';
import { figure, probeWords, withUnit } from '../words.ts';
import './mapChart.css';

export interface MapPlace {
  readonly across: number;
  readonly up: number;
}

interface MapChartProps {
  readonly map: MapState;
  readonly across: Knob;
  readonly up: Knob;
  /** What is told by shades and lines; null: how much is to spare. */
  readonly drawn: Measure | null;
  readonly chosen: MapPlace | null;
  readonly onChoose: (place: MapPlace) => void;
}

const size = { width: 312, height: 250, left: 44, right: 10, top: 12, bottom: 34 };

/** Shades of a cell by its closest call, as a share of plenty: from hardly enough to plenty, each lighter. */
const shades = [0.15, 0.4, 1] as const;

/** Two numbers and what passes: cells shaded by the closest call, crossed where they fail, with the border found by halving. */
export function MapChart({ map, across, up, drawn, chosen, onChoose }: MapChartProps) {
  const show = useShow();
  const drawing = useRef<SVGSVGElement>(null);
  const [under, setUnder] = useState<MapPlace | null>(null);
  const { ask, gauge, limits, area } = map;
  const passes = passesBy(gauge, limits);
  const columns = evenly(ask.across);
  const rows = evenly(ask.up);
  const inner = { width: size.width - size.left - size.right, height: size.height - size.top - size.bottom };
  const x = (at: number) => size.left + share(at, ask.across) * inner.width;
  const y = (at: number) => size.height - size.bottom - share(at, ask.up) * inner.height;
  // A cell reaches half way to its neighbours, and never beyond the range.
  const [lefts, bottoms] = [between(columns.map(x)), between(rows.map(y))];
  const lines = drawn === null ? null : measureLines(map, drawn, columns, rows);
  const shadeAt = (probe: Probe): number => (lines === null ? shadeOf(probe, gauge) : lines.shadeOf(probe));
  const nearest = (event: PointerEvent): MapPlace | null => {
    const box = drawing.current?.getBoundingClientRect();
    if (box === undefined) return null;
    const px = ((event.clientX - box.left) / box.width) * size.width;
    const py = ((event.clientY - box.top) / box.height) * size.height;
    const away = (place: MapPlace) => Math.hypot(x(place.across) - px, y(place.up) - py);
    return map.points.reduce<MapPlace | null>((best, one) => (best && away(best) <= away(one) ? best : one), null);
  };
  const step = (event: KeyboardEvent) => {
    const [right, upward] = moves[event.key] ?? [0, 0];
    const now = under ?? chosen ?? map.points[0];
    if (event.key === 'Enter' || event.key === ' ') onChoose(now);
    else if (right === 0 && upward === 0) return;
    else setUnder(neighbour(columns, rows, now, right, upward));
    event.preventDefault();
    event.stopPropagation();
  };
  const read = under ?? chosen;
  const probe = read && map.points.find((one) => one.across === read.across && one.up === read.up)?.probe;
  const words = probe && probeWords(probe, map, show);
  const readout =
    read && words
      ? `${withUnit(read.across, across.unit)} and ${withUnit(read.up, up.unit)}: ${words.verdict}${words.call === '' ? '' : `, ${words.call}`}`
      : '';
  return (
    <>
      <svg
        ref={drawing}
        className="study-map"
        viewBox={`0 0 ${size.width} ${size.height}`}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: its places are walked over with the arrow keys
        tabIndex={0}
        aria-label={`Map of ${across.label} and ${up.label}; arrow keys walk over it, Enter chooses`}
        onPointerMove={(event) => setUnder(nearest(event))}
        onPointerLeave={() => setUnder(null)}
        onClick={(event) => {
          const place = nearest(event as unknown as PointerEvent);
          if (place) onChoose(place);
        }}
        onKeyDown={step}
      >
        {rows.map((b, k) =>
          columns.map((a, i) => {
            const known = map.points.find((one) => one.across === a && one.up === b);
            if (known === undefined) return null;
            const good = passes(known.probe);
            const [left, right, low, high] = [lefts[i], lefts[i + 1], bottoms[k], bottoms[k + 1]];
            // A cross that stands within its cell, at the edge of the range too.
            const [cx, cy] = [hold(x(a), left + 5, right - 5), hold(y(b), high + 5, low - 5)];
            return (
              <g key={`${a} ${b}`} className={good ? `cell shade-${shadeAt(known.probe)}` : 'cell fails'}>
                <rect x={left} y={high} width={right - left} height={low - high} />
                {!good && <path d={`M${cx - 3} ${cy - 3}l6 6m0 -6l-6 6`} />}
              </g>
            );
          }),
        )}
        {lines?.contours.map(({ level, places }) => (
          <g key={`${level} ${places[0].join()}`} className="contour">
            <polyline points={places.map(([a, b]) => `${x(a)},${y(b)}`).join(' ')} />
            <text {...lettered(places.map(([a, b]) => [x(a), y(b)]))}>{measureWords(lines.measure, level, show)}</text>
          </g>
        ))}
        {map.points
          .filter(({ across: a, up: b }) => !columns.includes(a) || !rows.includes(b))
          .map(({ across: a, up: b, probe: fine }) => (
            <circle key={`${a} ${b}`} className={passes(fine) ? 'fine' : 'fine fails'} cx={x(a)} cy={y(b)} r={1.7} />
          ))}
        {(['brink', 'outline'] as const).map((kind) =>
          joinedLines(area?.[kind] ?? []).map((places) => (
            <polyline
              key={`${kind} ${places[0].join()} ${places.length}`}
              className={kind}
              points={places.map(([a, b]) => `${x(a)},${y(b)}`).join(' ')}
            />
          )),
        )}
        {[chosen, under].map((place, k) =>
          place === null ? null : (
            <circle
              key={k === 0 ? 'chosen' : 'under'}
              className={k === 0 ? 'place chosen' : 'place'}
              cx={x(place.across)}
              cy={y(place.up)}
              r={k === 0 ? 6 : 4.5}
            />
          ),
        )}
        <text x={size.left} y={size.height - 20}>
          {figure(ask.across.from)}
        </text>
        <text x={size.width - size.right} y={size.height - 20} textAnchor="end">
          {withUnit(ask.across.to, across.unit)}
        </text>
        <text x={(size.left + size.width - size.right) / 2} y={size.height - 6} textAnchor="middle" className="axis">
          {across.label}
        </text>
        <text x={size.left - 5} y={size.height - size.bottom - 2} textAnchor="end">
          {figure(ask.up.from)}
        </text>
        <text x={size.left - 5} y={size.top + 9} textAnchor="end">
          {figure(ask.up.to)}
        </text>
        <text
          className="axis"
          transform={`translate(11 ${size.top + inner.height / 2}) rotate(-90)`}
          textAnchor="middle"
        >
          {up.label}
          {up.unit === '' ? '' : `, ${up.unit}`}
        </text>
      </svg>
      <p className="readout" aria-live="polite">
        {readout ||
          `Crossed: fails. ${drawn === null ? 'Lighter: more to spare.' : `Lighter: better ${drawn.title.toLowerCase()}.`} Dots: where the border was looked for.`}
      </p>
    </>
  );
}

const share = (at: number, { from, to }: { readonly from: number; readonly to: number }): number =>
  (at - from) / (to - from);

const evenly = ({ from, to, points }: MapState['ask']['across']): number[] =>
  Array.from({ length: points }, (_, k) => (k === points - 1 ? to : from + (k * (to - from)) / (points - 1)));

/** Borders of the cells round some places along a line: the ends, and midway between neighbours. */
const between = (places: readonly number[]): number[] => [
  places[0],
  ...places.slice(1).map((place, k) => (place + places[k]) / 2),
  places[places.length - 1],
];

const hold = (at: number, low: number, high: number): number =>
  low > high ? (low + high) / 2 : Math.min(Math.max(at, low), high);

/** How many lines of a measure are drawn at most. */
const mostLines = 5;

/** Lines along which a measure comes to round values, and how good a place is by it. */
function measureLines({ points }: MapState, measure: Measure, columns: readonly number[], rows: readonly number[]) {
  const valueAt = (probe: Probe | undefined): number | null => {
    const value = probe === undefined ? null : measure.value(probe);
    return value !== null && Number.isFinite(value) ? value : null;
  };
  const values = rows.flatMap((b) =>
    columns.map((a) => valueAt(points.find((one) => one.across === a && one.up === b)?.probe)),
  );
  const span = spanOf(values, 0);
  const levels = span === null ? [] : evenTicks(span, mostLines);
  return {
    measure,
    contours: levels.flatMap((level) => contoursOf(columns, rows, values, level).map((places) => ({ level, places }))),
    shadeOf(probe: Probe): number {
      const value = valueAt(probe);
      if (value === null || span === null) return shades.length;
      const part = (value - span.low) / (span.high - span.low);
      const good = measure.better === 'more' ? part : 1 - part;
      return Math.min(shades.length, Math.floor(good * (shades.length + 1)));
    },
  };
}

/** Where a line is lettered: at its middle, the letters along it and never upside down. */
function lettered(places: readonly (readonly [number, number])[]): {
  readonly transform: string;
  readonly textAnchor: 'middle';
} {
  const at = Math.max(1, Math.floor(places.length / 2));
  const [a, b] = [places[at - 1], places[at]];
  const turn = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  const upright = turn > 90 ? turn - 180 : turn < -90 ? turn + 180 : turn;
  return {
    transform: `translate(${(a[0] + b[0]) / 2} ${(a[1] + b[1]) / 2}) rotate(${upright}) translate(0 -3)`,
    textAnchor: 'middle',
  };
}

/** How much is to spare, in steps: 0 hardly anything, 3 plenty. */
function shadeOf(probe: Parameters<typeof closestCall>[0], gauge: MapState['gauge']): number {
  const call = closestCall(probe, gauge);
  if (call === null) return shades.length;
  return shades.filter((limit) => call.share >= limit).length;
}

const moves: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The even place next to one, in a direction. */
function neighbour(
  columns: readonly number[],
  rows: readonly number[],
  { across, up }: MapPlace,
  right: number,
  upward: number,
): MapPlace {
  const stepped = (values: readonly number[], at: number, by: number) => {
    const now = values.reduce((best, value, k) => (Math.abs(value - at) < Math.abs(values[best] - at) ? k : best), 0);
    return values[Math.min(values.length - 1, Math.max(0, now + by))];
  };
  return { across: stepped(columns, across, right), up: stepped(rows, up, upward) };
}
