import { tinykeys } from 'tinykeys';
import { commands } from '../state/commands/index.ts';
import { type Desk, runCommand } from './context.tsx';

/** Fields keep their letters: only keys held with Ctrl or Meta reach commands from them. */
function isTyping(event: KeyboardEvent): boolean {
  const target = event.target as HTMLElement | null;
  if (!target?.matches?.('input, textarea, select, [contenteditable="true"]')) return false;
  return !event.ctrlKey && !event.metaKey;
}

/** Space presses the button that has the focus; everywhere else it plays. */
function pressesButton(event: KeyboardEvent): boolean {
  return (
    event.key === ' ' && (event.target as HTMLElement | null)?.closest?.('button, [role="button"], summary, a') != null
  );
}

/** Binds the key of every command to the window. Returns what undoes it. */
export function bindKeys(desk: Desk): () => void {
  const bindings: Record<string, (event: KeyboardEvent) => void> = {};
  for (const command of commands) {
    if (!command.key) continue;
    bindings[command.key] = (event) => {
      // A sheet that is open has its own keys.
      if (isTyping(event) || pressesButton(event) || document.querySelector('dialog[open]')) return;
      if (!command.canRun(desk)) return;
      event.preventDefault();
      runCommand(desk, command);
    };
  }
  return tinykeys(window, bindings);
}
