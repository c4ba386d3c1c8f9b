import type { StoreApi } from 'zustand';
import type { Vec3 } from '../../core/math/vec3.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { type DrawnPlan, type Handle, handWords, type Route, verdictWords } from '../../state/route/index.ts';
import type { SessionState } from '../../state/types.ts';
import {
  type HandEvent,
  type HandState,
  handStep,
  idle,
  nudgeSteps,
  snappingFor,
  turnSteps,
} from '../../tools/index.ts';
import type { Pixel, Shown } from '../view/shown.ts';
import { arrows, groundAxes } from './arrowKeys.ts';
import { pathOf, planPoints } from './planPath.ts';
import { areaOf, wordsPlace } from './wordsPlace.ts';

/** Turns a place on the stage (px) into one in the room at a height (m); null where the ray does not meet it. */
export type ToPlan = (pixel: Pixel, height: number) => Vec3 | null;

/** Radius of the mark on a place that is pointed out, px. */
const markRadius = 13;

const svgSpace = 'http://www.w3.org/2000/svg';

/** Whether the plan can be worked on as the stage is now looked at: from above, or walking round, with the Route chapter open. */
export const planIsOpen = ({ chapter, camera, lens, ghost }: SessionState): boolean =>
  chapter === 'route' && (camera === 'down' || camera === 'walk') && !lens.open && ghost === null;

/** The handles of the chosen track over the picture: buttons that are dragged, reached by Tab and moved by the arrow keys. */
export class HandleLayer {
  private state: HandState = idle;
  private readonly buttons = new Map<string, HTMLButtonElement>();
  private readonly lines = document.createElementNS(svgSpace, 'svg');
  private readonly draft = document.createElementNS(svgSpace, 'path');
  private readonly arms = document.createElementNS(svgSpace, 'path');
  private readonly mark = document.createElementNS(svgSpace, 'circle');
  private readonly words = document.createElement('p');
  private readonly controller = new AbortController();
  private shown: Shown | null = null;
  private order = '';
  private points: { readonly track: Track; readonly points: readonly Vec3[] } | null = null;
  private readonly unsubscribe: () => void;

