/*
 * Over 300 lines for a reason: which button holds a pointer, which has the focus and what the hand's state machine is at have to agree at every event; what can be worked
 * out without them lies beside.
 */
import type { StoreApi } from 'zustand';
import type { Vec3 } from '../../core/math/vec3.ts';
import { drawingHeight } from '../../state/room/index.ts';
import { type DrawnPlan, type Handle, type Route, supportOfKey } from '../../state/route/index.ts';
import type { SessionState } from '../../state/types.ts';
import {
  type HandDeed,
  type HandEvent,
  type HandState,
  handStep,
  idle,
  nudgeSteps,
  raisePerPixel,
  raiseSteps,
  snappingFor,
  turnSteps,
} from '../../tools/index.ts';
import type { Pixel, Shown } from '../view/shown.ts';
import { arrows, groundAxes } from './arrowKeys.ts';
import type { Fingers } from './fingers.ts';
import { doDeed } from './handDeeds.ts';
import { linesAtHand } from './handLines.ts';
import { HandWordsBox } from './handWordsBox.ts';
import { planIsOpen } from './planIsOpen.ts';
import { PlanLines } from './planLines.ts';

/** Turns a place on the stage (px) into one in the room at a height (m); null where the ray does not meet it. */
export type ToPlan = (pixel: Pixel, height: number) => Vec3 | null;

/** The handles of the chosen track or of the room over the picture: buttons that are dragged, reached by Tab and moved by the arrow keys. */
export class HandleLayer {
  private state: HandState = idle;
  private readonly buttons = new Map<string, HTMLButtonElement>();
  private readonly lines = new PlanLines();
  private readonly words: HandWordsBox;
  /** Takes the pulls that draw something new. */
  private readonly sheet = document.createElement('div');
  private readonly controller = new AbortController();
  private shown: Shown | null = null;
  private order = '';
  /** What the hand holds, and the height of the plane that it moves in: that of the handle when it was taken. */
  private held: { readonly handle: Handle; readonly height: number } | null = null;
  /** Why the last key did nothing. */
  private said: string | null = null;
  /** The keyboard goes to what is chosen as soon as it is there. */
  private follows = false;
  private readonly unsubscribe: () => void;

  constructor(
    private readonly box: HTMLElement,
    private readonly session: StoreApi<SessionState>,
    private readonly route: Route,
    private readonly toPlan: ToPlan,
    /** What else is written on the stage, which the words at the hand leave free. */
    written: readonly HTMLElement[],
    /** The fingers that turn the camera: a second finger is theirs, and so is then the first. */
    private readonly fingers: Fingers,
    redraw: () => void,
  ) {
    this.words = new HandWordsBox(written);
    this.sheet.className = 'stage-draw';
    box.append(this.lines.element, this.sheet, this.words.element);
    this.unsubscribe = route.route.subscribe(redraw);
    const { signal } = this.controller;
    this.takePointers(this.sheet, (event) => this.beginDrawing(event));
    box.addEventListener('keydown', (event) => this.key(event), { signal });
    box.addEventListener('keyup', (event) => event.key in arrows && this.step({ kind: 'keys-up' }), { signal });
    box.addEventListener('focusout', () => this.step({ kind: 'keys-up' }), { signal });
    // Escape puts back what is held, wherever the focus is, before it means anything else.
    const onEscape = (event: KeyboardEvent): void => {
      const { drawing } = this.route.route.getState();
      if (event.key !== 'Escape' || (this.state.kind === 'idle' && drawing === null)) return;
      event.preventDefault();
      event.stopPropagation();
      if (this.state.kind === 'idle') this.route.actions.drawWith(null);
      else this.step({ kind: 'escape' });
    };
    window.addEventListener('keydown', onEscape, { capture: true, signal });
    fingers.onSecond = () => this.giveUp();
  }

  /** Puts everything where it belongs in the frame that was just drawn. */
  draw(shown: Shown | null): void {
    this.shown = shown;
    const plan = shown !== null && planIsOpen(this.session.getState()) ? this.route.plan() : null;
    this.box.hidden = plan === null;
    if (shown === null || plan === null) return;
    this.arrange(plan.handles);
    const state = this.session.getState();
    const { chosenHandle, chosenSupports, atSupport, pointed, drawing } = this.route.route.getState();
    this.sheet.hidden = drawing === null;
    for (const handle of plan.handles) {
      const button = this.buttons.get(handle.key);
      const at = shown.toPixel([...handle.place]);
      if (button === undefined) continue;
      const inside = at !== null && at.x >= 0 && at.y >= 0 && at.x <= shown.width && at.y <= shown.height;
      button.style.visibility = inside ? 'visible' : 'hidden';
      if (at !== null) button.style.transform = `translate(${at.x.toFixed(1)}px, ${at.y.toFixed(1)}px)`;
      button.classList.toggle('stage-handle-chosen', handle.key === chosenHandle);
      const support = supportOfKey(handle.key);
      const wanted = support === null || support === atSupport || support === chosenSupports?.head;
      button.classList.toggle('stage-handle-quiet', !wanted);
    }
    if (this.follows) this.follow(chosenHandle);
    this.lines.draw(shown, plan, state.scene !== state.compiled?.scene, pointed);
    this.write(shown, plan, state, chosenHandle);
  }

