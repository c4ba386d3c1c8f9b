import { useMemo, useState } from 'react';
import { riskTitle } from '../../../core/findings/index.ts';
import { risks } from '../../../core/risks/index.ts';
import {
  type Gauge,
  quantityAt,
  quantityGroups,
  type StudyQuantity,
  type SweepState,
  usualRange,
} from '../../../state/study/index.ts';
import { useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';
import { NumberField } from './NumberField.tsx';
import { QuantityPicker } from './QuantityPicker.tsx';
import { SweepChart } from './SweepChart.tsx';
import { useStudy, useStudyActions } from './useStudy.ts';
import { figure, probeWords, withUnit } from './words.ts';

/** Even runs of a sweep; the edges come on top. */
const evenRuns = 9;

/** An edge is pinned down to this share of the range. */
const edgeShare = 1 / 64;

/** Varies one number: as a variant of its own, or over a range with the curve of the margins. */
export function SweepPart() {
  const scene = useSession((state) => state.scene);
  const sweep = useStudy((state) => state.sweep);
  const gauge = useStudy((state) => state.gauge);
  const actions = useStudyActions();
  const groups = useMemo(() => (scene ? quantityGroups(scene) : []), [scene]);
  const [picked, setPicked] = useState('');
  const [range, setRange] = useState<readonly [number, number] | null>(null);
  const quantity = (scene && quantityAt(scene, picked)) ?? firstOf(groups);
  if (!scene || !quantity) return null;
  const [from, to] = range ?? usualRange(quantity);
  const { at, unit } = quantity;
  const pick = (next: string) => {
    setPicked(next);
    setRange(null);
  };
  const running = sweep !== null && sweep.line === null;
  const start = () => {
    const edgeWithin = Math.abs(to - from) * edgeShare;
    void actions.sweep({ at, from, to, points: evenRuns, edgeWithin });
  };
  return (
    <>
      <QuantityPicker groups={groups} chosen={at} onChoose={pick} />
      <p className="quiet about">
        {quantity.about} Now {withUnit(quantity.value, unit)}.
      </p>
      <div className="study-range">
        <NumberField
          key={`${at} from`}
          label="From"
          at={at}
          unit={unit}
          value={from}
          onChange={(value) => setRange([value, to])}
        />
        <NumberField
          key={`${at} to`}
          label="To"
          at={at}
          unit={unit}
          value={to}
          onChange={(value) => setRange([from, value])}
        />
      </div>
      <GaugePicker gauge={gauge} onChoose={actions.setGauge} />
      {running ? (
        <div className="study-progress">
          <progress className="progress-line" value={sweep.progress} max={1} aria-label="Sweep" />
          <button type="button" className="link" onClick={() => actions.stop()}>
            Stop
          </button>
        </div>
      ) : (
        <button type="button" className="study-button" disabled={from === to} onClick={start}>
          Sweep from {figure(from)} to {withUnit(to, unit)}
        </button>
      )}
      {sweep && sweep.ask.at === at && sweep.points.length > 0 && <SweepOutcome sweep={sweep} quantity={quantity} />}
    </>
  );
}

const firstOf = (groups: ReturnType<typeof quantityGroups>) =>
  groups.flatMap(({ quantities }) => quantities).find(({ at }) => at.includes('/alignment/')) ??
  groups[0]?.quantities[0] ??
  null;

function GaugePicker({ gauge, onChoose }: { readonly gauge: Gauge; readonly onChoose: (gauge: Gauge) => void }) {
  return (
    <div className="study-field">
      <label htmlFor="study-gauge">What decides</label>
      <select id="study-gauge" value={gauge} onChange={(event) => onChoose(event.target.value as Gauge)}>
        <option value="all">Everything: it arrives and nothing fails</option>
        {risks.map(({ id }) => (
          <option key={id} value={id}>
            {riskTitle(id)} alone
          </option>
        ))}
      </select>
    </div>
  );
}

function SweepOutcome({ sweep, quantity }: { readonly sweep: SweepState; readonly quantity: StudyQuantity }) {
  const { unit, label } = quantity;
  const show = useShow();
  const actions = useStudyActions();
  const [chosen, setChosen] = useState<number | null>(null);
  const { ask, gauge, line } = sweep;
  const edge = line?.edges[0]?.passes ?? null;
  const value = chosen ?? edge;
  const point = sweep.points.find(({ at }) => at === value);
  const words = point && probeWords(point.probe, gauge, show);
  return (
    <>
      <SweepChart sweep={sweep} unit={unit} chosen={value} onChoose={setChosen} />
      <p className="conclusion" role="status">
        {line === null ? `${sweep.points.length} runs so far` : conclusion(sweep, unit)}
      </p>
      {point && words && (
        <div className={words.passes ? 'swept-value' : 'swept-value fails'}>
          <b>{withUnit(point.at, unit)}</b> {words.verdict}
          {words.call !== '' && `: ${words.call}`}
          <span className="acts">
            <button type="button" className="link" onClick={() => void actions.keepValue(ask.at, point.at)}>
              Use it
            </button>
            <button
              type="button"
              className="link"
              onClick={() =>
                void actions.addVariant(`${label.replace(':', '')} ${withUnit(point.at, unit)}`, ask.at, point.at)
              }
            >
              Keep as a variant
            </button>
          </span>
        </div>
      )}
    </>
  );
}

function conclusion({ line, ask, trialIds }: SweepState, unit: string): string {
  if (line === null) return '';
  const runs = `${line.points.length} runs${trialIds.length > 1 ? ` of ${trialIds.length} trials` : ''}`;
  if (!line.whole) return `Stopped after ${runs}.`;
  if (line.edges.length === 0) {
    return `No change of verdict between ${figure(ask.from)} and ${withUnit(ask.to, unit)} (${runs}).`;
  }
  const sentences = line.edges.map(({ passes, fails }) =>
    passes < fails
      ? `Passes up to ${withUnit(passes, unit)}, fails from ${withUnit(fails, unit)}.`
      : `Fails up to ${withUnit(fails, unit)}, passes from ${withUnit(passes, unit)}.`,
  );
  return `${sentences.join(' ')} (${runs})`;
}