  constructor(
    private readonly box: HTMLElement,
    private readonly session: StoreApi<SessionState>,
    private readonly route: Route,
    private readonly toPlan: ToPlan,
    /** What else is written on the stage, which the words at the hand leave free. */
    private readonly written: readonly HTMLElement[],
    redraw: () => void,
  ) {
    this.lines.classList.add('stage-plan');
    this.draft.classList.add('stage-plan-draft');
    this.arms.classList.add('stage-plan-arm');
    this.mark.classList.add('stage-plan-mark');
    this.mark.setAttribute('r', String(markRadius));
    this.lines.append(this.arms, this.draft, this.mark);
    this.words.className = 'stage-hand-words';
    this.words.setAttribute('aria-live', 'polite');
    box.append(this.lines, this.words);
    this.unsubscribe = route.route.subscribe(redraw);
    const { signal } = this.controller;
    box.addEventListener('keydown', (event) => this.key(event), { signal });
    box.addEventListener('keyup', (event) => event.key in arrows && this.step({ kind: 'keys-up' }), { signal });
    box.addEventListener('focusout', () => this.step({ kind: 'keys-up' }), { signal });
    // Escape puts back what is held, wherever the focus is, before it means anything else.
    const onEscape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || this.state.kind === 'idle') return;
      event.preventDefault();
      event.stopPropagation();
      this.step({ kind: 'escape' });
    };
    window.addEventListener('keydown', onEscape, { capture: true, signal });
  }

  /** Puts everything where it belongs in the frame that was just drawn. */
  draw(shown: Shown | null): void {
    this.shown = shown;
    const plan = shown !== null && planIsOpen(this.session.getState()) ? this.route.plan() : null;
    this.box.hidden = plan === null;
    if (shown === null || plan === null) return;
    this.arrange(plan.handles);
    const state = this.session.getState();
    const { chosenHandle } = this.route.route.getState();
    for (const handle of plan.handles) {
      const button = this.buttons.get(handle.key);
      const at = shown.toPixel([...handle.place]);
      if (button === undefined) continue;
      const inside = at !== null && at.x >= 0 && at.y >= 0 && at.x <= shown.width && at.y <= shown.height;
      button.style.visibility = inside ? 'visible' : 'hidden';
      if (at !== null) button.style.transform = `translate(${at.x.toFixed(1)}px, ${at.y.toFixed(1)}px)`;
      button.classList.toggle('stage-handle-chosen', handle.key === chosenHandle);
    }
    this.drawLines(shown, plan, state);
    this.drawMark(shown, plan);
    this.write(shown, plan, state, chosenHandle);
  }

  private drawLines(shown: Shown, { track, handles }: DrawnPlan, { scene, compiled }: SessionState): void {
    if (this.points?.track !== track) this.points = { track, points: planPoints(track) };
    const newer = scene !== compiled?.scene;
    this.draft.setAttribute('d', pathOf(this.points.points, shown.toPixel));
    this.draft.classList.toggle('stage-plan-newer', newer);
    const arm = (from: Handle | undefined, to: Handle | undefined): string =>
      from === undefined || to === undefined ? '' : pathOf([[...from.place], [...to.place]], shown.toPixel);
    const named = (key: string): Handle | undefined => handles.find((one) => one.key === key);
    const last = handles.findLast(({ kind }) => kind === 'end');
    const corners = handles.filter(({ kind }) => kind === 'corner');
    this.arms.setAttribute(
      'd',
      arm(named('heading'), named('start')) +
        arm(last, named('extend')) +
        corners.map((corner) => arm(corner, named(`radius:${corner.element}`))).join(''),
    );
  }

  private drawMark({ toPixel }: Shown, { track, trackId }: DrawnPlan): void {
    const { pointed } = this.route.route.getState();
    const place = pointed?.trackId === trackId ? trackPoint(track, pointed.chainage) : null;
    const at = place === null ? null : toPixel([place.x, place.y, place.z]);
    this.mark.setAttribute('visibility', at === null ? 'hidden' : 'visible');
    if (at === null) return;
    this.mark.setAttribute('cx', at.x.toFixed(1));
    this.mark.setAttribute('cy', at.y.toFixed(1));
  }

  private write(shown: Shown, plan: DrawnPlan, state: SessionState, chosen: string | null): void {
    const { held, refusal, led, verdict } = this.route.route.getState();
    const handle = plan.handles.find(({ key }) => key === (held ?? chosen));
    const busy = held !== null || this.box.contains(document.activeElement);
    const at = handle === undefined || !busy ? null : shown.toPixel([...handle.place]);
    this.words.hidden = at === null || handle === undefined || state.scene === null;
    if (this.words.hidden || at === null || handle === undefined || state.scene === null) return;
    const [first, ...more] = handWords(state.scene, plan.trackId, plan.track, handle, state);
    const told = verdict === null ? null : verdictWords(verdict, state);
    const lines: [text: string, look: string][] = [[first ?? '', 'figure']];
    if (more.length > 0) lines.push([more.join(' · '), 'more']);
    if (handle.keys !== undefined && this.keyed(handle.key)) lines.push([handle.keys, 'more']);
    if (refusal === null && led !== null) lines.push([led, 'led']);
    if (refusal !== null) lines.push([refusal, 'refusal']);
    else if (told !== null) lines.push([told.words, told.fails ? 'fails' : 'passes']);
    const text = JSON.stringify(lines);
    if (this.words.dataset.text !== text) {
      this.words.dataset.text = text;
      this.words.replaceChildren(
        ...lines.map(([line, look]) => {
          const span = document.createElement('span');
          span.className = `stage-hand-${look}`;
          span.textContent = line;
          return span;
        }),
      );
    }
    const size = { width: this.words.offsetWidth, height: this.words.offsetHeight };
    const { left, top } = wordsPlace(at, size, shown, this.written.map(areaOf));
    this.words.style.transform = `translate(${left.toFixed(0)}px, ${top.toFixed(0)}px)`;
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
      button.remove();
      this.buttons.delete(key);
    }
    let before: Element = this.lines;
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
    const button = document.createElement('button');
    button.type = 'button';
    button.className = `stage-handle stage-handle-${handle.kind}`;
    button.dataset.key = handle.key;
    const { signal } = this.controller;
    const listen = <K extends keyof HTMLElementEventMap>(
      kind: K,
      then: (event: HTMLElementEventMap[K]) => void,
    ): void => button.addEventListener(kind, then, { signal });
    listen('focus', () => this.route.actions.chooseHandle(handle.key));
    listen('pointerdown', (event) => this.press(event, handle.key));
    listen('pointermove', (event) => this.move(event));
    listen('pointerup', ({ pointerId }) => this.step({ kind: 'release', pointer: pointerId }));
    listen('pointercancel', ({ pointerId }) => this.step({ kind: 'lost', pointer: pointerId }));
    this.buttons.set(handle.key, button);
    this.lines.after(button);
    return button;
  }

  private handle(key: string | null): Handle | undefined {
    return this.route.plan()?.handles.find((one) => one.key === key);
  }

  private pixelOf(event: PointerEvent): Pixel {
    const { left, top } = this.box.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  }

  private press(event: PointerEvent, key: string): void {
    const handle = this.handle(key);
    if (event.button !== 0 || handle === undefined) return;
    const pixel = this.pixelOf(event);
    const place = this.toPlan(pixel, handle.place[2]);
    if (place === null) return;
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.held = { key, height: handle.place[2] };
    this.step({
      kind: 'press',
      pointer: event.pointerId,
      handle,
      pixel: [pixel.x, pixel.y],
      place: [place[0], place[1]],
    });
  }

  /** Height of the plane that the hand moves in: that of the handle when it was taken. */
  private held: { readonly key: string; readonly height: number } | null = null;

  private move(event: PointerEvent): void {
    const { held, shown } = this;
    if (this.state.kind === 'idle' || held === null || shown === null) return;
    const pixel = this.pixelOf(event);
    const place = this.toPlan(pixel, held.height);
    const { lengthUnit } = this.session.getState();
    this.step({
      kind: 'move',
      pointer: event.pointerId,
      pixel: [pixel.x, pixel.y],
      place: place === null ? null : [place[0], place[1]],
      snap: snappingFor(lengthUnit, event.altKey, shown.look.height / shown.height),
    });
  }

  private key(event: KeyboardEvent): void {
    const arrow = arrows[event.key];
    const handle = this.handle((event.target as HTMLElement).dataset.key ?? null);
    if (arrow === undefined || handle === undefined || this.shown === null) return;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
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
    });
  }

  private step(event: HandEvent): void {
    const { state, deeds } = handStep(this.state, event);
    this.state = state;
    const { actions } = this.route;
    for (const deed of deeds) {
      if (deed.kind === 'choose') actions.chooseHandle(deed.key);
      else if (deed.kind === 'take') actions.take(deed.key);
      else if (deed.kind === 'move') actions.moveTo(deed.to, deed.snap);
      else if (deed.kind === 'steer') actions.steer(deed.by);
      else if (deed.kind === 'let-go') actions.letGo();
      else actions.putBack();
    }
  }

  dispose(): void {
    this.step({ kind: 'escape' });
    this.controller.abort();
    this.unsubscribe();
    this.box.replaceChildren();
  }
}
