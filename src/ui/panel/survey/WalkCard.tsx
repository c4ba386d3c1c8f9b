import { useEffect, useRef, useState } from 'react';
import { plannedHeight } from '../../../core/track/index.ts';
import { formatGrade } from '../../../core/units/index.ts';
import { placeWords } from '../../../state/index.ts';
import type { Stop } from '../../../state/survey/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { counted, useShow } from '../../show.ts';
import { useChosenSurvey, useSurvey, useSurveyActions } from './useSurvey.ts';
import { millimetres, stopWords, toolWords } from './words.ts';

/** Standing at the track with an instrument: one place, one number, Enter, the next place. */
export function WalkCard() {
  const { surveys } = useDesk();
  const walk = useSurvey((state) => state.walk);
  const tool = useSurvey((state) => (state.walk === null ? null : state.tools[state.walk.kind]));
  const draft = useSurvey((state) => state.draft);
  const survey = useChosenSurvey();
  const track = useSession((state) => state.compiled?.tracks.get(survey?.track ?? draft?.trackId ?? ''));
  const lengthUnit = useSession((state) => state.lengthUnit);
  const show = useShow();
  const actions = useSurveyActions();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [message, setMessage] = useState('');
  const stop = walk?.stop;
  useEffect(() => {
    if (stop !== undefined) field.current?.focus();
  }, [stop]);
  if (walk === null || tool === null || track === undefined) return null;
  const stops = surveys.stops(walk.kind);
  const here = stops[walk.stop];
  if (here === undefined) return null;
  const last = walk.taken.at(-1);
  const over = walk.taken.length > 0 && last?.stop === walk.stop;
  const after = stops[walk.stop + walk.stride];
  const unit = walk.kind === 'grade' ? (tool.unit === 'degree' ? '°' : '%') : lengthUnit;
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
    <div className="walk">
      <div className="walk-head">
        <span className="quiet">
          {toolWords[walk.kind].tool} · place {walk.stop + 1} of {stops.length}
        </span>
        <button type="button" className="link" onClick={() => actions.endWalk()}>
          Done
        </button>
      </div>
      <h2 aria-live="polite">{capital(stopWords(here))}</h2>
      <p className="walk-place">
        {placeWords(here.chainage, show)} · plan {planWords(here)}
      </p>
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
              if (event.ctrlKey || event.metaKey) return;
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
        <button type="submit" className="survey-button enter">
          {after === undefined ? 'Enter: the last place' : `Enter, then ${stopWords(after)}`}
        </button>
      </form>
      <div className="walk-acts">
        <button
          type="button"
          onClick={() => actions.setWalk({ stop: walk.stop - walk.stride })}
          disabled={walk.stop === 0}
        >
          Back
        </button>
        <button
          type="button"
          onClick={() => actions.setWalk({ stop: walk.stop + walk.stride })}
          disabled={after === undefined}
        >
          Skip
        </button>
        <button type="button" onClick={() => actions.takeBack()} disabled={last === undefined}>
          Undo reading
        </button>
      </div>
      <Segmented
        label="Places"
        choices={[
          { value: '1', label: 'every place' },
          { value: '2', label: 'every second' },
        ]}
        value={String(walk.stride) as '1' | '2'}
        onChange={(stride) => actions.setWalk({ stride: Number(stride) })}
        wide
      />
      {walk.kind === 'grade' && (
        <label className="walk-turned">
          <input
            type="checkbox"
            checked={walk.turned}
            onChange={(event) => actions.setWalk({ turned: event.target.checked })}
          />
          Level turned end for end (second face): write the grade in the direction of the track all the same
        </label>
      )}
      <p className="quiet" role="status">
        {over && 'That was the last place. '}
        {counted(walk.taken.length, 'reading')} on this walk, {counted(survey?.readings.length ?? 0, 'reading')} in all
      </p>
    </div>
  );

  function planWords({ chainage, beside }: Stop): string {
    if (track === undefined || walk === null || tool === null) return '';
    if (walk.kind === 'gap') return '0';
    if (walk.kind === 'height') return millimetres(plannedHeight(track, chainage), show, 1);
    const supports = track.spec.profile.strip?.supports ?? [];
    if (walk.kind === 'rise') {
      const [low, high] = beside.map((support) => plannedHeight(track, supports[support].chainage));
      return millimetres(high - low - tool.boardMm / 1000, show, 1);
    }
    const half = tool.baseMm / 2000;
    const grade = (plannedHeight(track, chainage + half) - plannedHeight(track, chainage - half)) / (2 * half);
    return formatGrade(grade, { form: tool.unit, digits: 2 });
  }
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
