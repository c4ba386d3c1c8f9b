import { easedLimit, limitAmount, limitWords } from '../../../core/survey/index.ts';
import type { LimitConflict, Limits, Mend } from '../../../core/survey/types.ts';
import type { Wishes } from '../../../state/survey/index.ts';
import { useShow } from '../../show.ts';
import { limitFields } from './limitsInScene.ts';
import { useSurveyActions } from './useSurvey.ts';

/** What a limit that has to give way is set to in a scene: its figure as told, in per cent or mm. */
function eased(conflicts: readonly LimitConflict[]): Partial<Wishes> {
  return Object.fromEntries(
    conflicts.map(({ limit, needed }) => {
      const { field } = limitFields[limit];
      const inScene = easedLimit(limit, needed) * (field.endsWith('Percent') ? 100 : 1000);
      return [field, Math.round(inScene * 1e4) / 1e4];
    }),
  );
}

/** The ways out of limits that clash, each taken with one press: the limit is set and the mending looked for again. */
export function EaseButtons({ mend }: { readonly mend: Extract<Mend, { readonly outcome: 'impossible' }> }) {
  const show = useShow();
  const actions = useSurveyActions();
  const { conflicts, together, unlock } = mend;
  const take = (label: string, make: (wishes: Wishes) => Wishes) => {
    actions.setWishes(label, make);
    void actions.mend();
  };
  const told = (limit: keyof Limits, value: number) => limitAmount(limit, easedLimit(limit, value), show);
  if (conflicts.length === 0 && unlock.length === 0) return null;
  return (
    <div className="survey-buttons">
      {together && conflicts.length > 0 ? (
        <button
          type="button"
          className="sheet-button"
          onClick={() => take('limits eased', (now) => ({ ...now, ...eased(conflicts) }))}
        >
          Ease all {conflicts.length} limits so
        </button>
      ) : (
        conflicts.map((conflict) => {
          const { limit, needed } = conflict;
          const name = limitWords[limit];
          return (
            <button
              key={limit}
              type="button"
              className="sheet-button"
              onClick={() =>
                take(`${limitFields[limit].label.toLowerCase()} ${told(limit, needed)}`, (now) => ({
                  ...now,
                  ...eased([conflict]),
                }))
              }
            >
              Allow {told(limit, needed)} for {name}
            </button>
          );
        })
      )}
      {unlock.length > 0 && (
        <button
          type="button"
          className="sheet-button"
          onClick={() =>
            take('supports that may be touched', ({ locked = [], ...rest }) => {
              const left = locked.filter((support) => !unlock.includes(support - 1));
              return left.length === 0 ? rest : { ...rest, locked: left };
            })
          }
        >
          Let {unlock.length === 1 ? 'support' : 'supports'} {unlock.map((support) => support + 1).join(', ')} be
          touched
        </button>
      )}
    </div>
  );
}
