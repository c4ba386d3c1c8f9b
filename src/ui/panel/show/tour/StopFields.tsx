import { useId } from 'react';
import { riskById, risks } from '../../../../core/risks/index.ts';
import { formatNumber } from '../../../../core/units/index.ts';
import { titleOf } from '../../../../state/index.ts';
import { type SceneTourStop, type TourStopChange, trialOfStop } from '../../../../state/show/index.ts';
import type { Scene } from '../../../../state/types.ts';
import { useDesk, useSession } from '../../../context.tsx';
import { TypedField } from '../../../controls/TypedField.tsx';
import { readPlain } from '../../trial/readPlain.ts';
import { WordsField } from './WordsField.tsx';

interface StopFieldsProps {
  readonly scene: Scene;
  readonly stop: SceneTourStop;
}

const seconds = (value: number | undefined): string =>
  value === undefined ? '' : formatNumber(value, { digits: 2, trim: true });

/** What a stop says, which trial it shows and when, and which check it tells of. */
export function StopFields({ scene, stop }: StopFieldsProps) {
  const { actions } = useDesk();
  const id = useId();
  const findings = useSession((state) => state.result?.findings);
  const put = (what: string, change: TourStopChange) => actions.changeStop(stop.id, what, change);
  const found = new Set([...(findings ?? []).map(({ risk }) => risk), ...(stop.risk ? [stop.risk] : [])]);
  const takeTime = (what: string, field: 'atS' | 'tillS') => (text: string) => {
    if (text === '') return put(what, { [field]: undefined });
    const read = readPlain(text, 's');
    if (!read.ok) return read.message;
    if (field === 'tillS' && read.value <= (stop.atS ?? 0)) return 'That is before the stop begins.';
    return put(what, { [field]: read.value });
  };
  return (
    <div className="stop-fields">
      <TypedField
        className="sheet-field"
        label="Title"
        value={stop.title}
        onTake={(title) => (title === '' ? 'A stop needs a title.' : put('title', { title }))}
      />
      <WordsField
        value={stop.words ?? ''}
        onTake={(words) => put('words', { words: words === '' ? undefined : words })}
      />
      {scene.trials.length > 1 && (
        <div className="sheet-field">
          <label htmlFor={`${id}-trial`}>Trial</label>
          <select
            id={`${id}-trial`}
            value={trialOfStop(scene, stop)}
            onChange={(event) => {
              put('trial', { trial: event.target.value });
              void actions.goToStop(stop.id);
            }}
          >
            {scene.trials.map((trial) => (
              <option key={trial.id} value={trial.id}>
                {trial.name}
              </option>
            ))}
          </select>
        </div>
      )}
      <div className="sheet-pair">
        <TypedField
          className="sheet-field"
          label="From"
          unit="s"
          value={seconds(stop.atS ?? 0)}
          onTake={takeTime('beginning', 'atS')}
        />
        <TypedField
          className="sheet-field"
          label="Plays till"
          unit="s"
          placeholder="stands"
          value={seconds(stop.tillS)}
          onTake={takeTime('end', 'tillS')}
        />
      </div>
      <div className="sheet-field">
        <label htmlFor={`${id}-risk`}>Tells the verdict of</label>
        <select
          id={`${id}-risk`}
          value={stop.risk ?? ''}
          onChange={(event) => {
            const risk = risks.find((one) => one.id === event.target.value)?.id;
            put('verdict', { risk });
          }}
        >
          <option value="">the whole trial</option>
          {[...found].map((risk) => (
            <option key={risk} value={riskById(risk).id}>
              {titleOf(risk)}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}
