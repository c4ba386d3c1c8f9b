import { addView, presentTour, proposeTour, runTour } from '../../../../state/commands/index.ts';
import { useDesk, useSession } from '../../../context.tsx';
import { CommandButton } from '../../../controls/CommandButton.tsx';
import { Refusable } from '../../../controls/Refusable.tsx';
import { Segmented } from '../../../controls/Segmented.tsx';
import { StopRow } from './StopRow.tsx';
import './tour.css';

/** The tour of the railway: its stops, how it is shown, and a first one to begin with. */
export function TourPart() {
  const scene = useSession((state) => state.scene);
  if (scene === null) return null;
  const stops = scene.tour ?? [];
  return (
    <>
      <h3 id="show-tour">Tour</h3>
      {stops.length === 0 ? (
        <NoTour />
      ) : (
        <div className="edit-sheet tour-part">
          <TourButtons />
          <ol className="tour-stops" aria-labelledby="show-tour">
            {stops.map((stop, index) => (
              <StopRow key={stop.id} scene={scene} stop={stop} index={index} />
            ))}
          </ol>
          <AddRow />
        </div>
      )}
    </>
  );
}

/** Where there is no tour yet: one that follows from the trial on show, or a first view. */
function NoTour() {
  // A trial that comes to its end makes a tour possible.
  useSession((state) => state.result);
  return (
    <>
      <p className="quiet">
        Views of the railway one after the other, each with its moment and a few words, for people who stand before a
        screen.
      </p>
      <CommandButton command={proposeTour} className="sheet-button first" wordsInside>
        Propose a tour
      </CommandButton>
      <p className="quiet">The whole railway, the worst places in order, the tightest headroom, the end of the run.</p>
      <CommandButton command={addView} className="sheet-button" wordsInside>
        Begin with this view
      </CommandButton>
    </>
  );
}

/** The ways to show it. */
function TourButtons() {
  const { actions } = useDesk();
  const running = useSession((state) => state.tour.running);
  const guessFirst = useSession((state) => state.tour.guessFirst);
  return (
    <>
      <div className="tour-buttons">
        <CommandButton command={presentTour} className="sheet-button first" wordsInside>
          Before an audience
        </CommandButton>
        <CommandButton command={runTour} className="sheet-button" wordsInside>
          {running ? 'Hold' : 'Run through'}
        </CommandButton>
      </div>
      <div className="tour-verdicts">
        <span aria-hidden="true">Verdicts</span>
        <Segmented
          label="Verdicts"
          value={guessFirst ? 'guess' : 'once'}
          onChange={(value) => actions.setGuessFirst(value === 'guess')}
          choices={[
            { value: 'once', label: 'At once' },
            { value: 'guess', label: 'Guess first', spoken: 'Once the audience has guessed' },
          ]}
        />
      </div>
    </>
  );
}

function AddRow() {
  const { actions } = useDesk();
  return (
    <div className="add-row">
      <span>Add</span>
      <Refusable acts={[{ words: 'This view', spoken: 'Add this view to the tour', act: () => actions.addView() }]} />
    </div>
  );
}
