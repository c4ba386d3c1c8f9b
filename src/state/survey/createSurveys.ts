// Over 300 lines for a reason: every action works on the one state and the one follower of the scene, and has no meaning apart.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { compareSurveys, parseReadings } from '../../core/survey/index.ts';
import type { Track } from '../../core/track/types.ts';
import type { Scene, SceneReading, SceneSurvey } from '../../scene/index.ts';
import type { ProbePool } from '../../sim/study/index.ts';
import { asBuiltScene, type SurveyHost } from '../../sim/survey/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import { freshId } from '../freshId.ts';
import type { Session } from '../session.ts';
import type { SurveyActions } from './actions.ts';
import { withoutReading, withoutSurvey, withSurvey, withTable } from './edits.ts';
import { estimateKey, mendKey } from './keys.ts';
import { newReading, readTyped, sceneReading, withValue } from './readings.ts';
import { type Stop, stopsOf, supportsToDeckAbove } from './stops.ts';
import { surveyedOf } from './surveyed.ts';
import { toolsOf, usualTools, withInstrument } from './tools.ts';
import { runTrains } from './trains.ts';
import type { Draft, ReadingKind, SurveyState } from './types.ts';

export interface Surveys {
  readonly survey: StoreApi<SurveyState>;
  readonly actions: SurveyActions;
  /** The survey on show as the scene has it; null for none. */
  chosenSurvey(): SceneSurvey | null;
  /** Places of the walk, or where one would begin. */
  stops(kind: ReadingKind): readonly Stop[];
}

/** Name of the chapter in which surveys are worked with. */
export const surveyChapter = 'survey';

const opening: SurveyState = {
  chosen: null,
  draft: null,
  part: 'read',
  tools: usualTools(),
  walk: null,
  table: '',
  worked: null,
  working: false,
  objective: 'fewest',
  mended: null,
  mending: false,
  trains: null,
  against: null,
  problem: null,
};

/** Nothing that was worked out from readings which are others now. */
const unworked = { mended: null, mending: false, trains: null, against: null, problem: null } as const;

