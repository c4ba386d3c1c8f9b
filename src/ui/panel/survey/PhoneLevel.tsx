import { formatGrade, parseLength } from '../../../core/units/index.ts';
import { type PhoneTask, phoneGrade, type Stop } from '../../../state/survey/index.ts';
import { TypedField } from '../../controls/TypedField.tsx';
import { useSurvey, useSurveyActions } from './useSurvey.ts';
import { capital, stopWords } from './words.ts';

/** The phone lies on the track and is read when it lies still; before the first reading it is calibrated. */
export function PhoneLevel({ stops }: { readonly stops: readonly Stop[] }) {
  const walk = useSurvey((state) => state.walk);
  const phone = useSurvey((state) => state.phone);
  const across = walk?.kind === 'cross';
  const unit = useSurvey((state) => state.tools[across ? 'cross' : 'grade'].unit);
  const actions = useSurveyActions();
  if (walk === null) return null;
  const { steady, calibration, firstFace, waits, baseMm, said } = phone;
  const after = stops[walk.stop + walk.stride];
  const last = walk.taken.at(-1);
  const figure = (grade: number) => formatGrade(grade, { form: unit, digits: 2 });
  const task: PhoneTask = calibration !== null ? 'reading' : firstFace === null ? 'first-face' : 'second-face';
  return (
    <div className="phone">
      <output
        className="phone-figure"
        aria-live="off"
        aria-label={across ? 'Cross-level by the phone' : 'Grade by the phone'}
      >
        {steady === null ? '–' : figure(phoneGrade(steady.mean, phone, walk.turned))}
      </output>
      <p className={steady?.still ? 'phone-steady still' : 'phone-steady'}>
        {steady === null
          ? waits === null
            ? 'It stands too steep to be read: lay it down.'
            : 'Hands off …'
          : `${steady.still ? 'lies still' : 'moves'} · one look ± ${figure(steady.spread)}`}
      </p>
      {(task !== 'reading' || walk.taken.length === 0) && (
        <p className="phone-how">{task === 'reading' && across ? acrossWords : howWords[task]}</p>
      )}
      <button
        type="button"
        className="sheet-button enter"
        aria-busy={waits !== null}
        onClick={() => actions.readWhenStill(task)}
      >
        {waits !== null ? 'Hands off: read when still …' : takeWords[task](after)}
      </button>
      <p className={said === null ? 'walk-said' : 'walk-said wrong'} role={said === null ? 'status' : 'alert'}>
        {said ?? doneWords()}
      </p>
      {calibration !== null && !across && (
        <TypedField
          className="sheet-field"
          label="Length it lies on"
          value={String(baseMm)}
          unit="mm"
          onTake={(text) => {
            const read = parseLength(text);
            if (!read.ok) return read.message;
            if (read.value < 0.05 || read.value > 2) return 'From 50 mm to 2 m.';
            actions.setPhoneBase(Math.round(read.value * 1e4) / 10);
            return null;
          }}
        />
      )}
      <span className="acts">
        <button type="button" className="link" onClick={() => actions.endPhone()}>
          Type numbers instead
        </button>
        {(calibration ?? firstFace) !== null && (
          <button type="button" className="link" onClick={() => actions.calibrateAnew()}>
            Calibrate anew
          </button>
        )}
      </span>
    </div>
  );

  function doneWords(): string {
    if (last !== undefined && calibration !== null) return `${capital(stopWords(stops[last.stop]))}: ${last.words}`;
    if (calibration !== null)
      return `Calibrated: it shows ${figure(calibration.bias)} ± ${figure(calibration.deviation)} on the level; that is taken off.`;
    if (firstFace !== null) return `First face: ${figure(firstFace.grade)} ± ${figure(firstFace.deviation)}`;
    return '';
  }
}

const howWords: Readonly<Record<PhoneTask, string>> = {
  'first-face':
    'Calibrate it first. Lay it on its back on something firm that need not be level, and mark its outline.',
  'second-face': 'Now turn it end for end, into the same outline.',
  reading: 'Lay it along the rails on its back or its long side, top end towards the higher numbers.',
};

const acrossWords =
  'Lay it square across both rails, on its back or its long side, top end to the right as you look towards the higher numbers.';

const takeWords: Readonly<Record<PhoneTask, (after: Stop | undefined) => string>> = {
  'first-face': () => 'Read the first face',
  'second-face': () => 'Read the second face',
  reading: (after) => (after === undefined ? 'Read: the last place' : `Read, then ${stopWords(after)}`),
};
