import type { SceneInstrument } from '../../scene/index.ts';
import type { SurveyActions } from './actions.ts';
import { changeSurvey, type SurveyDesk } from './desk.ts';
import { newReading, readTyped } from './readings.ts';
import { removeReading, setTool } from './recording.ts';
import { withInstrument } from './tools.ts';
import type { ReadingKind, Tool } from './types.ts';

/** Readings taken one after another at the track. */
export function walkingActions(
  desk: SurveyDesk,
): Pick<SurveyActions, 'startWalk' | 'setWalk' | 'endWalk' | 'enter' | 'takeBack' | 'takeNext'> {
  const { survey, session, history, document } = desk;
  const startWalk = (kind: ReadingKind, support?: number) => {
    const found = support === undefined ? 0 : desk.stops(kind).findIndex((place) => place.beside.includes(support));
    survey.setState({ part: 'read', walk: { kind, stop: Math.max(0, found), stride: 1, turned: false, taken: [] } });
  };
  return {
    startWalk,
    setWalk(change) {
      survey.setState(({ walk }) => {
        if (walk === null) return {};
        const last = desk.stops(walk.kind).length - 1;
        const next = { ...walk, ...change };
        return { walk: { ...next, stop: Math.min(Math.max(0, next.stop), Math.max(0, last)) } };
      });
    },
    endWalk: () => survey.setState({ walk: null }),
    enter(text) {
      const { walk, tools } = survey.getState();
      if (walk === null) return noPlace;
      const read = readTyped(walk.kind, tools[walk.kind].unit, session.getState().lengthUnit, text);
      return read.ok ? takeReading(desk, read.value, read.read) : read.message;
    },
    takeBack() {
      const last = survey.getState().walk?.taken.at(-1);
      const own = desk.chosenSurvey();
      if (!last || own === null) return;
      if (history.getState().past.at(-1)?.label === readingLabel(last.words)) void document.undo();
      else removeReading(desk, own.readings.length - 1);
    },
    takeNext() {
      const next = survey.getState().worked?.survey.next;
      if (!next) return;
      if (next.kind === 'grade')
        setTool(desk, 'grade', { places: 'supports', baseMm: Math.round(next.base * 1e4) / 10 });
      startWalk(next.kind, next.support);
    },
  };
}

const noPlace = 'There is no place to take a reading at.';

const readingLabel = (words: string): string => `the reading ${words}`;

/** An instrument of its own that a reading was taken with, instead of the usual one of its kind. */
export interface OtherInstrument {
  readonly instrument: SceneInstrument;
  readonly tool: Tool;
}

/** Takes a reading (a grade, or m) at the place of the walk and goes on to the next; null, or why not. */
export function takeReading(desk: SurveyDesk, value: number, words: string, other?: OtherInstrument): string | null {
  const { walk, tools } = desk.survey.getState();
  const stopHere = walk === null ? undefined : desk.stops(walk.kind)[walk.stop];
  if (walk === null || stopHere === undefined) return noPlace;
  const { kind, turned, stride, taken } = walk;
  const reading = newReading(kind, other?.tool ?? tools[kind], stopHere, value, turned);
  const refused = changeSurvey(desk, readingLabel(words), (own) => {
    // Readings that name no instrument go with the first of their kind: that stays the person's own.
    const set = withInstrument(own, kind, tools[kind]);
    if (other === undefined) return { ...set, readings: [...set.readings, reading] };
    const { instrument } = other;
    const instruments = set.instruments ?? [];
    const known = instruments.some(({ id }) => id === instrument.id);
    return {
      ...set,
      instruments: known ? instruments : [...instruments, instrument],
      readings: [...set.readings, { ...reading, instrument: instrument.id }],
    };
  });
  if (refused !== null) return refused;
  const stop = Math.min(walk.stop + stride, desk.stops(kind).length - 1);
  desk.survey.setState({ walk: { ...walk, stop, taken: [...taken, { stop: walk.stop, words }] } });
  return null;
}
