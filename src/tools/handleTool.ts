import { type Handle, noSnapping, type Place, type Snapping, type Steer } from '../state/route/index.ts';

/** What the hand and the keyboard do at the handles of a plan. Places are in plan, m; pixels only say whether a press has become a drag. */
export type HandEvent =
  | {
      readonly kind: 'press';
      readonly pointer: number;
      readonly handle: Handle;
      readonly pixel: Place;
      readonly place: Place;
      /** Takes what it presses in beside what is chosen. */
      readonly several?: boolean;
    }
  | {
      readonly kind: 'move';
      readonly pointer: number;
      readonly pixel: Place;
      /** Null where the hand points at nothing of the plan. */
      readonly place: Place | null;
      readonly snap: Snapping;
      /** What a px upwards raises by, mm. */
      readonly raise?: number;
    }
  | { readonly kind: 'release'; readonly pointer: number }
  /** The hand was taken away by something else. */
  | { readonly kind: 'lost'; readonly pointer: number }
  | { readonly kind: 'escape' }
  | {
      readonly kind: 'nudge';
      readonly handle: Handle;
      /** 1, 0 or -1 to the right and up. */
      readonly right: number;
      readonly up: number;
      /** What is right and up in the picture, in plan. */
      readonly axes: { readonly right: Place; readonly up: Place };
      /** m */
      readonly step: number;
      /** Of a bend or a door, degrees. */
      readonly turn: number;
      /** Of a support, mm. */
      readonly raise?: number;
      readonly several?: boolean;
    }
  | { readonly kind: 'keys-up' };

/** What is to be done about it. */
export type HandDeed =
  | { readonly kind: 'choose'; readonly key: string }
  /** `from`: where something new is begun. */
  | { readonly kind: 'take'; readonly key: string; readonly from?: Place }
  | { readonly kind: 'move'; readonly to: Place; readonly snap: Snapping }
  /** By this much from where it was taken hold of, mm; `snaps`: to whole steps. */
  | { readonly kind: 'raise'; readonly by: number; readonly snaps: boolean }
  /** A support by its handle; `several`: all up to it. */
  | { readonly kind: 'choose-support'; readonly key: string; readonly several: boolean }
  /** On to the next support, or back. */
  | { readonly kind: 'go-on'; readonly by: 1 | -1; readonly several: boolean }
  | { readonly kind: 'steer'; readonly by: Steer }
  | { readonly kind: 'let-go' }
  | { readonly kind: 'put-back' };

export type HandState =
  | { readonly kind: 'idle' }
  /** Down on a handle, not moved yet. `grip`: from the hand to what it takes along. */
  | {
      readonly kind: 'pressed';
      readonly pointer: number;
      readonly key: string;
      readonly pixel: Place;
      readonly grip: Place;
      readonly does: Does;
      readonly several: boolean;
      readonly from: Place | null;
    }
  | {
      readonly kind: 'dragging';
      readonly pointer: number;
      readonly pixel: Place;
      readonly grip: Place;
      readonly does: Does;
    }
  /** Arrow keys are held down; `at` is where they have taken it, `raised` how much they have raised it, mm. */
  | { readonly kind: 'nudging'; readonly key: string; readonly at: Place; readonly raised: number };

/** What becomes of a pull at a handle: it takes it over the ground, or raises it. */
type Does = 'move' | 'raise';

export interface HandStep {
  readonly state: HandState;
  readonly deeds: readonly HandDeed[];
}

export const idle: HandState = { kind: 'idle' };

/** A press that moves no further than this is a choice, px. */
const slop = 4;

const stay = (state: HandState, ...deeds: HandDeed[]): HandStep => ({ state, deeds });

/** One step of the hand: the state after an event, and what is to be done. A pure state machine: idle, pressed, dragging, nudging. */
export function handStep(state: HandState, event: HandEvent): HandStep {
  switch (event.kind) {
    case 'press':
      return state.kind === 'idle' ? press(event) : stay(state);
    case 'move':
      return move(state, event);
    case 'release':
      return release(state, event.pointer);
    case 'lost':
      return holds(state, event.pointer) ? backToIdle(state) : stay(state);
    case 'escape':
      return backToIdle(state);
    case 'nudge':
      return nudge(state, event);
    case 'keys-up':
      return state.kind === 'nudging' ? stay(idle, { kind: 'let-go' }) : stay(state);
  }
}

const holds = (state: HandState, pointer: number): boolean =>
  (state.kind === 'pressed' || state.kind === 'dragging') && state.pointer === pointer;

