import type { StoreApi } from 'zustand/vanilla';
import {
  addTourStop,
  changeTourStop,
  moveTourStop,
  namedStops,
  putTour,
  removeTourStop,
  type SceneTourStop,
} from '../../scene/index.ts';
import type { PlaybackActions } from '../playback.ts';
import type { DocumentActions } from '../session.ts';
import type { PlaybackState, SessionState } from '../types.ts';
import { jointOf } from '../words.ts';
import { proposedTour } from './proposedTour.ts';
import { arriveS, stayS, verdictS } from './reading.ts';
import { findingOfStop, jointNumberOf, jointOfView, stopOnShow, trialOfStop } from './stops.ts';
import type { ShownNow, Sight, TourActions, TourState } from './types.ts';

export const noTour: TourState = {
  stop: null,
  went: 0,
  running: false,
  presenting: false,
  guessFirst: false,
  told: true,
};

interface TourParts {
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
  readonly play: PlaybackActions;
  readonly document: Pick<DocumentActions, 'attempt' | 'chooseTrial'>;
  readonly sight: Sight;
}

/** What a stop is at: the view is on its way there, its stretch plays, or it is looked at. */
type Phase = 'coming' | 'playing' | 'standing';

const nothingToShow = 'Nothing is drawn yet.';

/** The tour of a session: its stops, where it is, and how it goes on. `tick` takes the clock's seconds, as playing does. */
export function createTour(parts: TourParts): TourActions & { tick(clockSeconds: number): void } {
  const { session, playback, play, document, sight } = parts;
  let phase: Phase = 'standing';
  /** s of the clock until the phase is over. */
  let left = 0;
  /** The latest going anywhere: one that was overtaken while its trial was solved is dropped. */
  let goes = 0;

  const tour = () => session.getState().tour;
  const put = (change: Partial<TourState>) => session.setState((now) => ({ tour: { ...now.tour, ...change } }));
  const here = () => stopOnShow(session.getState());
  const stops = () => session.getState().scene?.tour ?? [];

  session.subscribe((now, before) => {
    if (now.opened !== before.opened) {
      goes++;
      put({ ...noTour, went: now.tour.went, guessFirst: now.tour.guessFirst });
    } else if (now.scene !== before.scene && now.tour.stop !== null && stopOnShow(now) === null) {
      // The stop on show was taken out.
      put({ stop: null, running: false });
    }
  });

  const stand = (stop: SceneTourStop) => {
    phase = 'standing';
    left = stayS(stop);
  };

  const arrive = (stop: SceneTourStop) => {
    const { trial, result, lens } = session.getState();
    const { view } = stop;
    play.pause();
    play.seek(stop.atS ?? 0);
    phase = 'coming';
    left = arriveS;
    const chosenFinding = result === null ? null : findingOfStop(stop, result);
    const finding = chosenFinding === null || result === null ? null : result.findings[chosenFinding];
    const named = trial === null ? null : jointOfView(view, trial);
    const lensOpen = view.kind === 'lens' && named !== null && result !== null;
    session.setState((now) => ({
      camera: cameraOf[view.kind],
      chosenFinding,
      chosenJoint: named ?? (finding === null ? null : jointOf(finding)),
      lens: { open: lensOpen, view: (view.kind === 'lens' ? view.from : undefined) ?? lens.view },
      tour: { ...now.tour, stop: stop.id, went: now.tour.went + 1, told: !now.tour.guessFirst },
    }));
  };

  const goTo = async (stop: SceneTourStop | undefined): Promise<void> => {
    const { scene, trialId } = session.getState();
    if (scene === null || stop === undefined) return;
    const going = ++goes;
    const wanted = trialOfStop(scene, stop);
    if (trialId !== wanted) {
      put({ stop: stop.id, told: !tour().guessFirst });
      await document.chooseTrial(wanted);
    }
    if (going === goes) arrive(stop);
  };
  const goBy = (by: number) => {
    const at = here();
    void goTo(at === null ? stops()[0] : stops()[at.index + by]);
  };

  const playOn = () => {
    phase = 'playing';
    play.play();
  };

  const tick = (clockSeconds: number) => {
    const at = here();
    if (at === null) return;
    const { stop, index } = at;
    const { time, playing } = playback.getState();
    if (phase === 'playing') {
      if (stop.tillS !== undefined && time >= stop.tillS) {
        play.pause();
        play.seek(stop.tillS);
      } else if (playing) return;
      stand(stop);
      return;
    }
    left -= clockSeconds;
    if (left > 0) return;
    if (phase === 'coming') {
      if (stop.tillS !== undefined && playback.getState().duration > 0) playOn();
      else stand(stop);
      return;
    }
    if (!tour().running) return;
    if (!tour().told) {
      put({ told: true });
      left = verdictS;
    } else if (index + 1 < stops().length) void goTo(stops()[index + 1]);
    else put({ running: false });
    // While the next trial is being solved nothing more is due.
    if (phase === 'standing' && left <= 0) left = Number.POSITIVE_INFINITY;
  };

  /** What is on show now, as a stop without a title; null while nothing is drawn. */
  const shownNow = (): ShownNow | null => {
    const { trialId, trial, chosenFinding, chosenJoint, lens, result } = session.getState();
    const seen = sight.take?.() ?? null;
    if (seen === null || trialId === null) return null;
    const risk = chosenFinding === null ? undefined : result?.findings[chosenFinding]?.risk;
    const view =
      lens.open && chosenJoint !== null && trial !== null
        ? ({ kind: 'lens', joint: jointNumberOf(chosenJoint, trial), from: lens.view } as const)
        : seen;
    const atS = Math.round(playback.getState().time * 100) / 100;
    return { view, trial: trialId, atS, ...(risk !== undefined && { risk }) };
  };

  return {
    tick,
    goToStop: (stopId) => goTo(stops().find(({ id }) => id === stopId)),
    nextStop() {
      if (tour().guessFirst && !tour().told && here() !== null) put({ told: true });
      else goBy(1);
    },
    previousStop: () => goBy(-1),
    playStop() {
      const stop = here()?.stop;
      const { time, playing } = playback.getState();
      if (playing || stop === undefined) {
        play.toggle();
        return;
      }
      const { atS = 0, tillS } = stop;
      if (tillS !== undefined && (time < atS || time >= tillS)) play.seek(atS);
      playOn();
    },
    runTour() {
      const at = here();
      const over = at !== null && at.index + 1 >= stops().length;
      put({ running: stops().length > 0 });
      if (at === null || over) void goTo(stops()[0]);
      else stand(at.stop);
    },
    holdTour() {
      put({ running: false });
      play.pause();
    },
    present() {
      if (stops().length === 0) return;
      put({ presenting: true });
      void goTo(here()?.stop ?? stops()[0]);
    },
    stopPresenting() {
      put({ presenting: false, running: false, told: true });
      play.pause();
      session.setState(({ lens }) => ({ lens: { ...lens, open: false } }));
    },
    setGuessFirst: (guessFirst) => put({ guessFirst, told: !guessFirst }),
    tellVerdict: () => put({ told: true }),
    proposeTour() {
      const { scene, trial, result, lengthUnit, gradeForm } = session.getState();
      if (scene === null || trial === null || result === null) return 'The trial is not solved yet.';
      const stopsOf = proposedTour({ scene, trial, result, show: { lengthUnit, gradeForm } });
      return document.attempt('proposed tour', (now) => putTour(now, namedStops(stopsOf)));
    },
    addView() {
      const shown = shownNow();
      if (shown === null) return nothingToShow;
      const before = stops();
      const title = freeTitle(before);
      const why = document.attempt(`view added to the tour`, (now) =>
        addTourStop(now, { title, ...shown }, here()?.stop.id),
      );
      const added = stops().find(({ id }) => !before.some((one) => one.id === id));
      // The picture is there already: it is not gone to.
      if (added !== undefined) put({ stop: added.id, running: false });
      return why;
    },
    retakeView(stopId) {
      const shown = shownNow();
      if (shown === null) return nothingToShow;
      const { view, trial, atS } = shown;
      return document.attempt('view taken anew', (now) => changeTourStop(now, stopId, { view, trial, atS }));
    },
    changeStop: (stopId, what, change) =>
      document.attempt(`${what} of a stop`, (now) => changeTourStop(now, stopId, change)),
    moveStop: (stopId, by) => document.attempt('order of the tour', (now) => moveTourStop(now, stopId, by)),
    removeStop: (stopId) => document.attempt('stop taken out of the tour', (now) => removeTourStop(now, stopId)),
  };
}

const cameraOf = {
  whole: 'walk',
  place: 'walk',
  lens: 'walk',
  down: 'down',
  eye: 'eye',
  ride: 'ride',
  follow: 'follow',
} as const;

/** A title that no stop has: View 1, View 2. */
function freeTitle(stops: readonly SceneTourStop[]): string {
  const taken = new Set(stops.map(({ title }) => title));
  let number = stops.length + 1;
  while (taken.has(`View ${number}`)) number++;
  return `View ${number}`;
}