  private follow(chosen: string | null): void {
    const button = chosen === null ? undefined : this.buttons.get(chosen);
    this.follows = false;
    button?.focus({ preventScroll: true });
  }

  private write(shown: Shown, plan: DrawnPlan, state: SessionState, chosen: string | null): void {
    const route = this.route.route.getState();
    const { held, refusal, atSupport } = route;
    const offered = plan.handles.find((one) => one.kind === 'support' && one.element === atSupport);
    const busy = held !== null || this.box.contains(document.activeElement);
    const handle = (busy ? plan.handles.find(({ key }) => key === (held ?? chosen)) : undefined) ?? offered;
    const at = handle === undefined ? null : shown.toPixel([...handle.place]);
    const first =
      this.held?.handle.kind === 'draw' && this.shown ? this.shown.toPixel([...this.held.handle.place]) : at;
    if (state.scene === null || (handle === undefined ? refusal === null : at === null) || first === null) {
      this.words.hide();
      return;
    }
    const keyed = handle !== undefined && this.keyed(handle.key);
    const lines = linesAtHand(state, route, plan, handle, { busy, keyed, said: this.said });
    this.words.write(lines, at ?? first, shown);
  }

  /** The keyboard is at a handle, and no pointer holds it. */
  private keyed(key: string): boolean {
    const pointed = this.state.kind === 'pressed' || this.state.kind === 'dragging';
    return !pointed && this.buttons.get(key) === document.activeElement;
  }

  /** One button for each handle, in their order, kept while the handle is there: a hand may be holding it. */
  private arrange(handles: readonly Handle[]): void {
    const order = handles.map(({ key, name }) => `${key} ${name}`).join('\n');
    if (order === this.order) return;
    this.order = order;
    const keys = new Set(handles.map(({ key }) => key));
    for (const [key, button] of this.buttons) {
      if (keys.has(key)) continue;
      // Who was there by the keyboard goes to what is chosen instead.
      if (button === document.activeElement) this.follows = true;
      button.remove();
      this.buttons.delete(key);
    }
    let before: Element = this.lines.element;
    for (const handle of handles) {
      const button = this.buttons.get(handle.key) ?? this.button(handle);
      button.setAttribute('aria-label', handle.name);
      button.title = handle.keys === undefined ? handle.name : `${handle.name}. ${handle.keys}`;
      if (handle.keys !== undefined) button.setAttribute('aria-description', handle.keys);
      // Moving a button that a hand holds would take it out of the hand.
      if (before.nextElementSibling !== button) before.after(button);
      before = button;
    }
  }

  private button(handle: Handle): HTMLButtonElement {
    const { key } = handle;
    const button = document.createElement('button');
    button.type = 'button';
    button.className = `stage-handle stage-handle-${handle.kind}`;
    button.dataset.key = key;
    const { signal } = this.controller;
    const support = supportOfKey(key);
    button.addEventListener(
      'focus',
      () => {
        if (support !== null) this.route.actions.offerSupport(support);
        this.route.actions.chooseHandle(key);
      },
      { signal },
    );
    if (support !== null) {
      const leave = (): void => {
        const { atSupport, held } = this.route.route.getState();
        if (atSupport === support && held === null && button !== document.activeElement) {
          this.route.actions.offerSupport(null);
        }
      };
      button.addEventListener('pointerleave', leave, { signal });
      button.addEventListener('blur', leave, { signal });
    }
    this.takePointers(button, (event) => {
      const now = this.route.plan()?.handles.find((one) => one.key === key);
      if (now !== undefined) this.press(event, now, now.place[2]);
    });
    this.buttons.set(key, button);
    this.lines.element.after(button);
    return button;
  }

