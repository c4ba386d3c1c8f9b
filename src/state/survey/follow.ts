import type { SceneSurvey } from '../../scene/index.ts';
import { mendTask } from '../../sim/survey/index.ts';
import { isAbort, wordsOf } from '../aborting.ts';
import { type SurveyDesk, showSurvey } from './desk.ts';
import { estimateKey, mendKey } from './keys.ts';
import { opening } from './opening.ts';
import { surveyedOf } from './surveyed.ts';

type SessionState = ReturnType<SurveyDesk['session']['getState']>;

/** Keeps the surveys in step with the scene: what is on show, what was worked out from it, and what stage and band show of it. */
export function followScene(desk: SurveyDesk): void {
  const { session, survey } = desk;
  const show = () => {
    const { walk } = survey.getState();
    const places = walk === null ? [] : desk.stops(walk.kind);
    const next = desk.inChapter() ? surveyedOf(survey.getState(), desk.trackId(), places) : null;
    if (JSON.stringify(next) !== JSON.stringify(session.getState().surveyed)) session.setState({ surveyed: next });
  };
  const follow = (now: SessionState, before: SessionState | null) => {
    if (now.scene !== before?.scene) takeScene(desk, now, before);
    if (now.scene !== before?.scene || now.chapter !== before?.chapter) void workOut(desk);
    show();
  };
  session.subscribe((now, before) => {
    if (now.surveyed === before.surveyed) follow(now, before);
  });
  survey.subscribe(show);
  follow(session.getState(), null);
}

/** Works the survey on show out, unless that is done or under way; goes on until it is up to date. */
export async function workOut(desk: SurveyDesk): Promise<void> {
  const { survey, host } = desk;
  const now = desk.scene();
  const own = desk.chosenSurvey();
  if (now === null || own === null || !desk.inChapter()) return;
  const workedFrom = estimateKey(now, own);
  if (workedFrom === survey.getState().workedFrom || survey.getState().working) return;
  survey.setState({ working: true });
  try {
    const worked = await host.work({ scene: now, surveyId: own.id, objective: null });
    // Another survey may be on show by now.
    if (survey.getState().chosen === own.id) survey.setState({ worked, workedFrom, problem: null });
  } catch (error) {
    // A stopped mending ends the worker with all that it was asked: what is not up to date is asked again.
    if (!isAbort(error)) survey.setState({ worked: null, workedFrom, problem: wordsOf(error) });
  }
  survey.setState({ working: false });
  await workOut(desk);
}

function takeScene(desk: SurveyDesk, now: SessionState, before: SessionState | null): void {
  const { survey } = desk;
  if (now.opened !== before?.opened)
    survey.setState(({ phone }) => ({ ...opening, phone: { ...phone, instruments: {} } }));
  const own = desk.chosenSurvey();
  const state = survey.getState();
  if (own === null) {
    if (state.chosen !== null) desk.stop();
    if (state.draft === null || state.chosen !== null) showSurvey(desk, firstSurvey(now));
    return;
  }
  if (now.scene === null) return;
  if (mendKey(now.scene, own) !== state.mendedFrom && (state.mended !== null || state.mending)) {
    desk.stop();
    survey.setState({ mended: null, trains: null });
  }
  if (estimateKey(now.scene, own) !== state.workedFrom) survey.setState({ against: null });
  const was = before?.scene?.surveys?.find(({ id }) => id === own.id);
  if (own.mend !== was?.mend) followWishes(desk, now, own);
  if (was !== undefined && own.readings.length < was.readings.length) stepBack(desk);
}

/** What the mending may do and has to keep, after the wishes and not the heights have changed. */
function followWishes({ survey }: SurveyDesk, { compiled }: SessionState, own: SceneSurvey): void {
  survey.setState(({ worked }) => {
    if (worked === null || compiled === null || worked.surveyId !== own.id) return {};
    const { input } = worked.survey;
    return { worked: { ...worked, task: mendTask(compiled, own.track, input, own.mend, worked.task.objective) } };
  });
}

/** The first survey of the track on show, else the first there is. */
function firstSurvey({ scene, trial }: SessionState): SceneSurvey | null {
  const surveys = scene?.surveys ?? [];
  return surveys.find((one) => one.track === trial?.trackId) ?? surveys[0] ?? null;
}

/** A reading went: the walk stands where it was taken. */
function stepBack({ survey }: SurveyDesk): void {
  survey.setState(({ walk }) => {
    const last = walk?.taken.at(-1);
    return walk && last ? { walk: { ...walk, stop: last.stop, taken: walk.taken.slice(0, -1) } } : {};
  });
}
