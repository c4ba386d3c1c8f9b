import { useEffect, useRef, useState } from 'react';
import { isByLevel, type Stop } from '../../../state/survey/index.ts';
import { useSession } from '../../context.tsx';
import { isCommandChord } from '../../controls/fieldKeys.ts';
import { PhoneOffer } from './PhoneOffer.tsx';
import { useSurvey, useSurveyActions } from './useSurvey.ts';
import { capital, stopWords, toolWords } from './words.ts';

/** The number that the instrument shows: typed, Enter, the next place. */
export function TypedReading({ stops }: { readonly stops: readonly Stop[] }) {
  const walk = useSurvey((state) => state.walk);
  const tool = useSurvey((state) => (state.walk === null ? null : state.tools[state.walk.kind]));
  const lengthUnit = useSession((state) => state.lengthUnit);
  const actions = useSurveyActions();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [message, setMessage] = useState('');
  const stop = walk?.stop;
  useEffect(() => {
    if (stop !== undefined) field.current?.focus();
  }, [stop]);
  if (walk === null || tool === null) return null;
  const here = stops[walk.stop];
  const after = stops[walk.stop + walk.stride];
  const last = walk.taken.at(-1);
  const unit = isByLevel(walk.kind) ? (tool.unit === 'degree' ? '°' : '%') : lengthUnit;
  const enter = () => {
    if (text.trim() === '') return;
    const refused = actions.enter(text);
    setMessage(refused ?? '');
    if (refused === null) setText('');
    else field.current?.select();
  };
  const turnSign = () => {
    setText(/^[-−]/.test(text) ? text.slice(1) : `-${text}`);
    field.current?.focus();
  };
  return (
    <>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          enter();
        }}
      >
        <div className="walk-line">
          <button type="button" className="sign" aria-label="Change the sign" onClick={turnSign}>
            ±
          </button>
          <input
            ref={field}
            type="text"
            inputMode="decimal"
            enterKeyHint="next"
            autoComplete="off"
            aria-label={`${capital(toolWords[walk.kind].reads)} at ${stopWords(here)}`}
            aria-invalid={message !== ''}
            aria-describedby="walk-said"
            value={text}
            onChange={(event) => setText(event.target.value)}
            onKeyDown={(event) => {
              if (isCommandChord(event)) return;
              event.stopPropagation();
              if (event.key === 'Escape') actions.endWalk();
              if (event.key === 'ArrowDown') actions.setWalk({ stop: walk.stop + walk.stride });
              if (event.key === 'ArrowUp') actions.setWalk({ stop: walk.stop - walk.stride });
            }}
          />
          <span className="unit">{unit}</span>
        </div>
        <p
          id="walk-said"
          className={message === '' ? 'walk-said' : 'walk-said wrong'}
          role={message === '' ? undefined : 'alert'}
        >
          {message === '' && last !== undefined
            ? `${capital(stopWords(stops[last.stop] ?? here))}: ${last.words}`
            : message}
        </p>
        <button type="submit" className="sheet-button enter">
          {after === undefined ? 'Enter: the last place' : `Enter, then ${stopWords(after)}`}
        </button>
      </form>
      {isByLevel(walk.kind) && <PhoneOffer />}
    </>
  );
}
