import { useStore } from 'zustand';
import { useDesk, useSession } from '../../../context.tsx';

/** The page to pass on: made of the railway as it is, looked at, saved. */
export function PagePart() {
  const { pages, actions } = useDesk().pages;
  const { loads, progress, made, problem } = useStore(pages);
  const scene = useSession((state) => state.scene);
  return (
    <section aria-labelledby="show-page">
      <h3 id="show-page">A page to pass on</h3>
      <p className="quiet">
        One file that opens anywhere, on paper too: the verdict, every train both ways, pulled and propelled, a card of
        each helix, the bad places numbered on plan and section, what keeps off, and what it all rests on.
      </p>
      <label className="show-check">
        <input type="checkbox" checked={loads} onChange={(event) => actions.setLoads(event.target.checked)} />
        With the greatest train of each engine
      </label>
      {progress === null ? (
        <button type="button" className="sheet-button first" onClick={() => void actions.make()}>
          {made === null ? 'Make the page' : 'Make it again'}
        </button>
      ) : (
        <div className="study-progress">
          <progress className="progress-line" value={progress} max={1} aria-label="Page" />
          <button type="button" className="link" onClick={actions.stop}>
            Stop
          </button>
        </div>
      )}
      {problem !== null && (
        <p className="said wrong" role="alert">
          {problem}
        </p>
      )}
      {made !== null && (
        <>
          <p className="quiet" aria-live="polite">
            {made.scene !== scene
              ? 'Made of the railway as it was before the last change.'
              : made.whole
                ? 'Ready.'
                : 'Ready, without the loads that were still to come.'}
          </p>
          <div className="sheet-pair">
            <button type="button" className="sheet-button" onClick={() => void actions.save()}>
              Save the page
            </button>
            <button type="button" className="sheet-button" onClick={actions.show}>
              Look at it
            </button>
          </div>
        </>
      )}
    </section>
  );
}