function press({ pointer, handle, pixel, place, several = false }: Extract<HandEvent, { kind: 'press' }>): HandStep {
  const [x, y] = handle.anchor;
  // New track ends under the hand; all else keeps its distance from where it was taken hold of.
  const grip: Place = handle.kind === 'extend' ? [0, 0] : [x - place[0], y - place[1]];
  const does = handle.kind === 'support' ? 'raise' : 'move';
  const from = handle.kind === 'draw' ? handle.anchor : null;
  const pressed = { kind: 'pressed', pointer, key: handle.key, pixel, grip, does, several, from } as const;
  // Supports are chosen where the press ends, not where it becomes a pull; what is drawn is not there yet.
  return does === 'raise' || from !== null ? stay(pressed) : stay(pressed, { kind: 'choose', key: handle.key });
}

function move(
  state: HandState,
  { pointer, pixel, place, snap, raise = 0 }: Extract<HandEvent, { kind: 'move' }>,
): HandStep {
  if (!holds(state, pointer) || (state.kind !== 'pressed' && state.kind !== 'dragging')) return stay(state);
  if (place === null && state.does === 'move') return stay(state);
  const to: Place = place === null ? [0, 0] : [place[0] + state.grip[0], place[1] + state.grip[1]];
  const done: HandDeed =
    state.does === 'raise'
      ? { kind: 'raise', by: (state.pixel[1] - pixel[1]) * raise, snaps: snap.lengthMm > 0 }
      : { kind: 'move', to, snap };
  if (state.kind === 'dragging') return stay(state, done);
  if (Math.hypot(pixel[0] - state.pixel[0], pixel[1] - state.pixel[1]) <= slop) return stay(state);
  const { key, grip, does, from } = state;
  const take: HandDeed = from === null ? { kind: 'take', key } : { kind: 'take', key, from };
  return stay({ kind: 'dragging', pointer, pixel: state.pixel, grip, does }, take, done);
}

function release(state: HandState, pointer: number): HandStep {
  if (!holds(state, pointer)) return stay(state);
  if (state.kind === 'pressed' && state.does === 'raise') {
    return stay(idle, { kind: 'choose-support', key: state.key, several: state.several });
  }
  return state.kind === 'dragging' ? stay(idle, { kind: 'let-go' }) : stay(idle);
}

function backToIdle(state: HandState): HandStep {
  const took = state.kind === 'dragging' || state.kind === 'nudging';
  return took ? stay(idle, { kind: 'put-back' }) : stay(idle);
}

function nudge(state: HandState, event: Extract<HandEvent, { kind: 'nudge' }>): HandStep {
  const { handle, right, up, axes, step, turn, raise = 0, several = false } = event;
  if (state.kind === 'pressed' || state.kind === 'dragging') return stay(state);
  const deeds: HandDeed[] = [];
  const going = state.kind === 'nudging' && state.key === handle.key;
  if (state.kind === 'nudging' && !going) deeds.push({ kind: 'let-go' });
  if (handle.kind === 'support' && right !== 0) {
    if (going) deeds.push({ kind: 'let-go' });
    return stay(idle, ...deeds, { kind: 'go-on', by: right > 0 ? 1 : -1, several });
  }
  if (!going) deeds.push({ kind: 'take', key: handle.key });
  const from = going ? state.at : handle.anchor;
  if (handle.kind === 'extend') {
    // New track is steered: a small step aside in the picture would lie inside any bend that leads there.
    deeds.push({ kind: 'steer', by: { ahead: up * step, leftDeg: -right * turn } });
    return stay({ kind: 'nudging', key: handle.key, at: from, raised: 0 }, ...deeds);
  }
  if (handle.kind === 'support') {
    const raised = (going ? state.raised : 0) + up * raise;
    deeds.push({ kind: 'raise', by: raised, snaps: false });
    return stay({ kind: 'nudging', key: handle.key, at: from, raised }, ...deeds);
  }
  if (handle.turns !== undefined) {
    const { about, sense } = handle.turns;
    const at = turned(from, about, (Math.sign(right + up) * sense * turn * Math.PI) / 180);
    deeds.push({ kind: 'move', to: at, snap: noSnapping });
    return stay({ kind: 'nudging', key: handle.key, at, raised: 0 }, ...deeds);
  }
  const by = way(handle, right, up, axes);
  const at: Place = [from[0] + step * by[0], from[1] + step * by[1]];
  deeds.push({ kind: 'move', to: at, snap: noSnapping });
  return stay({ kind: 'nudging', key: handle.key, at, raised: 0 }, ...deeds);
}

/** A place turned about another one, rad to the left. */
function turned([x, y]: Place, [aboutX, aboutY]: Place, angle: number): Place {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [dx, dy] = [x - aboutX, y - aboutY];
  return [aboutX + cos * dx - sin * dy, aboutY + sin * dx + cos * dy];
}

/** Right and up make more of what grows along a line; what goes anywhere goes where the arrow points in the picture. */
function way(handle: Handle, right: number, up: number, axes: { readonly right: Place; readonly up: Place }): Place {
  if (handle.grows !== null) {
    const more = Math.sign(right + up);
    return [more * handle.grows[0], more * handle.grows[1]];
  }
  return [right * axes.right[0] + up * axes.up[0], right * axes.right[1] + up * axes.up[1]];
}
