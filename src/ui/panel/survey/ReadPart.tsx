import { useState } from 'react';
import { type ReadingKind, readingKinds } from '../../../state/survey/index.ts';
import { useDesk } from '../../context.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import { TableBox } from './TableBox.tsx';
import { ToolFields } from './ToolFields.tsx';
import { useChosenSurvey, useSurvey, useSurveyActions } from './useSurvey.ts';
import { stopWords, toolWords } from './words.ts';

const short: Readonly<Record<ReadingKind, string>> = {
  grade: 'Level',
  height: 'Height',
  rise: 'Spacer',
  gap: 'Edge',
  cross: 'Across',
};

/** Taking readings: with what, one after another or from a table, and all that were taken. */
export function ReadPart() {
  const survey = useChosenSurvey();
  const actions = useSurveyActions();
  const { surveys } = useDesk();
  const [kind, setKind] = useState<ReadingKind>(survey?.readings.at(-1)?.kind ?? 'grade');
  // The places depend on how the instrument is set up.
  useSurvey((state) => state.tools[kind]);
  const stops = surveys.stops(kind);
  return (
    <>
      <h3>Instrument in hand</h3>
      <Segmented
        label="Instrument in hand"
        choices={readingKinds.map((value) => ({ value, label: short[value], spoken: toolWords[value].tool }))}
        value={kind}
        onChange={setKind}
        wide
      />
      <ToolFields key={kind} kind={kind} />
      {stops.length === 0 ? (
        <p className="quiet">There is no place on this track where it can stand so.</p>
      ) : (
        <button type="button" className="sheet-button" onClick={() => actions.startWalk(kind)}>
          Stand at the track: {stops.length} places from {stopWords(stops[0])}
        </button>
      )}
      <TableBox />
      {survey !== null && <ReadingTable survey={survey} />}
    </>
  );
}
