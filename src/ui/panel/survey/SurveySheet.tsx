import type { ComponentType } from 'react';
import { type SurveyPart, surveyChapter } from '../../../state/survey/index.ts';
import { useSession } from '../../context.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { FindPart } from './FindPart.tsx';
import { MendPart } from './MendPart.tsx';
import { ReadPart } from './ReadPart.tsx';
import { SurveyPicker } from './SurveyPicker.tsx';
import { TrainsPart } from './TrainsPart.tsx';
import { useSurvey, useSurveyActions } from './useSurvey.ts';
import { WalkCard } from './WalkCard.tsx';
import './survey.css';
import './tables.css';

const parts: readonly { readonly value: SurveyPart; readonly label: string }[] = [
  { value: 'read', label: 'Readings' },
  { value: 'find', label: 'Heights' },
  { value: 'mend', label: 'Mend' },
  { value: 'trains', label: 'Trains' },
];

const sheets: Readonly<Record<SurveyPart, ComponentType>> = {
  read: ReadPart,
  find: FindPart,
  mend: MendPart,
  trains: TrainsPart,
};

/** From readings taken at the track to the nuts that want turning, and to what trains make of it. */
export function SurveySheet() {
  const part = useSurvey((state) => state.part);
  const walking = useSurvey((state) => state.walk !== null);
  const any = useSurvey((state) => state.chosen !== null || state.draft !== null);
  const problem = useSurvey((state) => state.problem);
  const chapter = useSession((state) => state.chapter);
  const actions = useSurveyActions();
  const Part = sheets[part];
  if (chapter === surveyChapter && walking) {
    return (
      <section className="survey" aria-label="Survey">
        <WalkCard />
      </section>
    );
  }
  return (
    <section className="survey" aria-label="Survey">
      <SurveyPicker />
      {any && (
        <>
          <Segmented label="Part of the job" choices={parts} value={part} onChange={actions.setPart} wide />
          <Part />
        </>
      )}
      {problem !== null && (
        <p className="said wrong" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}
