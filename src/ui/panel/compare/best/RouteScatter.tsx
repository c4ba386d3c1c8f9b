import { unbeaten, type Wish } from '../../../../core/study/index.ts';
import { useShow } from '../../../show.ts';
import { keyOf, type Measure, measures, type Traded } from './routeWords.ts';
import './routeFront.css';

interface RouteScatterProps {
  readonly all: readonly Traded[];
  readonly x: Measure;
  readonly y: Measure;
  /** Key of the one that is looked at. */
  readonly chosen: string | null;
  readonly nameOf: (one: Traded) => string;
  readonly onChoose: (one: Traded) => void;
}

const size = { width: 312, height: 216, left: 54, right: 14, top: 12, bottom: 42 };

/** Railways by two of their measures: those that no other beats in all three filled, the others open, what there is now a square; the line joins the best of these two alone. */
export function RouteScatter({ all, x, y, chosen, nameOf, onChoose }: RouteScatterProps) {
  const show = useShow();
  const bottom = size.height - size.bottom;
  const right = size.width - size.right;
  const across = scaleOf(all.map(measures[x].of), size.left + 8, right - 8);
  const up = scaleOf(all.map(measures[y].of), bottom - 8, size.top + 8);
  const at = (one: Traded) => [across.at(measures[x].of(one)), up.at(measures[y].of(one))] as const;
  const best = bestOfTwo(all, x, y).map(at);
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing */}
      <svg
        className="route-front"
        viewBox={`0 0 ${size.width} ${size.height}`}
        role="group"
        aria-label={`Routes by ${measures[x].title} and ${measures[y].title}`}
      >
        <path className="frame" d={`M${size.left} ${size.top}V${bottom}H${right}`} />
        {across.ticks.map((value, k) => (
          <text
            key={value}
            className="tick"
            x={across.at(value)}
            y={bottom + 13}
            textAnchor={across.ticks.length === 1 ? 'middle' : k === 0 ? 'start' : 'end'}
          >
            {measures[x].text(value, show)}
          </text>
        ))}
        {up.ticks.map((value) => (
          <text key={value} className="tick" x={size.left - 4} y={up.at(value) + 3.5} textAnchor="end">
            {measures[y].text(value, show)}
          </text>
        ))}
        <text className="axis" x={(size.left + right) / 2} y={size.height - 12} textAnchor="middle">
          {measures[x].title}, {measures[x].better} is better
        </text>
        <text className="axis" transform={`translate(11 ${(size.top + bottom) / 2}) rotate(-90)`} textAnchor="middle">
          {measures[y].title}, {measures[y].better} is better
        </text>
        {best.length > 1 && <polyline className="best" points={best.map((place) => place.join()).join(' ')} />}
        {all.map((one) => {
          const [cx, cy] = at(one);
          const picked = keyOf(one) === chosen;
          const select = () => onChoose(one);
          return (
            // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
            <g
              key={keyOf(one)}
              className={`dot ${one.kind}${picked ? ' chosen' : ''}`}
              role="button"
              tabIndex={0}
              aria-label={nameOf(one)}
              onClick={select}
              onKeyDown={(event) => {
                if (event.key !== 'Enter' && event.key !== ' ') return;
                event.preventDefault();
                event.stopPropagation();
                select();
              }}
            >
              <circle className="reach" cx={cx} cy={cy} r={11} />
              {one.kind === 'now' ? (
                <rect x={cx - 7} y={cy - 7} width={14} height={14} />
              ) : (
                <circle cx={cx} cy={cy} r={one.kind === 'beaten' ? 3 : 5} />
              )}
              {one.agrees === false && <path d={`M${cx - 6} ${cy - 6}l12 12m0-12l-12 12`} />}
            </g>
          );
        })}
      </svg>
      <p className="route-key quiet" aria-hidden="true">
        <span className="unbeaten">no other beats it in all three</span>
        <span className="beaten">beaten</span>
        <span className="now">as it is now</span>
      </p>
    </>
  );
}

/** Those that no other beats in two measures alone, along the first. */
function bestOfTwo(all: readonly Traded[], x: Measure, y: Measure): Traded[] {
  const wish = (one: Measure): Wish => (measures[one].better === 'less' ? 'least' : 'most');
  const candidates = all.filter(({ kind }) => kind !== 'now');
  return unbeaten(
    candidates.map((one) => [measures[x].of(one), measures[y].of(one)]),
    [wish(x), wish(y)],
  )
    .map((k) => candidates[k])
    .sort((a, b) => measures[x].of(a) - measures[x].of(b));
}

/** A scale over some values, and the values to be written at it. */
function scaleOf(values: readonly number[], from: number, to: number) {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const flat = high - low < 1e-6;
  return {
    at: (value: number) => (flat ? (from + to) / 2 : from + ((value - low) / (high - low)) * (to - from)),
    ticks: flat ? [low] : [low, high],
  };
}
