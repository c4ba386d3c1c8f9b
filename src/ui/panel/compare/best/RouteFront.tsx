import { useState } from 'react';
import type { Knob, RouteState } from '../../../../state/study/index.ts';
import { Segmented } from '../../../controls/Segmented.tsx';
import { useShow } from '../../../show.ts';
import { useStudyActions } from '../useStudy.ts';
import { RouteScatter } from './RouteScatter.tsx';
import {
  answerWords,
  conflictWords,
  keyOf,
  type Measure,
  type Traded,
  tradedOf,
  tradeWords,
  valueWords,
  verdictWords,
  wayWords,
} from './routeWords.ts';

interface RouteFrontProps {
  readonly route: RouteState;
  /** The numbers that are chosen; null for one that the railway has no more. */
  readonly knobs: readonly (Knob | null)[];
}

type Pair = 'room margin' | 'grade margin' | 'grade room';

/** What can be traded: two of grade, room and margin against each other, and whatever is pressed in all three. */
export function RouteFront({ route, knobs }: RouteFrontProps) {
  const show = useShow();
  const [pair, setPair] = useState<Pair>('room margin');
  const [chosen, setChosen] = useState<string | null>(null);
  const { routes, answer } = route;
  const all = tradedOf(route);
  const [x, y] = pair.split(' ') as [Measure, Measure];
  const single = route.question.aim !== 'front';
  // The one answer of a single aim is read without being pressed.
  const picked = all.find((one) => (single ? one.kind === 'unbeaten' : keyOf(one) === chosen)) ?? null;
  const now = all.find(({ kind }) => kind === 'now');
  const conflicts = answer?.present?.conflicts ?? [];
  return (
    <>
      <p className="conclusion" role="status">
        {answer === null ? `${routes.length} so far, by even running` : answerWords(route, answer, show)}
      </p>
      {answer !== null && routes.length === 0 && <p className="quiet about">{wayWords(answer)}</p>}
      {conflicts.length > 0 && (
        <p className="quiet about">
          As it is now it {conflicts.map((conflict) => conflictWords(conflict, show)).join('; it ')}.
        </p>
      )}
      {routes.length > 0 && !single && (
        <>
          <Segmented
            label="Against each other"
            choices={[
              { value: 'room margin', label: 'Room, margin' },
              { value: 'grade margin', label: 'Grade, margin' },
              { value: 'grade room', label: 'Grade, room' },
            ]}
            value={pair}
            onChange={setPair}
            wide
          />
          <RouteScatter
            all={all}
            x={x}
            y={y}
            chosen={chosen}
            nameOf={(one) =>
              `${one.kind === 'now' ? 'as it is now' : valueWords(one.values, knobs)}${one.kind === 'beaten' ? ', beaten' : ''}: ${tradeWords(one, show)}`
            }
            onChoose={(one) => setChosen(keyOf(one))}
          />
        </>
      )}
      {single && picked !== null && now !== undefined && (
        <p className="quiet about">As it is now: {tradeWords(now, show)}.</p>
      )}
      {picked !== null && <Picked one={picked} name={valueWords(picked.values, knobs)} />}
    </>
  );
}

function Picked({ one, name }: { readonly one: Traded; readonly name: string }) {
  const show = useShow();
  const actions = useStudyActions();
  const now = one.kind === 'now';
  return (
    <div className={one.agrees === false ? 'swept-value fails' : 'swept-value'}>
      <b>{now ? 'As it is now' : name}</b>: {tradeWords(one, show)}. {verdictWords(one)}
      {!now && (
        <span className="acts">
          <button type="button" className="link" onClick={() => void actions.keepRoute(one.values, name)}>
            Keep as a variant
          </button>
          <button type="button" className="link" onClick={() => void actions.keepRoute(one.values, name, true)}>
            Try beside
          </button>
        </span>
      )}
    </div>
  );
}
