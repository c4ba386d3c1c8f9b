import { parseReadings } from '../../core/survey/index.ts';
import type { SceneReading } from '../../scene/index.ts';
import type { SurveyActions } from './actions.ts';
import { beginSurvey } from './choosing.ts';
import { changeSurvey, type SurveyDesk, surveyChapter } from './desk.ts';
import { withoutReading, withSurvey, withTable } from './edits.ts';
import { readTyped, sceneCross, sceneReading, unitOf, withValue } from './readings.ts';
import { toolsOf, withInstrument } from './tools.ts';
import type { ReadingKind, Tool } from './types.ts';

/** What was written down: instruments, single readings put right, and whole tables. */
export function recordingActions(
  desk: SurveyDesk,
): Pick<
  SurveyActions,
  'setTool' | 'setReading' | 'removeReading' | 'readTable' | 'setTable' | 'dropTable' | 'takeTable'
> {
  const { survey, session, document } = desk;
  return {
    setTool: (kind, change) => setTool(desk, kind, change),
    setReading(index, text) {
      const own = desk.chosenSurvey();
      const reading = own?.readings[index];
      if (!own || !reading) return 'That reading is not there any more.';
      const read = readTyped(reading.kind, unitOf(reading), session.getState().lengthUnit, text);
      if (!read.ok) return read.message;
      return document.attempt(`reading ${index + 1}`, (now) =>
        withSurvey(now, own.id, (one) => ({
          ...one,
          readings: one.readings.with(index, withValue(reading, read.value)),
        })),
      );
    },
    removeReading: (index) => removeReading(desk, index),
    readTable: parseReadings,
    setTable: (table) => survey.setState({ table }),
    dropTable(text) {
      document.setChapter(surveyChapter);
      const { chosen, draft } = survey.getState();
      if (chosen === null && draft === null) beginSurvey(desk, 'First survey');
      survey.setState({ part: 'read', walk: null, table: text });
    },
    takeTable() {
      const { readings, crosses, instruments } = parseReadings(survey.getState().table);
      if (readings.length + crosses.length === 0) return 'There is no reading in it that can be taken.';
      const taken: SceneReading[] = [...readings.map(sceneReading), ...crosses.map(sceneCross)];
      const refused = changeSurvey(desk, `${taken.length} readings`, (own) => withTable(own, taken, instruments));
      const own = desk.chosenSurvey();
      if (refused === null && own !== null) survey.setState({ tools: toolsOf(own), table: '' });
      return refused;
    },
  };
}

/** Sets an instrument up; what the survey says of its errors goes with it. */
export function setTool(desk: SurveyDesk, kind: ReadingKind, change: Partial<Tool>): void {
  const { survey, document } = desk;
  const tool = { ...survey.getState().tools[kind], ...change };
  survey.setState(({ tools }) => ({ tools: { ...tools, [kind]: tool } }));
  const own = desk.chosenSurvey();
  const says = 'step' in change || 'error' in change || 'unit' in change;
  if (own === null || !says || !own.readings.some((reading) => reading.kind === kind)) return;
  document.attempt('what an instrument shows', (now) =>
    withSurvey(now, own.id, (one) => withInstrument(one, kind, tool)),
  );
}

export function removeReading(desk: SurveyDesk, index: number): void {
  const own = desk.chosenSurvey();
  if (own !== null) desk.document.attempt('taking a reading out', (now) => withoutReading(now, own.id, index));
}
