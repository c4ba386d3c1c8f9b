import type { StoreApi } from 'zustand/vanilla';
import type { Track } from '../../core/track/types.ts';
import { newId, type Scene, type SceneSurvey } from '../../scene/index.ts';
import type { ProbePool } from '../../sim/study/index.ts';
import type { SurveyHost } from '../../sim/survey/index.ts';
import type { Session } from '../session.ts';
import { withSurvey } from './edits.ts';
import { type Stop, stopsOf } from './stops.ts';
import { toolsOf } from './tools.ts';
import type { ReadingKind, SurveyState } from './types.ts';

/** Name of the chapter in which surveys are worked with. */
export const surveyChapter = 'survey';

/** What every action on surveys has at hand: the session, the surveys' own state, and one piece of work at a time. */
export interface SurveyDesk extends Pick<Session, 'session' | 'history'> {
  /** What changes the document. */
  readonly document: Session['actions'];
  readonly survey: StoreApi<SurveyState>;
  readonly host: SurveyHost;
  readonly pool: ProbePool;
  scene(): Scene | null;
  /** The survey on show as the scene has it. */
  chosenSurvey(): SceneSurvey | null;
  trackId(): string | null;
  track(): Track | null;
  /** The places at which a kind of reading is taken. */
  stops(kind: ReadingKind): readonly Stop[];
  inChapter(): boolean;
  /** Stops what is under way and begins another piece of work. */
  begun(): AbortController;
  stop(): void;
}

export function createDesk(
  { session, history, actions: document }: Session,
  survey: StoreApi<SurveyState>,
  host: SurveyHost,
  pool: ProbePool,
): SurveyDesk {
  let busy: AbortController | null = null;
  const scene = () => session.getState().scene;
  const chosenSurvey = () => scene()?.surveys?.find(({ id }) => id === survey.getState().chosen) ?? null;
  const trackId = () => chosenSurvey()?.track ?? survey.getState().draft?.trackId ?? null;
  const track = () => {
    const id = trackId();
    return id === null ? null : (session.getState().compiled?.tracks.get(id) ?? null);
  };
  const stop = () => {
    busy?.abort();
    busy = null;
    survey.setState(({ trains }) => ({ mending: false, trains: trains && { ...trains, progress: null } }));
  };
  return {
    session,
    history,
    document,
    survey,
    host,
    pool,
    scene,
    chosenSurvey,
    trackId,
    track,
    stops(kind) {
      const on = track();
      return on === null ? [] : stopsOf(on, kind, survey.getState().tools[kind]);
    },
    inChapter: () => session.getState().chapter === surveyChapter,
    begun() {
      stop();
      busy = new AbortController();
      survey.setState({ problem: null });
      return busy;
    },
    stop,
  };
}

/** Puts another survey on show, or none: nothing that was worked out from the one before stays. */
export function showSurvey({ survey }: SurveyDesk, own: SceneSurvey | null): void {
  survey.setState(({ tools, phone }) => ({
    chosen: own?.id ?? null,
    draft: null,
    walk: null,
    worked: null,
    workedFrom: '',
    mended: null,
    mendedFrom: '',
    mending: false,
    trains: null,
    against: null,
    problem: null,
    tools: own === null ? tools : toolsOf(own),
    phone: { ...phone, instruments: {} },
  }));
}

/** Changes the survey on show; a draft becomes a survey with it. Null, or why not. */
export function changeSurvey(
  desk: SurveyDesk,
  label: string,
  change: (own: SceneSurvey) => SceneSurvey,
): string | null {
  const { survey, document } = desk;
  const { draft, chosen } = survey.getState();
  if (chosen !== null) return document.attempt(label, (now) => withSurvey(now, chosen, change));
  if (draft === null) return 'There is no survey to put it into.';
  const id = newId(desk.scene()?.surveys ?? [], draft.name, 'survey');
  const bare: SceneSurvey = { id, name: draft.name, track: draft.trackId, readings: [] };
  // Chosen before it is there, so that whoever looks at the new scene finds it; never there if it was refused.
  survey.setState({ chosen: id });
  const refused = document.attempt(label, (now) => ({ ...now, surveys: [...(now.surveys ?? []), change(bare)] }));
  survey.setState(refused === null ? { draft: null } : { chosen: null, draft });
  return refused;
}
