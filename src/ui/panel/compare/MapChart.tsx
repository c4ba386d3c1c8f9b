import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { closestCall, type Knob, type MapState, passesBy } from '../../../state/study/index.ts';
import { useShow } from '../../show.ts';
import { figure, probeWords, withUnit } from './words.ts';
import './mapChart.css';

export interface MapPlace {
  readonly across: number;
  readonly up: number;
}

interface MapChartProps {
  readonly map: MapState;
  readonly across: Knob;
  readonly up: Knob;
  readonly chosen: MapPlace | null;
  readonly onChoose: (place: MapPlace) => void;
}

const size = { width: 312, height: 250, left: 44, right: 10, top: 12, bottom: 34 };

/** Shades of a cell by its closest call, as a share of plenty: from hardly enough to plenty, each lighter. */
const shades = [0.15, 0.4, 1] as const;

/** Two numbers and what passes: cells shaded by the closest call, crossed where they fail, with the border found by halving. */
export function MapChart({ map, across, up, chosen, onChoose }: MapChartProps) {
  const show = useShow();
  const drawing = useRef<SVGSVGElement>(null);
  const [under, setUnder] = useState<MapPlace | null>(null);
  const { ask, gauge, area } = map;
  const passes = passesBy(gauge);
  const columns = evenly(ask.across);
  const rows = evenly(ask.up);
  const inner = { width: size.width - size.left - size.right, height: size.height - size.top - size.bottom };
  const cell = { width: inner.width / columns.length, height: inner.height / rows.length };
  // Every even value stands in the middle of its cell.
  const x = (at: number) => size.left + cell.width / 2 + share(at, ask.across) * (inner.width - cell.width);
  const y = (at: number) =>
    size.height - size.bottom - cell.height / 2 - share(at, ask.up) * (inner.height - cell.height);
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
  const words = probe && probeWords(probe, gauge, show);
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
        {rows.map((b) =>
          columns.map((a) => {
            const known = map.points.find((one) => one.across === a && one.up === b);
            const left = x(a) - cell.width / 2;
            const top = y(b) - cell.height / 2;
            if (known === undefined) return null;
            const good = passes(known.probe);
            return (
              <g key={`${a} ${b}`} className={good ? `cell shade-${shadeOf(known.probe, gauge)}` : 'cell fails'}>
                <rect x={left} y={top} width={cell.width} height={cell.height} />
                {!good && <path d={`M${x(a) - 3} ${y(b) - 3}l6 6m0 -6l-6 6`} />}
              </g>
            );
          }),
        )}
        {map.points
          .filter(({ across: a, up: b }) => !columns.includes(a) || !rows.includes(b))
          .map(({ across: a, up: b, probe: fine }) => (
            <circle key={`${a} ${b}`} className={passes(fine) ? 'fine' : 'fine fails'} cx={x(a)} cy={y(b)} r={1.7} />
          ))}
        {area?.outline.map(([[a, b], [c, d]]) => (
          <line key={`${a} ${b} ${c} ${d}`} className="outline" x1={x(a)} y1={y(b)} x2={x(c)} y2={y(d)} />
        ))}
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
        {readout || 'Crossed: fails. Lighter: more to spare. Dots: where the border was looked for.'}
      </p>
    </>
  );
}

const share = (at: number, { from, to }: { readonly from: number; readonly to: number }): number =>
  (at - from) / (to - from);

const evenly = ({ from, to, points }: MapState['ask']['across']): number[] =>
  Array.from({ length: points }, (_, k) => (k === points - 1 ? to : from + (k * (to - from)) / (points - 1)));

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
