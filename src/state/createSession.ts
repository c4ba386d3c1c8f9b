import { createStore, type StoreApi } from 'zustand/vanilla';
import type { SimHost } from '../sim/types.ts';
import { createCureRounds } from './cureRounds.ts';
import { createDocumentActions } from './documentActions.ts';
import { createHistory } from './history.ts';
import { createMomentActions } from './momentActions.ts';
import { createPlayback } from './playback.ts';
import type { Session } from './session.ts';
import { createTour, noTour } from './show/tourActions.ts';
import type { Sight } from './show/types.ts';
import { createTrialRuns } from './trialRuns.ts';
import type { PlaybackState, SessionState } from './types.ts';
import { createViewActions } from './viewActions.ts';

/** Playing speed while the lens is open: a head that rides up does it in a few hundredths of a second. */
const lensRate = 1 / 20;

const opening: SessionState = {
  scene: null,
  opened: null,
  file: null,
  savedAt: null,
  notKept: null,
  trialId: null,
  compiled: null,
  trial: null,
  result: null,
  progress: null,
  holding: false,
  problem: null,
  chosenFinding: null,
  chosenJoint: null,
  cures: new Map(),
  ghost: null,
  beside: null,
  besideLook: { view: 'ghost', match: 'moment', divider: 0.5, flipped: false },
  surveyed: null,
  tour: noTour,
  camera: 'walk',
  lens: { open: false, view: 'side' },
  axis: 'chainage',
  lengthUnit: 'mm',
  gradeForm: 'one-in',
  chapter: 'trial',
  palette: false,
  chooser: false,
  making: false,
  wholeAsked: 0,
};

/** Slows the playing down while the lens is open, whoever opened it. */
function slowUnderLens(session: StoreApi<SessionState>, playback: StoreApi<PlaybackState>): void {
  let rateOutside = playback.getState().rate;
  session.subscribe((now, before) => {
    if (now.lens.open === before.lens.open) return;
    if (now.lens.open) rateOutside = playback.getState().rate;
    playback.setState({ rate: now.lens.open ? lensRate : rateOutside });
  });
}

/** Makes the stores of one open railway and everything one can do to it. `host` solves the trials. */
export function createSession(host: SimHost): Session {
  const session = createStore<SessionState>(() => opening);
  const { playback, actions: play } = createPlayback();
  const history = createHistory();
  const cures = createCureRounds(session, host);
  const runs = createTrialRuns(session, host, (result) => {
    const duration = result.run.time.at(-1) ?? 0;
    playback.setState((now) => ({ duration, time: Math.min(now.time, duration) }));
    cures.start();
  });
  slowUnderLens(session, playback);

  const moments = createMomentActions(session, playback, play);
  const { seekToFinding } = moments;
  const document = createDocumentActions({ session, playback, history, cures, runs, seekToFinding });
  const view = createViewActions(session, moments);
  const sight: Sight = { take: null };
  const { tick: tickTour, ...tour } = createTour({ session, playback, play, document, sight });
  const tick = (clockSeconds: number) => {
    play.tick(clockSeconds);
    tickTour(clockSeconds);
  };
  const dispose = () => {
    document.cancel();
    host.dispose();
  };
  const actions = { ...play, ...moments, ...document, ...view, ...tour, tick, dispose };
  return { session, playback, history: history.store, actions, sight };
}
