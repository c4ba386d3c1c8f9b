import { riskTitle } from '../../../../core/findings/index.ts';
import type { RiskId } from '../../../../core/risks/types.ts';
import type { Probe } from '../../../../state/study/index.ts';
import { acrossOf, field, inOrder, type SweepDrawing, SweepFrame, type Swept } from './SweepFrame.tsx';

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

/** Margins against the swept number: a curve for each of the closest risks. */
export function SweepChart(drawing: SweepDrawing) {
  const { ask, gauge, points: unordered } = drawing.sweep;
  const x = acrossOf(ask);
  const y = (share: number) => {
    const held = Math.max(-reach, Math.min(reach, share));
    return field.top + ((reach - held) / (2 * reach)) * (field.bottom - field.top);
  };
  const points = inOrder(unordered);
  const shown = gauge === 'all' ? closestRisks(points.map(({ probe }) => probe)) : [gauge];
  return (
    <SweepFrame {...drawing} label="Margins of the sweep" heightOf={(probe) => y(leastShare(probe, shown) ?? -reach)}>
      <rect className="beyond" x={field.left} y={y(0)} width={field.right - field.left} height={field.bottom - y(0)} />
      {scale.map(([share, words]) => (
        <text key={words} className="axis" x={field.left - 5} y={y(share) + 3.5} textAnchor="end">
          {words}
        </text>
      ))}
      <line className="plenty" x1={field.left} x2={field.right} y1={y(1)} y2={y(1)} />
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
        <text key={shown[k]} x={field.right - 4} y={place} textAnchor="end">
          {riskTitle(shown[k])}
        </text>
      ))}
      <line className="limit" x1={field.left} x2={field.right} y1={y(0)} y2={y(0)} />
    </SweepFrame>
  );
}

/** Least distance of two names one above the other. */
const lineHeight = 11;

/** Heights for the names of curves that end at these: just above them, the lower ones first, none upon another. */
function namePlaces(ends: readonly number[]): number[] {
  const order = ends.map((_, k) => k).sort((a, b) => ends[b] - ends[a]);
  const places: number[] = [];
  let limit = field.bottom - 2;
  for (const k of order) {
    places[k] = Math.min(ends[k] - 5, limit);
    limit = places[k] - lineHeight;
  }
  return places;
}

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
