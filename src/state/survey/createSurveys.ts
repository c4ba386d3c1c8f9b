import { createStore, type StoreApi } from 'zustand/vanilla';
import type { SceneSurvey } from '../../scene/index.ts';
import type { ProbePool } from '../../sim/study/index.ts';
import type { SurveyHost } from '../../sim/survey/index.ts';
import type { Session } from '../session.ts';
import type { SurveyActions } from './actions.ts';
import { choosingActions } from './choosing.ts';
import { createDesk } from './desk.ts';
import { followScene } from './follow.ts';
import { levellingActions } from './levelling.ts';
import { mendingActions } from './mending.ts';
import { opening } from './opening.ts';
import { provingActions } from './proving.ts';
import { recordingActions } from './recording.ts';
import type { Stop } from './stops.ts';
import { noTilt, type TiltPort } from './tiltPort.ts';
import type { ReadingKind, SurveyState } from './types.ts';
import { walkingActions } from './walking.ts';

export interface Surveys {
  readonly survey: StoreApi<SurveyState>;
  readonly actions: SurveyActions;
  /** The survey on show as the scene has it; null for none. */
  chosenSurvey(): SceneSurvey | null;
  /** Places of the walk, or where one would begin. */
  stops(kind: ReadingKind): readonly Stop[];
}

/** Makes the surveys of a session; `host` works them out, `pool` runs the trains, `tilt` is the machine's own level. */
export function createSurveys(session: Session, host: SurveyHost, pool: ProbePool, tilt: TiltPort = noTilt): Surveys {
  const survey = createStore<SurveyState>(() => opening);
  const desk = createDesk(session, survey, host, pool);
  followScene(desk);
  const actions: SurveyActions = {
    ...choosingActions(desk),
    ...walkingActions(desk),
    ...levellingActions(desk, tilt),
    ...recordingActions(desk),
    ...mendingActions(desk),
    ...provingActions(desk),
    stop: desk.stop,
  };
  return { survey, actions, chosenSurvey: desk.chosenSurvey, stops: desk.stops };
}
