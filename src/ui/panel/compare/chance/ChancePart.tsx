import { useState } from 'react';
import type { ChanceState } from '../../../../state/study/index.ts';
import { TypedField } from '../../../controls/TypedField.tsx';
import { percentWords } from '../../../show.ts';
import { Running } from '../Running.tsx';
import { useStudy, useStudyActions } from '../useStudy.ts';
import { BasePicker } from '../variants/BasePicker.tsx';
import { figure } from '../words.ts';
import './chance.css';

/** How sure every train is to pass when nothing is quite as it should be. */
export function ChancePart() {
  const chance = useStudy((state) => state.chance);
  const actions = useStudyActions();
  const [heads, setHeads] = useState(true);
  const [supportsMm, setSupports] = useState(0.5);
  const [massPercent, setMass] = useState(5);
  const [draws, setDraws] = useState(100);
  return (
    <>
      <p className="quiet about">
        Nothing is built to the hair. Draws a railway and trains at random within what they may be off, runs every trial
        of this track with each, and counts.
      </p>
      <BasePicker />
      <label className="study-tick">
        <input type="checkbox" checked={heads} onChange={(event) => setHeads(event.target.checked)} />
        Coupling heads off by what their kind is allowed
      </label>
      <div className="study-range">
        <Amount label="Supports off by ±" unit="mm" value={supportsMm} most={20} onChange={setSupports} />
        <Amount label="Masses off by ±" unit="%" value={massPercent} most={50} onChange={setMass} />
      </div>
      <Amount label="Draws" unit="" value={draws} most={2000} least={10} whole onChange={setDraws} />
      {chance !== null && chance.progress !== null ? (
        <Running label="Draws" progress={chance.progress} />
      ) : (
        <button
          type="button"
          className="study-button"
          disabled={!heads && supportsMm === 0 && massPercent === 0}
          onClick={() => void actions.chance({ heads, supportsMm, massPercent, draws })}
        >
          Draw {draws} times
        </button>
      )}
      {chance !== null && chance.drawn > 0 && <ChanceOutcome chance={chance} />}
    </>
  );
}

interface AmountProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly most: number;
  readonly least?: number;
  readonly whole?: boolean;
  readonly onChange: (value: number) => void;
}

function Amount({ label, unit, value, most, least = 0, whole = false, onChange }: AmountProps) {
  const take = (text: string): string | null => {
    const typed = text === '' ? Number.NaN : Number(text);
    if (!(typed >= least && typed <= most) || (whole && !Number.isInteger(typed))) {
      return `A ${whole ? 'whole ' : ''}number from ${least} to ${most}.`;
    }
    onChange(typed);
    return null;
  };
  return <TypedField className="sheet-field small" label={label} value={figure(value)} unit={unit} onTake={take} />;
}

function ChanceOutcome({ chance: { trials, drawn, decides, progress, exactness } }: { readonly chance: ChanceState }) {
  return (
    <>
      <ul className="chances" aria-label="How sure each trial is">
        {trials.map(({ trialId, name, passing: { share, low, high } }) => (
          <li key={trialId}>
            <span>{name}</span>
            <b>{percentWords(share)}</b>
            <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
              <line className="whole" x1="0" x2="100" y1="4" y2="4" />
              <rect className="range" x={100 * low} width={Math.max(0.5, 100 * (high - low))} y="1" height="6" />
              <rect className="share" x={Math.min(99, 100 * share)} width="1" y="0" height="8" />
            </svg>
            <small>
              between {percentWords(low)} and {percentWords(high)} with 95 % confidence
            </small>
          </li>
        ))}
      </ul>
      <p className="conclusion" role="status">
        {drawn} draws {progress === null ? '' : 'so far '}
        {exactness === 'run' ? 'in full' : 'by even running'}.
      </p>
      {decides.length > 0 && (
        <>
          <h3>What decides</h3>
          <ul className="rows">
            {decides.map(({ words, by }) => (
              <li key={words} className="decides">
                <span>{words}</span>
                <span>{by > 0 ? 'better higher' : 'better lower'}</span>
                <b>{figure(Math.abs(Number(by.toFixed(2))))}</b>
              </li>
            ))}
          </ul>
          <p className="quiet about">
            The nearer to 1, the more surely the closest call goes with it: measure or mend these first.
          </p>
        </>
      )}
    </>
  );
}
