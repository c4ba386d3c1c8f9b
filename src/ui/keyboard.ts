import { tinykeys } from 'tinykeys';
import { commands } from './chapters/index.ts';
import { type Desk, runCommand } from './context.tsx';
import { leaveField } from './controls/fieldKeys.ts';

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
  for (const command of commands) {
    if (!command.fieldKey) continue;
    bindings[command.fieldKey.key] = (event) => {
      if (event.defaultPrevented || document.querySelector('dialog[open]') || !command.canRun(desk)) return;
      event.preventDefault();
      // What was typed is taken before the sheet under it goes.
      if (event.target instanceof HTMLElement && event.target.matches(writing)) leaveField(event.target);
      runCommand(desk, command);
    };
  }
  // Lists and fields without keys of their own are left as the others are.
  const onEscape = (event: KeyboardEvent) => {
    const { target } = event;
    if (event.key !== 'Escape' || event.defaultPrevented || document.querySelector('dialog[open]')) return;
    if (target instanceof HTMLElement && target.matches(writing)) leaveField(target);
  };
  window.addEventListener('keydown', onEscape);
  window.addEventListener('pointerdown', onPointer, { capture: true });
  const unbind = tinykeys(window, bindings);
  return () => {
    window.removeEventListener('pointerdown', onPointer, { capture: true });
    window.removeEventListener('keydown', onEscape);
    unbind();
  };
}
