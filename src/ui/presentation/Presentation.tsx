import { useEffect } from 'react';
import { nextStop, presentTour, previousStop, togglePlay } from '../../state/commands/index.ts';
import { stopOnShow } from '../../state/show/index.ts';
import { useDesk, useSession } from '../context.tsx';
import { CommandButton } from '../controls/CommandButton.tsx';
import { GuessSwitch } from './GuessSwitch.tsx';
import { PlayWords } from './PlayWords.tsx';
import { SectionStrip } from './SectionStrip.tsx';
import { StopVerdict } from './StopVerdict.tsx';
import './presentation.css';

/** Before an audience: what the stop on show says, large, under a stage that fills the window. */
export function Presentation() {
  const presenting = useSession((state) => state.tour.presenting);
  return presenting ? <Caption /> : null;
}

/** Plain words in which a line never ends between a number and a short unit behind it. */
const keptTogether = (words: string): string =>
  words.replace(/(\d) (?=(?:mm|cm|m|in|ft|s|g|kg|N|%|°)(?![\p{L}\d]))/gu, '$1\u00a0');

function Caption() {
  const { session } = useDesk();
  const scene = useSession((state) => state.scene);
  const tour = useSession((state) => state.tour);
  // The button that was pressed is hidden now: the focus goes back to it when all is over.
  useEffect(() => {
    const before = document.activeElement;
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  const on = stopOnShow(session.getState());
  const count = scene?.tour?.length ?? 0;
  return (
    <section className="presentation" aria-label="Presentation">
      <div className="presented" aria-live="polite">
        {/* A title breaks between words only. */}
        <h2>{on?.stop.title.replaceAll('-', '\u2011') ?? ''}</h2>
        {on?.stop.words !== undefined && <p>{keptTogether(on.stop.words)}</p>}
      </div>
      {on !== null && <StopVerdict stop={on.stop} told={tour.told} />}
      <div className="presenting">
        <span className="at-stop">
          {on === null ? '' : on.index + 1} of {count}
        </span>
        <SectionStrip />
        <CommandButton command={previousStop} wordsInside>
          Back
        </CommandButton>
        <CommandButton command={togglePlay} wordsInside>
          <PlayWords />
        </CommandButton>
        <CommandButton command={nextStop} wordsInside>
          On
        </CommandButton>
        <GuessSwitch />
        <CommandButton command={presentTour} wordsInside>
          Leave
        </CommandButton>
      </div>
    </section>
  );
}
