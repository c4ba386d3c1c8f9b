import type { CameraRig } from './rig.ts';

/** Turn for a drag across the picture's height, rad, and for one press of an arrow key. */
const turnPerHeight = 3.2;
const turnPerKey = (7.5 * Math.PI) / 180;

/** Share of the picture's height that an arrow key moves it by, with Shift. */
const panPerKey = 0.08;

const zoomPerKey = 1.15;
const zoomPerWheel = 0.0014;

/** Right and up of the arrow keys. */
const arrows: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const zooms: Readonly<Record<string, number>> = { '+': 1 / zoomPerKey, '=': 1 / zoomPerKey, '-': zoomPerKey };

/** A press that moves less than this is a click, px. */
const clickSlop = 5;

export interface HandReports {
  /** Something about the look has changed. */
  moved(): void;
  /** A press without a drag, px from the stage's corner. */
  clicked(x: number, y: number, event: PointerEvent): void;
  /** A finger was put down that is to hold nothing, whatever it is on. */
  takesOver(event: PointerEvent): boolean;
  /** Keys mean something else just now. */
  leavesKeys(): boolean;
}

/** An element that obeys a hand. */
export interface Listening {
  /** Whether a pointer is down on it. */
  busy(): boolean;
  /** Takes a pointer as if it had been put down on it. */
  join(event: PointerEvent): void;
  /** Lets go of it. */
  stop(): void;
}

/**
 * Obeys pointer, touch, wheel and keys on an element. One finger or the left button turns, two fingers or the right
 * button (or Shift) move and zoom.
 */
export function listen(element: HTMLElement, rig: () => CameraRig | null, reports: HandReports): Listening {
  const down = new Map<number, { x: number; y: number }>();
  let travelled = 0;

  const press = (event: PointerEvent): void => {
    if (event.button > 2 || reports.takesOver(event)) return;
    join(event);
  };
  const join = (event: PointerEvent): void => {
    down.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (down.size === 1) travelled = 0;
    element.setPointerCapture(event.pointerId);
  };

  const drag = (event: PointerEvent): void => {
    const held = down.get(event.pointerId);
    const camera = rig();
    if (held === undefined || camera === null) return;
    const high = element.clientHeight || 1;
    const dx = (event.clientX - held.x) / high;
    const dy = (event.clientY - held.y) / high;
    travelled += Math.abs(event.clientX - held.x) + Math.abs(event.clientY - held.y);
    if (down.size >= 2) {
      const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
      if (other !== undefined) {
        const before = Math.hypot(held.x - other.x, held.y - other.y);
        const now = Math.hypot(event.clientX - other.x, event.clientY - other.y);
        if (before > 0 && now > 0) camera.zoom(before / now);
        // Each finger's move shifts their middle by half.
        camera.pan(-dx / 2, dy / 2);
      }
    } else if ((event.buttons & 2) !== 0 || event.shiftKey) {
      camera.pan(-dx, dy);
    } else if (travelled > clickSlop) {
      camera.turn(-dx * turnPerHeight, dy * turnPerHeight);
    }
    held.x = event.clientX;
    held.y = event.clientY;
    reports.moved();
  };

  const release = (event: PointerEvent): void => {
    if (!down.delete(event.pointerId)) return;
    if (event.type !== 'pointerup' || down.size > 0 || travelled > clickSlop || event.button !== 0) return;
    const box = element.getBoundingClientRect();
    reports.clicked(event.clientX - box.left, event.clientY - box.top, event);
  };

  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 16 : 1;
    rig()?.zoom(Math.exp(event.deltaY * lines * zoomPerWheel));
    reports.moved();
  };

  const key = (event: KeyboardEvent): void => {
    const camera = rig();
    if (camera === null || reports.leavesKeys() || event.ctrlKey || event.metaKey || event.altKey) return;
    const step = event.shiftKey ? panPerKey : turnPerKey;
    const way = arrows[event.key];
    const factor = zooms[event.key];
    if (way !== undefined) {
      if (event.shiftKey) camera.pan(way[0] * step, way[1] * step);
      else camera.turn(way[0] * step, way[1] * step);
    } else if (factor !== undefined) camera.zoom(factor);
    else return;
    event.preventDefault();
    event.stopPropagation();
    reports.moved();
  };

  const noMenu = (event: Event): void => event.preventDefault();
  element.addEventListener('pointerdown', press);
  element.addEventListener('pointermove', drag);
  element.addEventListener('pointerup', release);
  element.addEventListener('pointercancel', release);
  element.addEventListener('wheel', wheel, { passive: false });
  element.addEventListener('keydown', key);
  element.addEventListener('contextmenu', noMenu);
  const stop = (): void => {
    element.removeEventListener('pointerdown', press);
    element.removeEventListener('pointermove', drag);
    element.removeEventListener('pointerup', release);
    element.removeEventListener('pointercancel', release);
    element.removeEventListener('wheel', wheel);
    element.removeEventListener('keydown', key);
    element.removeEventListener('contextmenu', noMenu);
  };
  return { busy: () => down.size > 0, join, stop };
}
