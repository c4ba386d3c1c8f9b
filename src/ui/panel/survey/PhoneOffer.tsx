import type { TiltTrouble } from '../../../state/survey/index.ts';
import { useSurvey, useSurveyActions } from './useSurvey.ts';

const troubleWords: Readonly<Record<TiltTrouble, string>> = {
  insecure:
    'The browser tells the tilt only to a page that came over https or from this very machine. Type what a level shows instead.',
  missing:
    'This machine tells no tilt: it has no sensor, or the browser keeps it shut. Type what a level shows instead.',
  refused:
    'The browser was not allowed to tell the tilt. Allow motion and orientation for this page in its settings, then try again.',
};

/** The way to the phone as the level, and why it is shut where it is. */
export function PhoneOffer() {
  const { state, trouble } = useSurvey(({ phone }) => phone);
  const actions = useSurveyActions();
  return (
    <div className="phone-offer">
      <button
        type="button"
        className="sheet-button"
        disabled={state === 'asking'}
        onClick={() => void actions.startPhone()}
      >
        {state === 'asking' ? 'Looking for the tilt sensor …' : 'This phone is the level'}
      </button>
      {trouble !== null && (
        <p className="walk-said" role="alert">
          {troubleWords[trouble]}
        </p>
      )}
    </div>
  );
}
