import { riskTitle } from '../../../core/findings/index.ts';
import type { RiskId } from '../../../core/risks/types.ts';
import { type Probe, passesBy, type SweepState } from '../../../state/study/index.ts';
import { figure } from './words.ts';
import './sweepChart.css';

interface SweepChartProps {
  readonly sweep: Pick<SweepState, 'points' | 'gauge'> & {
    readonly ask: Pick<SweepState['ask'], 'from' | 'to'>;
    readonly line: { readonly edges: readonly { readonly passes: number; readonly fails: number }[] } | null;
  };
  readonly unit: string;
  /** What is varied. */
  readonly title: string;
  readonly chosen: number | null;
  readonly onChoose: (at: number) => void;
}

const size = { width: 312, height: 190, left: 40, right: 8, top: 20, bottom: 36 };

/** Margins beyond this much of their plenty are drawn at the edge: what is there does not decide anything. */
const reach = 1.2;

/** Heights that are written: margins are drawn in terms of each risk's own plenty, so that different risks share one scale. */
const scale = [
  [1, 'plenty'],
  [0.5, 'half'],
  [0, 'none'],
  [-1, 'fails'],
] as const;

/** How many risks get a curve: those that come closest. */
const curves = 4;

/** Margins against the swept number: a curve for each of the closest risks, every run a dot, every edge a line. */
export function SweepChart({ sweep, unit, title, chosen, onChoose }: SweepChartProps) {
  const { ask, gauge } = sweep;
  const low = Math.min(ask.from, ask.to);
  const high = Math.max(ask.from, ask.to);
  const x = (at: number) => size.left + ((at - low) / (high - low)) * (size.width - size.left - size.right);
  const bottom = size.height - size.bottom;
  const y = (share: number) => {
    const held = Math.max(-reach, Math.min(reach, share));
    return size.top + ((reach - held) / (2 * reach)) * (bottom - size.top);
  };
  const points = [...sweep.points].sort((a, b) => a.at - b.at);
  const shown = gauge === 'all' ? closestRisks(points.map(({ probe }) => probe)) : [gauge];
  const passes = passesBy(gauge);
  const edges = sweep.line?.edges ?? [];
  const lettered = edges.map(({ passes: good, fails }) => ({ at: (good + fails) / 2, good }));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
    <svg
      className="sweep-chart"
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="group"
      aria-label="Margins of the sweep"
    >
      <rect
        className="beyond"
        x={size.left}
        y={y(0)}
        width={size.width - size.left - size.right}
        height={bottom - y(0)}
      />
      {scale.map(([share, words]) => (
        <text key={words} className="axis" x={size.left - 5} y={y(share) + 3.5} textAnchor="end">
          {words}
        </text>
      ))}
      <line className="plenty" x1={size.left} x2={size.width - size.right} y1={y(1)} y2={y(1)} />
      {shown.map((risk) => (
        <g key={risk} className="curve">
          <polyline
            points={curveOf(points, risk)
              .map(({ at, share }) => `${x(at)},${y(share)}`)
              .join(' ')}
          />
        </g>
      ))}
      {namePlaces(shown.map((risk) => y(curveOf(points, risk).at(-1)?.share ?? 0))).map((place, k) => (
        <text key={shown[k]} x={size.width - size.right - 4} y={place} textAnchor="end">
          {riskTitle(shown[k])}
        </text>
      ))}
      <line className="limit" x1={size.left} x2={size.width - size.right} y1={y(0)} y2={y(0)} />
      {lettered.map(({ at, good }) => (
        <g key={at} className="edge">
          <line x1={x(at)} x2={x(at)} y1={size.top} y2={bottom} />
          <text x={Math.min(Math.max(x(at), 30), size.width - 30)} y={size.top - 6} textAnchor="middle">
            {figure(good)}
          </text>
        </g>
      ))}
      {points.map(({ at, probe }) => {
        const share = leastShare(probe, shown);
        const good = passes(probe);
        const select = () => onChoose(at);
        return (
          // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
          <circle
            key={at}
            className={`dot${good ? '' : ' fails'}${at === chosen ? ' chosen' : ''}`}
            role="button"
            tabIndex={0}
            aria-label={`${figure(at)} ${unit}, ${good ? 'passes' : 'fails'}`}
            cx={x(at)}
            cy={y(share ?? -reach)}
            r={at === chosen ? 5 : 3.5}
            onClick={select}
            onKeyDown={(event) => {
              if (event.key === 'Enter' || event.key === ' ') select();
            }}
          />
        );
      })}
      <text className="axis" x={size.left} y={bottom + 14}>
        {figure(low)}
      </text>
      <text className="axis" x={size.width - size.right} y={bottom + 14} textAnchor="end">
        {figure(high)} {unit}
      </text>
      <text className="axis" x={(size.left + size.width - size.right) / 2} y={size.height - 8} textAnchor="middle">
        {title}
      </text>
    </svg>
  );
}

/** Least distance of two names one above the other. */
const lineHeight = 11;

/** Heights for the names of curves that end at these: just above them, the lower ones first, none upon another. */
function namePlaces(ends: readonly number[]): number[] {
  const order = ends.map((_, k) => k).sort((a, b) => ends[b] - ends[a]);
  const places: number[] = [];
  let limit = size.height - size.bottom - 2;
  for (const k of order) {
    places[k] = Math.min(ends[k] - 5, limit);
    limit = places[k] - lineHeight;
  }
  return places;
}

type Swept = { readonly at: number; readonly probe: Probe };

const curveOf = (points: readonly Swept[], risk: RiskId) =>
  points.flatMap(({ at, probe }) => {
    const share = leastShare(probe, [risk]);
    return share === null ? [] : [{ at, share }];
  });

/** Least margin of some risks over all trials, in terms of their plenty; null where none applies. */
function leastShare(probe: Probe, among: readonly RiskId[]): number | null {
  if (!probe.ok) return null;
  const shares = probe.trials.flatMap(({ risks }) =>
    risks.filter(({ risk }) => among.includes(risk)).map(({ share }) => share),
  );
  return shares.length === 0 ? null : Math.min(...shares);
}

/** The risks that come closest anywhere in the sweep. */
function closestRisks(probes: readonly Probe[]): RiskId[] {
  const least = new Map<RiskId, number>();
  for (const probe of probes) {
    if (!probe.ok) continue;
    for (const { risk, share } of probe.trials.flatMap(({ risks }) => risks)) {
      least.set(risk, Math.min(share, least.get(risk) ?? share));
    }
  }
  return [...least]
    .sort((a, b) => a[1] - b[1])
    .slice(0, curves)
    .map(([risk]) => risk);
}