  private takePointers(element: HTMLElement, press: (event: PointerEvent) => void): void {
    const { signal } = this.controller;
    const listen = <K extends keyof HTMLElementEventMap>(
      kind: K,
      then: (event: HTMLElementEventMap[K]) => void,
    ): void => element.addEventListener(kind, then, { signal });
    listen('pointerdown', (event) => {
      if (event.button !== 0) return;
      if (!this.fingers.takesOver(event)) press(event);
    });
    listen('pointermove', (event) => this.move(event));
    listen('pointerup', ({ pointerId }) => this.step({ kind: 'release', pointer: pointerId }));
    listen('pointercancel', ({ pointerId }) => this.step({ kind: 'lost', pointer: pointerId }));
  }

  private pixelOf(event: PointerEvent): Pixel {
    const { left, top } = this.box.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  }

  private beginDrawing(event: PointerEvent): void {
    const { scene } = this.session.getState();
    const { drawing } = this.route.route.getState();
    if (scene === null || drawing === null) return;
    const height = drawingHeight(scene, drawing);
    const place = this.toPlan(this.pixelOf(event), height);
    if (place === null) return;
    const [x, y] = place;
    const start = { key: 'draw', kind: 'draw', element: 0, place, anchor: [x, y], grows: null, name: drawing } as const;
    this.press(event, start, height);
  }

  private press(event: PointerEvent, handle: Handle, height: number): void {
    const pixel = this.pixelOf(event);
    const place = this.toPlan(pixel, height);
    if (place === null) return;
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.held = { handle, height };
    this.fingers.first = event.pointerType === 'touch' ? event : null;
    this.step({
      kind: 'press',
      pointer: event.pointerId,
      handle,
      pixel: [pixel.x, pixel.y],
      place: [place[0], place[1]],
      several: event.shiftKey,
    });
  }

  private move(event: PointerEvent): void {
    const { held, shown } = this;
    if (this.state.kind === 'idle' || held === null || shown === null) return;
    if (this.fingers.first?.pointerId === event.pointerId) this.fingers.first = event;
    const pixel = this.pixelOf(event);
    const place = this.toPlan(pixel, held.height);
    const { lengthUnit } = this.session.getState();
    this.step({
      kind: 'move',
      pointer: event.pointerId,
      pixel: [pixel.x, pixel.y],
      place: place === null ? null : [place[0], place[1]],
      snap: snappingFor(lengthUnit, event.altKey, shown.look.height / shown.height),
      raise: raisePerPixel[event.shiftKey ? 1 : 0],
    });
  }

  /** A second finger has come: what the first one held goes back, and both turn the camera. */
  private giveUp(): void {
    if (this.state.kind === 'pressed' || this.state.kind === 'dragging') {
      this.step({ kind: 'lost', pointer: this.state.pointer });
    }
  }

  private key(event: KeyboardEvent): void {
    const key = (event.target as HTMLElement).dataset.key ?? null;
    const handle = this.route.plan()?.handles.find((one) => one.key === key);
    if (handle === undefined || this.shown === null || event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = arrows[event.key];
    const { actions } = this.route;
    if (arrow === undefined) {
      if (event.key === 'Delete') this.said = actions.remove(handle.key);
      else if (event.key === 'Escape') this.leave();
      else return;
    } else {
      const { right, up } = groundAxes(this.shown);
      const pace = event.shiftKey ? 1 : 0;
      this.step({
        kind: 'nudge',
        handle,
        right: arrow[0],
        up: arrow[1],
        axes: { right, up },
        step: nudgeSteps[this.session.getState().lengthUnit][pace],
        turn: turnSteps[pace],
        raise: raiseSteps[pace],
        several: event.shiftKey,
      });
    }
    event.preventDefault();
    event.stopPropagation();
  }

  /** Escape with nothing held: lets go of what is chosen. */
  private leave(): void {
    (document.activeElement as HTMLElement | null)?.blur();
    this.route.actions.chooseSupports(null);
    this.route.actions.chooseHandle(null);
  }

  private step(event: HandEvent): void {
    const { state, deeds } = handStep(this.state, event);
    this.state = state;
    if (deeds.length > 0) this.said = null;
    for (const deed of deeds) this.doIt(deed);
    if (state.kind === 'idle') this.fingers.first = null;
  }

  private doIt(deed: HandDeed): void {
    // What was made new is in the hand from now on, by the keyboard too.
    if (deed.kind === 'let-go') {
      this.follows = this.box.contains(document.activeElement) || this.held?.handle.kind === 'draw';
    }
    if (deed.kind === 'let-go' || deed.kind === 'put-back') this.held = null;
    doDeed(this.route.actions, deed);
    if (deed.kind !== 'go-on') return;
    // At once: the next key may come before the next picture.
    this.follows = true;
    this.draw(this.shown);
  }

  dispose(): void {
    this.step({ kind: 'escape' });
    this.controller.abort();
    this.unsubscribe();
    this.box.replaceChildren();
  }
}
