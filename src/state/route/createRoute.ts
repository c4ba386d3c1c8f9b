import { createStore, type StoreApi } from 'zustand/vanilla';
import { changeRoom, placedSupports, removeSupports, type Scene } from '../../scene/index.ts';
import type { ProbePool } from '../../sim/study/index.ts';
import {
  drawnKey,
  newLabel,
  type RoomHandle,
  type RoomTool,
  roomRemoval,
  roomSubject,
  usualPart,
} from '../room/hand/index.ts';
import { draftTrack } from '../routeEdits/index.ts';
import type { Session } from '../session.ts';
import type { SessionState } from '../types.ts';
import { chosenSpan, spanWords, upTo } from './chosenSupports.ts';
import { keepDraftVerdicts } from './draftVerdicts.ts';
import type { Dragged, Steer } from './dragged.ts';
import { type DrawnPlan, drawnPlan } from './drawnPlan.ts';
import { type Grasp, graspNew, graspRoom, graspSupport, graspTrack } from './grasp.ts';
import type { Place } from './handles.ts';
import type { Snapping } from './snapping.ts';
import { supportKey, supportOfKey } from './supportHand.ts';
import type { ChosenSupports, RouteState, Works } from './types.ts';

/** What can be done to the plan by hand. A hold is one step of the history. */
export interface RouteActions {
  /** Null: the track that the trial runs on. */
  chooseTrack(trackId: string | null): void;
  chooseHandle(key: string | null): void;
  /** Chooses neighbouring supports; null lets go of them. */
  chooseSupports(chosen: ChosenSupports | null): void;
  /** The support that the stage offers to a hand; null: none. */
  offerSupport(index: number | null): void;
  /** Chooses a support of the track being worked on, by its number from 0; `several`: all from where the choice began up to it. */
  chooseSupport(index: number, several: boolean): void;
  /** On from the support that is offered, or back; `several`: takes it in beside what is chosen. */
  goOn(by: 1 | -1, several: boolean): void;
  /** Whether a hand works at the line or at the room. */
  workAt(works: Works): void;
  /** Takes a tool in hand that draws something of the room; null puts it down. */
  drawWith(tool: RoomTool | null): void;
  /** Puts in one of what a tool draws, where it is usual, and chooses it; gives why it cannot be, or null. */
  putIn(tool: RoomTool): string | null;
  /** Takes out what a handle belongs to; gives why it cannot be, or null. */
  remove(key: string): string | null;
  /** Whether a tap on a support takes in all up to it. */
  takeSeveral(several: boolean): void;
  /** Marks a place of a track (m) on the stage, opens its track and takes the playhead there where the trial runs on it; null takes the mark away. */
  pointOut(place: RouteState['pointed']): void;
  /** Takes hold of a handle, or begins to draw with the tool in hand at a place in plan, m; false when there is nothing of that key. */
  take(key: string, from?: Place): boolean;
  /** Takes what is held to a place in plan, m. What cannot be met is told in `refusal`, and the last that could stays. */
  moveTo(place: Place, snap: Snapping): void;
  /** Raises what is held by this much from where it was, mm; `snaps`: to whole steps. */
  raise(byMm: number, snaps: boolean): void;
  /** Lays on, takes back or bends the end of the track whose handle for new track is held, from where the hold has brought it. */
  steer(by: Steer): void;
  letGo(): void;
  /** Puts back what was before the hold. */
  putBack(): void;
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

const nothingHeld = { held: null, refusal: null, led: null } as const;

/** As it is while nothing is chosen, held or pointed at. */
const nothingInHand = {
  ...nothingHeld,
  chosenTrack: null,
  works: 'line',
  drawing: null,
  atSupport: null,
  chosenHandle: null,
  chosenSupports: null,
  takesSeveral: false,
  pointed: null,
} as const;

/** Makes what draws the plan of a session's railway; `pool` runs the quasi-static passes. */
export function createRoute({ session, actions: document }: Session, pool: Pick<ProbePool, 'glance'>): Route {
  const route = createStore<RouteState>(() => ({ ...nothingInHand, verdict: null, before: null }));
  const stopVerdicts = keepDraftVerdicts(session, route, pool);
  let held: Grasp | null = null;
  /** What was chosen when the hand took hold. */
  let chosenBefore: string | null = null;
  let known: { readonly of: readonly unknown[]; readonly plan: DrawnPlan } | null = null;

  const plan = (): DrawnPlan | null => {
    const state = session.getState();
    const { scene } = state;
    const now = route.getState();
    const { works, chosenHandle, chosenSupports, atSupport } = now;
    const trackId = chosenTrack(now, state);
    if (scene === null || trackId === null) return null;
    const of = [scene, trackId, works, chosenHandle, chosenSupports, atSupport];
    if (known?.of.every((part, k) => part === of[k])) return known.plan;
    const file = scene.tracks.find(({ id }) => id === trackId);
    const track = draftTrack(scene, trackId);
    if (track === null || file === undefined) return null;
    known = { of, plan: drawnPlan(scene, file, track, now) };
    return known.plan;
  };

  /** What a hand would hold: null when there is nothing of that key. */
  const graspOf = (key: string, from: Place | undefined): Grasp | null => {
    const { scene } = session.getState();
    const { drawing } = route.getState();
    if (scene === null) return null;
    if (from !== undefined) return drawing === null ? null : graspNew(scene, drawing, from);
    const now = plan();
    const handle = now?.handles.find((one) => one.key === key);
    if (now === null || handle === undefined) return null;
    if (roomSubject(key) !== null) return graspRoom(scene, handle as RoomHandle);
    const support = supportOfKey(key);
    if (support === null) return graspTrack(scene, now.trackId, now.track, handle);
    // One that is not among the chosen goes alone, and is then the chosen one.
    if (!amongChosen(scene, now.trackId, support)) actions.chooseSupport(support, false);
    const file = scene.tracks.find(({ id }) => id === now.trackId);
    return graspSupport(scene, now.trackId, handle, file ? chosenSpan(route.getState().chosenSupports, file) : null);
  };

  const amongChosen = (scene: Scene, trackId: string, support: number): boolean => {
    const file = scene.tracks.find(({ id }) => id === trackId);
    const span = file ? chosenSpan(route.getState().chosenSupports, file) : null;
    return span !== null && span.from <= support && support <= span.to;
  };

  /** Makes what a hand asks for; what cannot be is told, and the last that could stays. */
  const put = ({ label, make }: Dragged): void => {
    let led: string | null = null;
    const refusal = document.attempt(label, () => {
      const made = make();
      led = made.led;
      return made.scene;
    });
    const now = route.getState();
    if (refusal !== now.refusal || led !== now.led) route.setState({ refusal, led });
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
      route.setState(
        chosenHandle === null || supportOfKey(chosenHandle) !== null
          ? { chosenHandle }
          : { chosenHandle, chosenSupports: null },
      ),
    chooseSupports: (chosenSupports) => route.setState({ chosenSupports }),
    offerSupport: (atSupport) => route.setState({ atSupport }),
    chooseSupport(index, several) {
      const state = session.getState();
      const now = route.getState();
      const trackId = chosenTrack(now, state);
      const file = state.scene?.tracks.find(({ id }) => id === trackId);
      if (file === undefined || index >= placedSupports(file).length) return;
      const { chosenSupports, takesSeveral } = now;
      const from = several || takesSeveral ? chosenSupports : null;
      route.setState({ chosenSupports: upTo(from, file, index, index) });
    },
    goOn(by, several) {
      const state = session.getState();
      const trackId = chosenTrack(route.getState(), state);
      const file = state.scene?.tracks.find(({ id }) => id === trackId);
      if (file === undefined) return;
      const { atSupport, chosenSupports } = route.getState();
      const from = atSupport ?? 0;
      const to = Math.min(Math.max(0, from + by), placedSupports(file).length - 1);
      const next = several ? upTo(chosenSupports, file, from, to) : null;
      route.setState({ atSupport: to, chosenHandle: supportKey(to), chosenSupports: next });
    },
    workAt(works) {
      const { camera } = session.getState();
      if (works === 'room' && camera !== 'down' && camera !== 'walk') document.setCamera('walk');
      route.setState({ works, drawing: null, chosenHandle: null, chosenSupports: null, atSupport: null });
    },
    drawWith: (drawing) => route.setState({ drawing, ...(drawing !== null && { works: 'room', chosenHandle: null }) }),
    putIn(tool) {
      const { scene } = session.getState();
      if (scene === null) return null;
      const key = drawnKey(tool, scene.room ?? {});
      const refusal = document.attempt(newLabel(tool), (present) => changeRoom(present, usualPart(present, tool)));
      if (refusal === null) route.setState({ works: 'room', drawing: null, chosenHandle: key });
      return refusal;
    },
    remove(key) {
      const { scene } = session.getState();
      const now = plan();
      const handle = now?.handles.find((one) => one.key === key);
      if (scene === null || now === null || handle === undefined) return null;
      try {
        if (roomSubject(key) !== null) {
          const { label, without } = roomRemoval(scene, handle as RoomHandle);
          const refusal = document.attempt(label, () => without);
          if (refusal === null) route.setState({ chosenHandle: null });
          return refusal;
        }
        const file = scene.tracks.find(({ id }) => id === now.trackId);
        const span = file ? chosenSpan(route.getState().chosenSupports, file) : null;
        if (supportOfKey(key) === null || span === null) return null;
        const label = `${spanWords(span)} taken out`;
        const refusal = document.attempt(label, (present) => removeSupports(present, now.trackId, span));
        if (refusal === null) route.setState({ chosenSupports: null, atSupport: null });
        return refusal;
      } catch (error) {
        if (error instanceof RangeError) return error.message;
        throw error;
      }
    },
    takeSeveral: (takesSeveral) => route.setState({ takesSeveral }),
    take(key, from) {
      if (held !== null) return false;
      const grasp = graspOf(key, from);
      if (grasp === null) return false;
      held = grasp;
      chosenBefore = route.getState().chosenHandle;
      document.beginGesture();
      route.setState({ held: grasp.key, chosenHandle: grasp.key, refusal: null, led: null });
      return true;
    },
    moveTo(place, snap) {
      if (held?.to !== undefined) put(held.to(place, snap));
    },
    raise(byMm, snaps) {
      if (held?.raise !== undefined) put(held.raise(byMm, snaps));
    },
    steer(by) {
      if (held?.steer === undefined) return;
      const { label, make } = held.steer(by);
      const refusal = document.attempt(label, make);
      route.setState({ refusal, led: null });
    },
    letGo() {
      if (held === null) return;
      const { key } = held;
      held = null;
      document.settleGesture();
      // A tool is put down once it has drawn something.
      const made = plan()?.handles.some((one) => one.key === key) ?? false;
      route.setState({ ...nothingHeld, ...(made && { drawing: null }) });
    },
    putBack() {
      if (held === null) return;
      held = null;
      document.bailGesture();
      route.setState({ ...nothingHeld, chosenHandle: chosenBefore });
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