/** Makes the surveys of a session; `host` works them out, `pool` runs the trains. */
export function createSurveys(
  { session, history, actions: document }: Session,
  host: SurveyHost,
  pool: ProbePool,
): Surveys {
  const survey = createStore<SurveyState>(() => opening);
  let busy: AbortController | null = null;
  /** What the estimate on show, and the mending on show, were worked out from. */
  let workedFrom = '';
  let mendedFrom = '';

  const scene = (): Scene | null => session.getState().scene;
  const chosenSurvey = (): SceneSurvey | null =>
    scene()?.surveys?.find(({ id }) => id === survey.getState().chosen) ?? null;
  const trackId = (): string | null => chosenSurvey()?.track ?? survey.getState().draft?.trackId ?? null;
  const track = (): Track | null => {
    const id = trackId();
    return id === null ? null : (session.getState().compiled?.tracks.get(id) ?? null);
  };
  const stops = (kind: ReadingKind): readonly Stop[] => {
    const on = track();
    return on === null ? [] : stopsOf(on, kind, survey.getState().tools[kind]);
  };
  const inChapter = (): boolean => session.getState().chapter === surveyChapter;

  function stop(): void {
    busy?.abort();
    busy = null;
    survey.setState(({ trains }) => ({ mending: false, trains: trains && { ...trains, progress: null } }));
  }

  function begun(): AbortController {
    stop();
    busy = new AbortController();
    survey.setState({ problem: null });
    return busy;
  }

  /** Works the survey on show out, unless that is done or under way; goes on until it is up to date. */
  async function workOut(): Promise<void> {
    const now = scene();
    const own = chosenSurvey();
    if (now === null || own === null || !inChapter()) return;
    const key = estimateKey(now, own);
    if (key === workedFrom || survey.getState().working) return;
    survey.setState({ working: true });
    try {
      const worked = await host.work({ scene: now, surveyId: own.id, objective: null });
      // Another survey may be on show by now.
      if (survey.getState().chosen === own.id) {
        workedFrom = key;
        survey.setState({ worked, problem: null });
      }
    } catch (error) {
      // A stopped mending ends the worker with all that it was asked: what is not up to date is asked again.
      if (!isAbort(error)) {
        workedFrom = key;
        survey.setState({ worked: null, problem: wordsOf(error) });
      }
    }
    survey.setState({ working: false });
    await workOut();
  }

  function show(): void {
    const walk = survey.getState().walk;
    const next = inChapter() ? surveyedOf(survey.getState(), trackId(), walk === null ? [] : stops(walk.kind)) : null;
    if (JSON.stringify(next) !== JSON.stringify(session.getState().surveyed)) session.setState({ surveyed: next });
  }

  /** A reading went: the walk stands where it was taken. */
  function stepBack(): void {
    survey.setState(({ walk }) => {
      const last = walk?.taken.at(-1);
      return walk && last ? { walk: { ...walk, stop: last.stop, taken: walk.taken.slice(0, -1) } } : {};
    });
  }

  function chosenState(own: SceneSurvey | null): Partial<SurveyState> {
    workedFrom = '';
    mendedFrom = '';
    const tools = own === null ? survey.getState().tools : toolsOf(own);
    return { ...unworked, chosen: own?.id ?? null, draft: null, walk: null, worked: null, tools };
  }

  function follow(now: ReturnType<typeof session.getState>, before: ReturnType<typeof session.getState> | null): void {
    if (now.scene !== before?.scene) {
      const state = survey.getState();
      if (now.opened !== before?.opened) survey.setState({ ...opening });
      const own = chosenSurvey();
      if (own === null) {
        if (state.chosen !== null) stop();
        if (state.draft === null || state.chosen !== null) survey.setState(chosenState(firstSurvey()));
      } else if (now.scene !== null) {
        if (mendKey(now.scene, own) !== mendedFrom && (state.mended !== null || state.mending)) {
          stop();
          survey.setState({ mended: null, trains: null });
        }
        if (estimateKey(now.scene, own) !== workedFrom) survey.setState({ against: null });
        const was = before?.scene?.surveys?.find(({ id }) => id === own.id);
        if (was !== undefined && own.readings.length < was.readings.length) stepBack();
      }
    }
    if (now.scene !== before?.scene || now.chapter !== before?.chapter) void workOut();
    show();
  }

  /** The first survey of the track on show, else the first there is. */
  function firstSurvey(): SceneSurvey | null {
    const surveys = scene()?.surveys ?? [];
    return surveys.find((one) => one.track === session.getState().trial?.trackId) ?? surveys[0] ?? null;
  }

  session.subscribe((now, before) => {
    if (now.surveyed === before.surveyed) follow(now, before);
  });
  survey.subscribe(show);
  follow(session.getState(), null);

  /** Adds readings taken with a tool; a draft becomes a survey with them. Null, or why not. */
  function add(label: string, change: (own: SceneSurvey) => SceneSurvey): string | null {
    const { draft, chosen } = survey.getState();
    if (chosen !== null) return document.attempt(label, (now) => withSurvey(now, chosen, change));
    if (draft === null) return 'There is no survey to put it into.';
    const taken = new Set((scene()?.surveys ?? []).map(({ id }) => id));
    const id = freshId(draft.name, taken, 'survey');
    const bare: SceneSurvey = { id, name: draft.name, track: draft.trackId, readings: [] };
    // Chosen before it is there, so that whoever looks at the new scene finds it; never there if it was refused.
    survey.setState({ chosen: id });
    const refused = document.attempt(label, (now) => ({ ...now, surveys: [...(now.surveys ?? []), change(bare)] }));
    survey.setState(refused === null ? { draft: null } : { chosen: null, draft });
    return refused;
  }

  const actions: SurveyActions = {
    choose(id) {
      stop();
      survey.setState(chosenState(scene()?.surveys?.find((one) => one.id === id) ?? null));
      void workOut();
    },
    setPart: (part) => survey.setState({ part, ...(part !== 'read' && { walk: null }) }),
    begin(name) {
      const on = usableTrack(session.getState());
      if (on === null) {
        survey.setState({ problem: 'No track here has two supports or more: give the route supports first.' });
        return;
      }
      stop();
      const draft: Draft = { name, trackId: on };
      survey.setState({ ...chosenState(null), draft, tools: usualTools(), part: 'read' });
      const under = track();
      if (under !== null) actions.setTool('rise', { further: supportsToDeckAbove(under) });
    },
    rename(name) {
      const { draft, chosen } = survey.getState();
      if (draft !== null) survey.setState({ draft: { ...draft, name } });
      else if (chosen !== null)
        document.attempt(`name “${name}”`, (now) => withSurvey(now, chosen, (one) => ({ ...one, name })));
    },
    remove: (id) => void document.attempt('taking a survey out', (now) => withoutSurvey(now, id)),
    setTool(kind, change) {
      const tool = { ...survey.getState().tools[kind], ...change };
      survey.setState(({ tools }) => ({ tools: { ...tools, [kind]: tool } }));
      const own = chosenSurvey();
      const says = 'step' in change || 'error' in change || 'unit' in change;
      if (own === null || !says || !own.readings.some((reading) => reading.kind === kind)) return;
      document.attempt('what an instrument shows', (now) =>
        withSurvey(now, own.id, (one) => withInstrument(one, kind, tool)),
      );
    },
    startWalk(kind, support) {
      const places = stops(kind);
      const found = support === undefined ? 0 : places.findIndex((place) => place.beside.includes(support));
      survey.setState({ part: 'read', walk: { kind, stop: Math.max(0, found), stride: 1, turned: false, taken: [] } });
    },
    setWalk(change) {
      survey.setState(({ walk }) => {
        if (walk === null) return {};
        const last = stops(walk.kind).length - 1;
        const next = { ...walk, ...change };
        return { walk: { ...next, stop: Math.min(Math.max(0, next.stop), Math.max(0, last)) } };
      });
    },
    endWalk: () => survey.setState({ walk: null }),
    enter(text) {
      const { walk, tools } = survey.getState();
      const stopHere = walk === null ? undefined : stops(walk.kind)[walk.stop];
      if (walk === null || stopHere === undefined) return 'There is no place to take a reading at.';
      const { kind, turned, stride, taken } = walk;
      const tool = tools[kind];
      const read = readTyped(kind, tool.unit, session.getState().lengthUnit, text);
      if (!read.ok) return read.message;
      const reading = newReading(kind, tool, stopHere, read.value, turned);
      const label = readingLabel(read.read);
      const refused = add(label, (own) => {
        const set = withInstrument(own, kind, tool);
        return { ...set, readings: [...set.readings, reading] };
      });
      if (refused !== null) return refused;
      const next = { stop: Math.min(walk.stop + stride, stops(kind).length - 1) };
      survey.setState({ walk: { ...walk, ...next, taken: [...taken, { stop: walk.stop, words: read.read }] } });
      return null;
    },
    takeBack() {
      const { walk } = survey.getState();
      const last = walk?.taken.at(-1);
      const own = chosenSurvey();
      if (!last || own === null) return;
      if (history.getState().past.at(-1)?.label === readingLabel(last.words)) void document.undo();
      else actions.removeReading(own.readings.length - 1);
    },
    setReading(index, text) {
      const own = chosenSurvey();
      const reading = own?.readings[index];
      if (!own || !reading) return 'That reading is not there any more.';
      const unit = reading.kind === 'grade' && reading.gradeDeg !== undefined ? 'degree' : 'percent';
      const read = readTyped(reading.kind, unit, session.getState().lengthUnit, text);
      if (!read.ok) return read.message;
      return document.attempt(`reading ${index + 1}`, (now) =>
        withSurvey(now, own.id, (one) => ({
          ...one,
          readings: one.readings.with(index, withValue(reading, read.value)),
        })),
      );
    },
    removeReading(index) {
      const own = chosenSurvey();
      if (own !== null) document.attempt('taking a reading out', (now) => withoutReading(now, own.id, index));
    },
    readTable: parseReadings,
    setTable: (table) => survey.setState({ table }),
    dropTable(text) {
      document.setChapter(surveyChapter);
      const { chosen, draft } = survey.getState();
      if (chosen === null && draft === null) actions.begin('First survey');
      survey.setState({ part: 'read', walk: null, table: text });
    },
    takeTable() {
      const text = survey.getState().table;
      const { readings, instruments } = parseReadings(text);
      if (readings.length === 0) return 'There is no reading in it that can be taken.';
      const taken: SceneReading[] = readings.map(sceneReading);
      const refused = add(`${taken.length} readings`, (own) => withTable(own, taken, instruments));
      const own = chosenSurvey();
      if (refused === null && own !== null) survey.setState({ tools: toolsOf(own), table: '' });
      return refused;
    },
    takeNext() {
      const next = survey.getState().worked?.survey.next;
      if (!next) return;
      if (next.kind === 'grade')
        actions.setTool('grade', { places: 'supports', baseMm: Math.round(next.base * 1e4) / 10 });
      actions.startWalk(next.kind, next.support);
    },
    setObjective(objective) {
      stop();
      survey.setState({ objective, mended: null, trains: null });
    },
    setWishes(label, make) {
      const own = chosenSurvey();
      if (own === null) return;
      const refused = document.attempt(label, (now) =>
        withSurvey(now, own.id, ({ mend = {}, ...rest }) => {
          const wishes = make(mend);
          return Object.keys(wishes).length === 0 ? rest : { ...rest, mend: wishes };
        }),
      );
      survey.setState({ problem: refused });
    },
    setFixed(supports) {
      const own = chosenSurvey();
      if (own === null) return;
      const fixed = supports.map((support) => support + 1);
      const refused = document.attempt('what is known to stand right', (now) =>
        withSurvey(now, own.id, ({ fixed: _old, ...rest }) => (fixed.length === 0 ? rest : { ...rest, fixed })),
      );
      survey.setState({ problem: refused });
    },
    async mend() {
      const now = scene();
      const own = chosenSurvey();
      if (now === null || own === null) return;
      const { signal } = begun();
      mendedFrom = mendKey(now, own);
      survey.setState({ mending: true, mended: null, trains: null });
      try {
        const mended = await host.work(
          { scene: now, surveyId: own.id, objective: survey.getState().objective },
          signal,
        );
        if (!signal.aborted) survey.setState({ mended, mending: false });
      } catch (error) {
        if (!isAbort(error)) survey.setState({ mending: false, problem: wordsOf(error) });
      }
    },
    async runTrains(exactness) {
      const now = scene();
      const { worked, mended } = survey.getState();
      const trial = now && worked && trialOn(now, worked.trackId, session.getState().trialId);
      if (!now || !worked || !trial) {
        survey.setState({ problem: 'No trial of this scene runs on the track that was surveyed.' });
        return;
      }
      const { signal } = begun();
      const after = mended?.mend?.outcome === 'mended' ? mended.mend.departures : null;
      const task = { scene: now, trackId: worked.trackId, trial, survey: worked.survey, mended: after, exactness };
      try {
        await runTrains(task, pool, signal, (trains) => survey.setState({ trains }));
      } catch (error) {
        if (!isAbort(error)) survey.setState({ problem: wordsOf(error) });
        survey.setState(({ trains }) => ({ trains: trains && { ...trains, progress: null } }));
      }
    },
    stop,
    async compareWith(id) {
      const now = scene();
      const later = survey.getState().worked;
      survey.setState({ against: id === null ? null : { id, changes: null } });
      if (now === null || later === null || id === null) return;
      try {
        const earlier = await host.work({ scene: now, surveyId: id, objective: null });
        const changes = compareSurveys(earlier.survey, later.survey);
        if (survey.getState().against?.id === id) survey.setState({ against: { id, changes } });
      } catch (error) {
        survey.setState({ against: null, problem: isAbort(error) ? null : wordsOf(error) });
      }
    },
    async putEstimate() {
      const { worked } = survey.getState();
      const own = chosenSurvey();
      if (worked === null || own === null) return false;
      const { departures } = worked.survey.explanation;
      return document.change(`heights as “${own.name}” found them`, (now) => asBuiltScene(now, own.track, departures));
    },
    async putMended() {
      const mend = survey.getState().mended?.mend;
      const own = chosenSurvey();
      if (mend?.outcome !== 'mended' || own === null) return false;
      return document.change('supports as mended', (now) => asBuiltScene(now, own.track, mend.departures));
    },
  };
  return { survey, actions, chosenSurvey, stops };
}

const readingLabel = (words: string): string => `the reading ${words}`;

/** The track on show if it has supports, else the first that has. */
function usableTrack({
  compiled,
  trial,
}: {
  readonly compiled: { readonly tracks: ReadonlyMap<string, Track> } | null;
  readonly trial: { readonly trackId: string } | null;
}): string | null {
  const usable = [...(compiled?.tracks ?? [])].flatMap(([id, { spec }]) =>
    (spec.profile.strip?.supports.length ?? 0) >= 2 ? [id] : [],
  );
  return usable.find((id) => id === trial?.trackId) ?? usable[0] ?? null;
}

/** The trial on show where it runs on a track, else the first that does. */
function trialOn({ trials }: Scene, trackId: string, shown: string | null): Scene['trials'][number] | null {
  const on = trials.filter((trial) => trial.track === trackId);
  return on.find(({ id }) => id === shown) ?? on[0] ?? null;
}
