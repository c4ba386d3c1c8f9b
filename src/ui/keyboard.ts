import { tinykeys } from 'tinykeys';
import { commands } from './chapters/index.ts';
import { type Desk, runCommand } from './context.tsx';

const writing = 'input:not([type="radio"], [type="range"]), textarea, select, [contenteditable="true"]';
const pressed = 'button, [role="button"], summary, a, input[type="radio"]';

/**
 * True when the key belongs to what has the focus: letters to a field, Space to a button that was reached by the keyboard. After a
 * press with the hand Space plays, as it does everywhere else.
 */
function isTaken(event: KeyboardEvent, underHand: Element | null): boolean {
  const target = event.target instanceof Element ? event.target : null;
  if (target?.matches(writing)) return !event.ctrlKey && !event.metaKey;
  return event.key === ' ' && target !== null && target.matches(pressed) && target !== underHand;
}

/** Binds the key of every command to the window. Returns what undoes it. */
export function bindKeys(desk: Desk): () => void {
  let underHand: Element | null = null;
  const onPointer = (event: PointerEvent) => {
    underHand = event.target instanceof Element ? event.target.closest(pressed) : null;
  };
  const bindings: Record<string, (event: KeyboardEvent) => void> = {};
  for (const command of commands) {
    if (!command.key) continue;
    bindings[command.key] = (event) => {
      // A sheet that is open has its own keys.
      if (event.defaultPrevented || isTaken(event, underHand) || document.querySelector('dialog[open]')) return;
      if (!command.canRun(desk)) return;
      event.preventDefault();
      // Else the button under the last press would be pressed again when Space is let go.
      if (event.key === ' ' && event.target instanceof HTMLElement) event.target.blur();
      runCommand(desk, command);
    };
  }
  window.addEventListener('pointerdown', onPointer, { capture: true });
  const unbind = tinykeys(window, bindings);
  return () => {
    window.removeEventListener('pointerdown', onPointer, { capture: true });
    unbind();
  };
}
