import { useState } from 'react';
import { formatNumber } from '../../../core/units/index.ts';
import type { Knob, RouteState } from '../../../state/study/index.ts';
import { gradeShown, lengthShown, percentWords, type Show, useShow } from '../../show.ts';
import { useStudyActions } from './useStudy.ts';
import { withUnit } from './words.ts';
import './routeFront.css';

interface RouteFrontProps {
  readonly route: RouteState;
  /** The numbers that are chosen; null for one that the railway has no more. */
  readonly knobs: readonly (Knob | null)[];
}

type Found = RouteState['routes'][number];

const size = { width: 312, height: 190, left: 44, right: 14, top: 14, bottom: 36 };

/** What can be traded: room against margin, or grade against margin where all take the same room. */
export function RouteFront({ route, knobs }: RouteFrontProps) {
  const show = useShow();
  const actions = useStudyActions();
  const [chosen, setChosen] = useState<number | null>(null);
  const { routes, answer } = route;
  const sameRoom = spread(routes.map(({ area }) => area)) < sameWithin;
  const across = (one: Found) => (sameRoom ? one.ruling : one.area);
  const x = scaleOf(routes.map(across), size.left, size.width - size.right);
  const y = scaleOf(routes.map(marginOf), size.height - size.bottom, size.top);
  const picked = chosen === null ? null : (routes[chosen] ?? null);
  const valueWords = (one: Found): string =>
    one.values
      .map((value, k) => `${knobs[k]?.label.replace(':', '') ?? ''} ${withUnit(value, knobs[k]?.unit ?? '')}`)
      .join(', ');
  return (
    <>
      <p className="conclusion" role="status">
        {answer === null ? `${routes.length} so far` : answerWords(route)}
      </p>
      {routes.length > 0 && (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
        <svg
          className="route-front"
          viewBox={`0 0 ${size.width} ${size.height}`}
          role="group"
          aria-label={`Routes by ${sameRoom ? 'ruling grade' : 'room'} and margin`}
        >
          <path
            className="frame"
            d={`M${size.left - 6} ${size.top}V${size.height - size.bottom + 6}H${size.width - size.right}`}
          />
          <text className="axis" x={(size.left + size.width) / 2} y={size.height - 6} textAnchor="middle">
            {sameRoom ? 'ruling grade, less is better' : 'room, less is better'}
          </text>
          <text
            className="axis"
            transform={`translate(12 ${(size.top + size.height - size.bottom) / 2}) rotate(-90)`}
            textAnchor="middle"
          >
            margin, more is better
          </text>
          {routes.map((one, k) => {
            const select = () => setChosen(k);
            return (
              // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
              <circle
                key={one.values.join()}
                className={k === chosen ? 'dot chosen' : 'dot'}
                role="button"
                tabIndex={0}
                aria-label={`${valueWords(one)}: ${tradeWords(one, show)}`}
                cx={x(across(one))}
                cy={y(marginOf(one))}
                r={k === chosen ? 7 : 5}
                onClick={select}
                onKeyDown={(event) => {
                  if (event.key !== 'Enter' && event.key !== ' ') return;
                  event.preventDefault();
                  event.stopPropagation();
                  select();
                }}
              />
            );
          })}
        </svg>
      )}
      {picked !== null && chosen !== null && (
        <div className="swept-value">
          <b>{valueWords(picked)}</b>: {tradeWords(picked, show)}
          <span className="acts">
            <button type="button" className="link" onClick={() => void actions.keepRoute(chosen, valueWords(picked))}>
              Keep as a variant
            </button>
            <button
              type="button"
              className="link"
              onClick={() => void actions.keepRoute(chosen, valueWords(picked), true)}
            >
              Try beside
            </button>
          </span>
        </div>
      )}
    </>
  );
}

/** Areas closer than this are the same room, m²: a sheet of writing paper. */
const sameWithin = 0.06;

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** In full where it was run in full. */
const marginOf = ({ margin, quickMargin }: Found): number => margin ?? quickMargin ?? 0;

function scaleOf(values: readonly number[], from: number, to: number): (value: number) => number {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return (value) => (high === low ? (from + to) / 2 : from + ((value - low) / (high - low)) * (to - from));
}

const tradeWords = (one: Found, show: Show): string =>
  [
    `${gradeShown(one.ruling, show)
      .shown.filter((part) => part !== '')
      .join('\u2009')} ruling`,
    `${lengthShown(one.across, show).shown.join('\u2009')} by ${lengthShown(one.along, show).shown.join('\u2009')}`,
    `smallest margin ${percentWords(marginOf(one))} of plenty${one.margin === null ? ', by even running' : ', in full'}`,
  ].join(' · ');

const certaintyWords = {
  'every-setting': 'Proven: every setting of the ranges was looked at',
  'no-better-neighbour': 'Best found: nothing a step away is better',
  'best-found': 'Best found',
} as const;

function answerWords({ answer, routes }: RouteState): string {
  if (answer === null) return '';
  const counts = `${formatNumber(answer.probes, { digits: 0 })} of ${formatNumber(answer.settings, { digits: 0 })} settings`;
  if (!answer.whole) return `Stopped: ${routes.length} found until then (${counts}).`;
  if (routes.length === 0) return `Nothing in these ranges can be laid and run (${counts}). ${answer.reason ?? ''}`;
  return `${certaintyWords[answer.certainty]} (${counts}). ${routes.length} that no other beats in grade, room and margin together.`;
}
