import { useState } from 'react';
import { drawCount, type Exactness, type TrainsOutcome } from '../../../state/survey/index.ts';
import { Segmented } from '../../controls/Segmented.tsx';
import { percentWords, useShow } from '../../show.ts';
import { probeWords } from '../compare/words.ts';
import { useSurvey, useSurveyActions } from './useSurvey.ts';
import './trains.css';

/** What the trains make of the line as it stands and as it would stand after the work. */
export function TrainsPart() {
  const worked = useSurvey((state) => state.worked);
  const mended = useSurvey((state) => state.mended?.mend?.outcome === 'mended');
  const trains = useSurvey((state) => state.trains);
  const actions = useSurveyActions();
  const [exactness, setExactness] = useState<Exactness>('run');
  if (worked === null) return <p className="quiet">Heights come first: take some readings.</p>;
  return (
    <>
      <h3>{trains === null ? 'The trial on show' : trains.trialName}</h3>
      <p className="quiet">
        Run on the line as estimated{mended ? ' and as mended' : ''}, then on {drawCount} lines drawn from what the
        readings leave open, the same ones each time.
        {!mended && ' Find a mending first to see what it does for the trains.'}
      </p>
      <Segmented
        label="How exactly"
        choices={[
          { value: 'steady', label: 'Quick: even running' },
          { value: 'run', label: 'In full' },
        ]}
        value={exactness}
        onChange={setExactness}
        wide
      />
      {trains !== null && trains.progress !== null ? (
        <div className="survey-progress">
          <progress className="progress-line" value={trains.progress} max={1} aria-label="Trains" />
          <button type="button" className="link" onClick={() => actions.stop()}>
            Stop
          </button>
        </div>
      ) : (
        <button type="button" className="sheet-button first" onClick={() => void actions.runTrains(exactness)}>
          Run the trains
        </button>
      )}
      {trains !== null && (
        <div className="outcomes" aria-live="polite">
          <Outcome name="As estimated" outcome={trains.before} />
          {trains.after !== null && <Outcome name="As mended" outcome={trains.after} />}
        </div>
      )}
    </>
  );
}

function Outcome({
  name,
  outcome: { probe, draws, passed, share },
}: {
  readonly name: string;
  readonly outcome: TrainsOutcome;
}) {
  const show = useShow();
  const words = probe && probeWords(probe, { gauge: 'all', limits: [] }, show);
  return (
    <dl className={words && !words.passes ? 'outcome fails' : 'outcome'}>
      <dt>{name}</dt>
      <dd className="verdict-word">{words?.verdict ?? '…'}</dd>
      {words !== null && words.call !== '' && <dd>{words.call}</dd>}
      {share !== null && (
        <dd className="quiet">
          {passed} of {draws} drawn lines pass: between {percentWords(share.low)} and {percentWords(share.high)} of all
          that these readings leave open
        </dd>
      )}
    </dl>
  );
}
