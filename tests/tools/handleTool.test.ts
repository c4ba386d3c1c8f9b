import { describe, expect, it } from 'vitest';
import { type Handle, noSnapping } from '../../src/state/route/index.ts';
import { type HandEvent, type HandState, handStep, idle, snappingFor } from '../../src/tools/index.ts';

const handle = (over: Partial<Handle> = {}): Handle => ({
  key: 'corner:2',
  kind: 'corner',
  element: 2,
  place: [1, 2, 0.1],
  anchor: [1, 2],
  grows: null,
  name: 'Corner of curve 3',
  ...over,
});

/** Everything that is done about some events, one after the other. */
function played(events: readonly HandEvent[], from: HandState = idle) {
  let state = from;
  const deeds = events.flatMap((event) => {
    const step = handStep(state, event);
    state = step.state;
    return [...step.deeds];
  });
  return { state, deeds };
}

const press: HandEvent = { kind: 'press', pointer: 1, handle: handle(), pixel: [100, 100], place: [1.01, 2.02] };
const move = (pixel: readonly [number, number], place: readonly [number, number] | null, pointer = 1): HandEvent => ({
  kind: 'move',
  pointer,
  pixel,
  place,
  snap: noSnapping,
});
const nudge = (over: Partial<Extract<HandEvent, { kind: 'nudge' }>> = {}): HandEvent => ({
  kind: 'nudge',
  handle: handle(),
  right: 1,
  up: 0,
  axes: { right: [0, 1], up: [-1, 0] },
  step: 0.001,
  turn: 1,
  ...over,
});

describe('a press', () => {
  it('that does not move chooses the handle and changes nothing', () => {
    const { state, deeds } = played([press, move([102, 101], [1.02, 2.02]), { kind: 'release', pointer: 1 }]);
    expect(deeds).toEqual([{ kind: 'choose', key: 'corner:2' }]);
    expect(state).toBe(idle);
  });

  it('that moves takes hold, carries the handle at the same distance from the hand, and lets go once', () => {
    const { state, deeds } = played([
      press,
      move([120, 100], [1.21, 2.02]),
      move([130, 100], [1.31, 2.12]),
      { kind: 'release', pointer: 1 },
    ]);
    expect(deeds.map(({ kind }) => kind)).toEqual(['choose', 'take', 'move', 'move', 'let-go']);
    const last = deeds[3];
    if (last.kind !== 'move') throw new Error(last.kind);
    expect(last.to[0]).toBeCloseTo(1.3, 12);
    expect(last.to[1]).toBeCloseTo(2.1, 12);
    expect(state).toBe(idle);
  });

  it('on the handle for new track brings its end under the hand', () => {
    const extend = handle({ key: 'extend', kind: 'extend', anchor: [0.8, 2] });
    const { deeds } = played([{ ...press, handle: extend }, move([140, 100], [1.5, 2.5])]);
    expect(deeds.at(-1)).toMatchObject({ kind: 'move', to: [1.5, 2.5] });
  });

  it('is put back by Escape and when the hand is taken away, and minds its own finger only', () => {
    const dragging = [press, move([120, 100], [1.21, 2.02])];
    expect(played([...dragging, { kind: 'escape' }]).deeds.at(-1)).toEqual({ kind: 'put-back' });
    expect(played([...dragging, { kind: 'lost', pointer: 1 }]).deeds.at(-1)).toEqual({ kind: 'put-back' });
    const other = played([
      ...dragging,
      move([10, 10], [0, 0], 2),
      { kind: 'release', pointer: 2 },
      { kind: 'lost', pointer: 2 },
    ]);
    expect(other.deeds).toHaveLength(3);
    expect(other.state.kind).toBe('dragging');
    // After it was put back, what the hand still does means nothing.
    const late = played([...dragging, { kind: 'escape' }, move([140, 100], [1.5, 2]), { kind: 'release', pointer: 1 }]);
    expect(late.deeds.at(-1)).toEqual({ kind: 'put-back' });
  });

  it('over nothing of the plan leaves the handle where it was last', () => {
    expect(played([press, move([300, 100], null)]).deeds).toHaveLength(1);
  });
});

