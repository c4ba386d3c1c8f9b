import { coarsePitches, limitAmount } from '../../../core/survey/index.ts';
import type { Limits, MendTask } from '../../../core/survey/types.ts';
import { parseLength } from '../../../core/units/index.ts';
import { readField } from '../../../state/study/index.ts';
import type { SceneSurvey, Wishes } from '../../../state/survey/index.ts';
import { Segmented } from '../../controls/Segmented.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { useShow } from '../../show.ts';
import { type LimitField, limitFields } from './limitsInScene.ts';
import { useSurveyActions } from './useSurvey.ts';
import { readSupports } from './words.ts';

const limitKinds = Object.keys(limitFields) as (keyof Limits)[];

interface LimitFieldsProps {
  readonly survey: SceneSurvey;
  /** What follows from the wishes, and from the plan where they say nothing. */
  readonly task: MendTask;
  readonly count: number;
}

/** With what supports are moved, which stay as they are, and what the line has to keep. */
export function LimitFields({ survey, task, count }: LimitFieldsProps) {
  const show = useShow();
  const { setWishes } = useSurveyActions();
  const wishes = survey.mend ?? {};
  const packing = wishes.packingMm !== undefined;
  const setLimit = (field: LimitField, label: string, text: string): string | null => {
    if (text === '') {
      setWishes(`${label.toLowerCase()} by the plan`, ({ [field]: _old, ...rest }) => rest);
      return null;
    }
    const read = readField(`mend/${field}`, text);
    if (!read.ok) return read.message;
    setWishes(`${label.toLowerCase()} ${text}`, (now) => ({ ...now, [field]: read.value }));
    return null;
  };
  const setPieces = (text: string): string | null => {
    const pieces = text.split(/[\s;,]+/).filter((part) => part !== '');
    const read = pieces.map((piece) => parseLength(piece));
    const wrong = read.find((one) => !one.ok);
    if (wrong !== undefined && !wrong.ok) return wrong.message;
    const packingMm = read.flatMap((one) => (one.ok ? [Math.round(one.value * 1e7) / 1e4] : []));
    if (packingMm.length === 0 || packingMm.length > 12) return 'Write one to twelve thicknesses, such as 0.5 1 2.';
    setWishes('pieces in the drawer', ({ thread: _thread, ...rest }) => ({ ...rest, packingMm }));
    return null;
  };
  return (
    <>
      <h3>How supports are moved</h3>
      <Segmented
        label="How supports are moved"
        choices={[
          { value: 'nut', label: 'Nuts on rods' },
          { value: 'packing', label: 'Packing' },
        ]}
        value={packing ? 'packing' : 'nut'}
        onChange={(way) =>
          setWishes(
            way === 'nut' ? 'nuts' : 'packing',
            ({ thread: _thread, packingMm: _pieces, ...rest }): Wishes =>
              way === 'nut' ? rest : { ...rest, packingMm: [0.5, 1, 2] },
          )
        }
        wide
      />
      <div className="sheet-pair">
        {packing ? (
          <TypedField
            className="sheet-field"
            label="Pieces in the drawer"
            value={(wishes.packingMm ?? []).join(' ')}
            unit="mm"
            onTake={setPieces}
          />
        ) : (
          <div className="sheet-field">
            <label htmlFor="survey-thread">Thread</label>
            <select
              id="survey-thread"
              value={task.adjuster.kind === 'nut' ? task.adjuster.thread : 'M8'}
              onChange={(event) =>
                setWishes(`rods of ${event.target.value}`, (now) => ({
                  ...now,
                  thread: event.target.value as NonNullable<Wishes['thread']>,
                }))
              }
            >
              {Object.keys(coarsePitches).map((thread) => (
                <option key={thread}>{thread}</option>
              ))}
            </select>
          </div>
        )}
        <TypedField
          className="sheet-field"
          label="Supports not to be touched"
          value={(wishes.locked ?? []).join(', ')}
          placeholder="none"
          onTake={(text) => {
            const list = readSupports(text, count);
            if (list === null) return `Write numbers of supports from 1 to ${count}.`;
            const locked = list.map((support) => support + 1);
            setWishes('supports not to be touched', ({ locked: _old, ...rest }) =>
              locked.length === 0 ? rest : { ...rest, locked },
            );
            return null;
          }}
        />
      </div>
      <h3>What has to be kept</h3>
      <p className="quiet">Grey figures follow from the plan. An emptied field goes back to them.</p>
      <div className="sheet-pair">
        {limitKinds.map((limit) => {
          const { field, label } = limitFields[limit];
          const bound = task.limits[limit];
          const given = wishes[field];
          return (
            <TypedField
              className="sheet-field"
              key={field}
              label={label}
              value={given === undefined ? '' : String(given)}
              unit={given === undefined ? '' : field.endsWith('Percent') ? '%' : 'mm'}
              placeholder={
                bound === undefined || !Number.isFinite(bound) ? 'no limit' : limitAmount(limit, bound, show)
              }
              onTake={(text) => setLimit(field, label, text)}
            />
          );
        })}
      </div>
    </>
  );
}
