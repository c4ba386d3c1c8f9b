import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Track } from '../../core/track/types.ts';
import type { ProbePool } from '../../sim/study/index.ts';
import { draftTrack } from '../routeEdits/index.ts';
import type { Session } from '../session.ts';
import type { SessionState } from '../types.ts';
import { keepDraftVerdicts } from './draftVerdicts.ts';
import { dragged, type Held, type Place, type Steer, steered } from './dragged.ts';
import { openEnds } from './ends.ts';
import { type Handle, handlesOf } from './handles.ts';
import type { Snapping } from './snapping.ts';
import type { ChosenSupports, RouteState } from './types.ts';

/** What can be done to the plan by hand. A hold is one step of the history. */
export interface RouteActions {
  /** Null: the track that the trial runs on. */
  chooseTrack(trackId: string | null): void;
  chooseHandle(key: string | null): void;
  /** Chooses neighbouring supports; null lets go of them. */
  chooseSupports(chosen: ChosenSupports | null): void;
  /** Whether a tap on a support takes in all up to it. */
  takeSeveral(several: boolean): void;
  /** Marks a place of a track (m) on the stage, opens its track and takes the playhead there where the trial runs on it; null takes the mark away. */
  pointOut(place: RouteState['pointed']): void;
  /** Takes hold of a handle; false when there is none of that key. */
  take(key: string): boolean;
  /** Takes what is held to a place in plan, m. What cannot be met is told in `refusal`, and the last that could stays. */
  moveTo(place: Place, snap: Snapping): void;
  /** Lays on, takes back or bends the end of the track whose handle for new track is held, from where the hold has brought it. */
  steer(by: Steer): void;
  letGo(): void;
  /** Puts back what was before the hold. */
  putBack(): void;
}

/** The track being drawn as the railway now is, with its handles. */
export interface DrawnPlan {
  readonly trackId: string;
  readonly track: Track;
  readonly handles: readonly Handle[];
}

export interface Route {
  readonly route: StoreApi<RouteState>;
  readonly actions: RouteActions;
  /** What of the plan can be taken hold of now; null when no track is open. */
  plan(): DrawnPlan | null;
  dispose(): void;
}

/** The track whose plan is worked on: the chosen one while it is there, else the trial's. */
export function chosenTrack({ chosenTrack: chosen }: RouteState, { scene, trialId }: SessionState): string | null {
  if (scene === null) return null;
  if (scene.tracks.some(({ id }) => id === chosen)) return chosen;
  return scene.trials.find(({ id }) => id === trialId)?.track ?? scene.tracks[0].id;
}

/** As it is while nothing is chosen, held or pointed at. */
const nothingInHand = {
  chosenTrack: null,
  chosenHandle: null,
  chosenSupports: null,
  takesSeveral: false,
  held: null,
  refusal: null,
  led: null,
  pointed: null,
} as const;

/** Makes what draws the plan of a session's railway; `pool` runs the quasi-static passes. */
export function createRoute({ session, actions: document }: Session, pool: Pick<ProbePool, 'probe'>): Route {
  const route = createStore<RouteState>(() => ({ ...nothingInHand, verdict: null, before: null }));
  const stopVerdicts = keepDraftVerdicts(session, route, pool);
  let held: Held | null = null;
  let known: { readonly scene: SessionState['scene']; readonly trackId: string; readonly plan: DrawnPlan } | null =
    null;

  const plan = (): DrawnPlan | null => {
    const state = session.getState();
    const trackId = chosenTrack(route.getState(), state);
    if (state.scene === null || trackId === null) return null;
    if (known?.scene === state.scene && known.trackId === trackId) return known.plan;
    const track = draftTrack(state.scene, trackId);
    if (track === null) return null;
    known = { scene: state.scene, trackId, plan: { trackId, track, handles: handlesOf(state.scene, trackId, track) } };
    return known.plan;
  };

  // Another railway has other handles.
  const unsubscribe = session.subscribe((now, before) => {
    if (now.opened !== before.opened) {
      held = null;
      route.setState(nothingInHand);
    }
  });

  const actions: RouteActions = {
    chooseTrack: (chosen) =>
      route.setState({ chosenTrack: chosen, chosenHandle: null, chosenSupports: null, pointed: null }),
    pointOut(pointed) {
      route.setState({ pointed, ...(pointed && { chosenTrack: pointed.trackId, chosenHandle: null }) });
      if (pointed === null) return;
      const { camera, trial } = session.getState();
      if (camera !== 'down' && camera !== 'walk') document.setCamera('walk');
      if (trial?.trackId === pointed.trackId && trial.legs === undefined) document.goToPlace(pointed.chainage);
    },
    chooseHandle: (chosenHandle) =>
      route.setState(chosenHandle === null ? { chosenHandle } : { chosenHandle, chosenSupports: null }),
    chooseSupports: (chosenSupports) => route.setState({ chosenSupports }),
    takeSeveral: (takesSeveral) => route.setState({ takesSeveral }),
    take(key) {
      const now = plan();
      const handle = now?.handles.find((one) => one.key === key);
      const { scene } = session.getState();
      if (held !== null || now === null || handle === undefined || scene === null) return false;
      const tracks = new Map(
        scene.tracks.flatMap(({ id }) => {
          const track = draftTrack(scene, id);
          return track === null ? [] : [[id, track] as const];
        }),
      );
      held = { scene, trackId: now.trackId, track: now.track, handle, tracks, ends: openEnds(tracks) };
      document.beginGesture();
      route.setState({ held: key, chosenHandle: key, refusal: null, led: null });
      return true;
    },
    moveTo(place, snap) {
      if (held === null) return;
      const { label, make } = dragged(held, place, snap);
      let led: string | null = null;
      const refusal = document.attempt(label, () => {
        const made = make();
        led = made.led;
        return made.scene;
      });
      const now = route.getState();
      if (refusal !== now.refusal || led !== now.led) route.setState({ refusal, led });
    },
    steer(by) {
      if (held === null) return;
      const { trackId } = held;
      const refusal = document.attempt('new track', (scene) => steered(scene, trackId, by));
      route.setState({ refusal, led: null });
    },
    letGo() {
      if (held === null) return;
      held = null;
      document.settleGesture();
      route.setState({ held: null, refusal: null, led: null });
    },
    putBack() {
      if (held === null) return;
      held = null;
      document.bailGesture();
      route.setState({ held: null, refusal: null, led: null });
    },
  };

  return {
    route,
    actions,
    plan,
    dispose() {
      unsubscribe();
      stopVerdicts();
    },
  };
}
