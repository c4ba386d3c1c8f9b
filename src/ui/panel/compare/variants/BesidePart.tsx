import { useDesk, useSession } from '../../../context.tsx';
import { Segmented } from '../../../controls/Segmented.tsx';
import { useStudy, useStudyActions } from '../useStudy.ts';

/** How the railway and a variant share the stage. */
export function BesidePart() {
  const asked = useStudy((state) => state.beside);
  const name = useSession((state) => state.beside?.name ?? '');
  const { view, match, flipped } = useSession((state) => state.besideLook);
  const { lookBeside, hideBeside } = useStudyActions();
  const { actions: session } = useDesk();
  if (asked === null) return null;
  if (asked.progress !== null) {
    return (
      <div className="study-progress">
        <progress className="progress-line" value={asked.progress} max={1} aria-label="The variant’s own run" />
        <button type="button" className="link" onClick={hideBeside}>
          Stop
        </button>
      </div>
    );
  }
  return (
    <fieldset className="beside" aria-label={`${name} beside the railway`}>
      <p className="beside-key">
        <svg viewBox="0 0 26 8" aria-hidden="true">
          <line x1="0" x2="26" y1="4" y2="4" />
        </svg>
        this railway
        <svg viewBox="0 0 26 8" className="other" aria-hidden="true">
          <line x1="0" x2="26" y1="4" y2="4" />
        </svg>
        {name}
      </p>
      <Segmented
        label="On the stage"
        choices={[
          { value: 'ghost', label: 'One over the other' },
          { value: 'split', label: 'Divided' },
          { value: 'flip', label: 'In turn' },
        ]}
        value={view}
        onChange={(next) => lookBeside({ view: next, flipped: false })}
        wide
      />
      <Segmented
        label="Where its train stands"
        choices={[
          { value: 'moment', label: 'Same moment' },
          { value: 'place', label: 'Same place' },
        ]}
        value={match}
        onChange={(next) => lookBeside({ match: next })}
        wide
      />
      <button type="button" className="link" onClick={() => session.seekToFinding(0)}>
        Go to the closest call
      </button>
      {view === 'flip' && (
        <button type="button" className="study-button" onClick={() => lookBeside({ flipped: !flipped })}>
          {flipped ? 'Show this railway' : `Show ${name}`} <kbd>V</kbd>
        </button>
      )}
      {view === 'split' && <p className="quiet about">Drag the line on the stage, or move it with the arrow keys.</p>}
      {view === 'flip' && (
        <p className="quiet about">Press V to change over; hold it to look and let go to come back.</p>
      )}
    </fieldset>
  );
}
