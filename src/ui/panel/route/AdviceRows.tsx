import { useDeferredValue, useMemo, useState } from 'react';
import { adviceWords } from '../../../state/route/index.ts';
import { type Advice, advised, draftAdvice } from '../../../state/routeEdits/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk, useRoute } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { useShow } from '../../show.ts';
import { useRested } from './useRested.ts';
import './advice.css';

/** So many of the gravest are told before the rest is asked for. */
const few = 3;

/** How much an advice weighs, in words: never by colour alone. */
const weightWords = { wrong: 'will not do', near: 'comes near', note: 'good to know' } as const;

/** What the drawing itself tells before a train runs: each with its place, why it matters, and an edit that answers it. */
export function AdviceRows({ scene: newest }: { readonly scene: Scene }) {
  // Told when the hand rests: while it moves only the verdict counts, and the page's time is the drawing's.
  const scene = useRested(useDeferredValue(newest));
  const advice = useMemo(() => draftAdvice(scene), [scene]);
  const [all, setAll] = useState(false);
  const grave = advice.filter(({ weight }) => weight !== 'note');
  const shown = all ? advice : grave.slice(0, few);
  const rest = advice.length - Math.min(grave.length, few);
  return (
    <>
      <h3 id="advice-rows">From the drawing</h3>
      {advice.length === 0 && <p className="quiet">Nothing to say about this line yet.</p>}
      {advice.length > 0 && grave.length === 0 && !all && (
        <p className="quiet">Nothing stands in the way of your trains.</p>
      )}
      <ul className="advice" aria-labelledby="advice-rows">
        {shown.map((one) => (
          <AdviceRow key={`${one.kind} ${one.trackId} ${one.chainage}`} advice={one} scene={scene} />
        ))}
      </ul>
      {rest > 0 && (
        <button type="button" className="link" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Only the gravest' : `${rest} more`}
        </button>
      )}
    </>
  );
}

function AdviceRow({ advice, scene }: { readonly advice: Advice; readonly scene: Scene }) {
  const { actions, route } = useDesk();
  const show = useShow();
  const { trackId, chainage, edit, weight } = advice;
  const pointed = useRoute((state) => state.pointed?.trackId === trackId && state.pointed.chainage === chainage);
  const { what, where, why, answer } = adviceWords(advice, scene, show);
  return (
    <li data-advice={advice.kind} data-weight={weight}>
      <button
        type="button"
        className="row-head"
        aria-pressed={pointed}
        onClick={() => route.actions.pointOut(pointed ? null : { trackId, chainage })}
      >
        <b>{what}</b>
        <small className="place">{where}</small>
      </button>
      <p>
        <span className="weight">{weightWords[weight]}</span> {why}
      </p>
      {edit !== null && answer !== null && (
        <Refusable
          acts={[
            {
              words: answer,
              act: () =>
                actions.attempt(answer.charAt(0).toLowerCase() + answer.slice(1), (now) => advised(now, trackId, edit)),
            },
          ]}
        />
      )}
    </li>
  );
}