describe('arrow keys', () => {
  it('held down add up to one hold; what goes anywhere goes as the picture says', () => {
    const { deeds } = played([nudge(), nudge(), nudge({ right: 0, up: -1 }), { kind: 'keys-up' }]);
    expect(deeds.map(({ kind }) => kind)).toEqual(['take', 'move', 'move', 'move', 'let-go']);
    const to = deeds[3].kind === 'move' ? deeds[3].to : [0, 0];
    expect(to[0]).toBeCloseTo(1.001, 12);
    expect(to[1]).toBeCloseTo(2.002, 12);
  });

  it('make more and less of what grows along a line, both pairs of them', () => {
    const along = handle({ grows: [0.6, 0.8] });
    const [more] = played([nudge({ handle: along })]).deeds.slice(-1);
    const [less] = played([nudge({ handle: along, right: 0, up: -1 })]).deeds.slice(-1);
    expect(more.kind === 'move' && more.to).toEqual([1.0006, 2.0008]);
    expect(less.kind === 'move' && less.to).toEqual([0.9994, 1.9992]);
  });

  it('steer new track: up and down along it, left and right bend it, and held down they are one hold', () => {
    const extend = handle({ key: 'extend', kind: 'extend' });
    const { deeds } = played([
      nudge({ handle: extend, right: 0, up: 1 }),
      nudge({ handle: extend, right: 0, up: -1, step: 0.01 }),
      nudge({ handle: extend, right: 1, up: 0, turn: 5 }),
      nudge({ handle: extend, right: -1, up: 0 }),
      { kind: 'keys-up' },
    ]);
    expect(deeds).toMatchObject([
      { kind: 'take', key: 'extend' },
      { kind: 'steer', by: { ahead: 0.001 } },
      { kind: 'steer', by: { ahead: -0.01 } },
      { kind: 'steer', by: { ahead: 0, leftDeg: -5 } },
      { kind: 'steer', by: { ahead: 0, leftDeg: 1 } },
      { kind: 'let-go' },
    ]);
  });

  it('are put back by Escape, and do nothing while a hand drags', () => {
    expect(played([nudge(), { kind: 'escape' }]).deeds.at(-1)).toEqual({ kind: 'put-back' });
    expect(played([press, move([120, 100], [1.2, 2]), nudge()]).deeds).toHaveLength(3);
  });
});

it('snaps to a centimetre or a quarter of an inch, and to nothing with Alt', () => {
  expect(snappingFor('mm', false, 0.001)).toEqual({ lengthMm: 10, angleDeg: 5, ends: 0.016 });
  expect(snappingFor('in', false, 0.001).lengthMm).toBeCloseTo(6.35, 9);
  expect(snappingFor('mm', true, 0.001)).toEqual(noSnapping);
});

describe('a support', () => {
  const support = handle({ key: 'support:4', kind: 'support', element: 4 });
  const onSupport: HandEvent = { ...press, handle: support };
  const pulled = (y: number, raise = 0.05): HandEvent => ({ ...move([100, y], null), raise }) as HandEvent;

  it('is chosen where a press ends without a pull, with Shift all up to it', () => {
    expect(played([onSupport, { kind: 'release', pointer: 1 }]).deeds).toEqual([
      { kind: 'choose-support', key: 'support:4', several: false },
    ]);
    const shifted = played([{ ...onSupport, several: true } as HandEvent, { kind: 'release', pointer: 1 }]);
    expect(shifted.deeds).toMatchObject([{ several: true }]);
  });

  it('is raised by how far up the hand goes, whatever lies under it, and put back by Escape', () => {
    const { deeds } = played([onSupport, pulled(80), pulled(60), pulled(120), { kind: 'escape' }]);
    expect(deeds.map(({ kind }) => kind)).toEqual(['take', 'raise', 'raise', 'raise', 'put-back']);
    expect(deeds.slice(1, 4).map((deed) => deed.kind === 'raise' && deed.by)).toEqual([1, 2, -1]);
  });

  it('is raised by the keys in one hold, and gone on from', () => {
    const up = nudge({ handle: support, right: 0, up: 1, raise: 0.1 });
    const on = nudge({ handle: support, right: 1, up: 0, several: true });
    const { deeds, state } = played([up, up, on]);
    expect(deeds.map(({ kind }) => kind)).toEqual(['take', 'raise', 'raise', 'let-go', 'go-on']);
    expect(deeds[2].kind === 'raise' && deeds[2].by).toBeCloseTo(0.2, 12);
    expect(deeds[4]).toEqual({ kind: 'go-on', by: 1, several: true });
    expect(state).toBe(idle);
  });
});

describe('what is drawn new', () => {
  it('begins where the hand was put down, and only once it is pulled', () => {
    const start = handle({ key: 'draw', kind: 'draw', anchor: [1.01, 2.02] });
    const down: HandEvent = { ...press, handle: start };
    expect(played([down, { kind: 'release', pointer: 1 }]).deeds).toEqual([]);
    expect(played([down, move([140, 100], [1.5, 2.5])]).deeds).toMatchObject([
      { kind: 'take', key: 'draw', from: [1.01, 2.02] },
      { kind: 'move', to: [1.5, 2.5] },
    ]);
  });
});

it('turns what goes round something by degrees, the way that sets more', () => {
  const leaf = handle({ kind: 'room-leaf', anchor: [2, 0], turns: { about: [1, 0], sense: -1 } });
  const { deeds } = played([nudge({ handle: leaf, turn: 90 })]);
  const to = deeds[1].kind === 'move' ? deeds[1].to : [0, 0];
  // A quarter turn to the right about (1, 0).
  expect(to[0]).toBeCloseTo(1, 12);
  expect(to[1]).toBeCloseTo(-1, 12);
});
