import { plannedHeight, trackPoint } from '../../../core/track/index.ts';
import { formatGrade } from '../../../core/units/index.ts';
import { placeWords } from '../../../state/index.ts';
import { isByLevel, type Stop, supportsOf } from '../../../state/survey/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { counted, useShow } from '../../show.ts';
import { PhoneLevel } from './PhoneLevel.tsx';
import { TypedReading } from './TypedReading.tsx';
import { useChosenSurvey, useSurvey, useSurveyActions } from './useSurvey.ts';
import { capital, millimetres, stopWords, toolWords } from './words.ts';
import './walk.css';

/** Standing at the track with an instrument: one place, one number, the next place. */
export function WalkCard() {
  const { surveys } = useDesk();
  const walk = useSurvey((state) => state.walk);
  const tool = useSurvey((state) => (state.walk === null ? null : state.tools[state.walk.kind]));
  const draft = useSurvey((state) => state.draft);
  const byPhone = useSurvey((state) => state.walk !== null && isByLevel(state.walk.kind) && state.phone.state === 'on');
  const survey = useChosenSurvey();
  const track = useSession((state) => state.compiled?.tracks.get(survey?.track ?? draft?.trackId ?? ''));
  const show = useShow();
  const actions = useSurveyActions();
  if (walk === null || tool === null || track === undefined) return null;
  const stops = surveys.stops(walk.kind);
  const here = stops[walk.stop];
  if (here === undefined) return null;
  const last = walk.taken.at(-1);
  const over = walk.taken.length > 0 && last?.stop === walk.stop;
  const after = stops[walk.stop + walk.stride];
  return (
    <div className="walk">
      <div className="walk-head">
        <span className="quiet">
          {byPhone ? 'This phone' : toolWords[walk.kind].tool} · place {walk.stop + 1} of {stops.length}
        </span>
        <button type="button" className="link" onClick={() => actions.endWalk()}>
          Done
        </button>
      </div>
      <h2 aria-live="polite">{capital(stopWords(here))}</h2>
      <p className="walk-place">
        {placeWords(here.chainage, show)} · plan {planWords(here)}
      </p>
      {byPhone ? <PhoneLevel stops={stops} /> : <TypedReading stops={stops} />}
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
      {(walk.kind === 'grade' || (walk.kind === 'cross' && byPhone)) && (
        <label className="walk-turned">
          <input
            type="checkbox"
            checked={walk.turned}
            onChange={(event) => actions.setWalk({ turned: event.target.checked })}
          />
          {byPhone
            ? walk.kind === 'cross'
              ? 'Top end towards the left rail'
              : 'Top end towards the lower numbers'
            : 'Level turned end for end (second face): write the grade in the direction of the track all the same'}
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
    if (walk.kind === 'cross') {
      return formatGrade(Math.tan(trackPoint(track, chainage).cant), { form: tool.unit, digits: 2 });
    }
    if (walk.kind === 'height') return millimetres(plannedHeight(track, chainage), show, 1);
    if (walk.kind === 'rise') {
      const rails = supportsOf(track).filter(({ number }) => beside.includes(number));
      const [low, high] = rails.map(({ chainage: at }) => plannedHeight(track, at));
      return millimetres(high - low - tool.boardMm / 1000, show, 1);
    }
    const half = tool.baseMm / 2000;
    const grade = (plannedHeight(track, chainage + half) - plannedHeight(track, chainage - half)) / (2 * half);
    return formatGrade(grade, { form: tool.unit, digits: 2 });
  }
}
