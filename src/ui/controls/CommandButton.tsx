import type { ReactNode } from 'react';
import type { Command } from '../../state/commands/index.ts';
import { runCommand, useDesk } from '../context.tsx';

interface CommandButtonProps {
  readonly command: Command;
  readonly children: ReactNode;
  readonly className?: string;
  /** The content says all that the command's words would. */
  readonly wordsInside?: boolean;
}

/** A button for a command: its words, its key and whether it can run come from the command itself. */
export function CommandButton({ command, children, className, wordsInside = false }: CommandButtonProps) {
  const desk = useDesk();
  const label = command.label(desk);
  const title = command.shownKey ? `${label} (${command.shownKey})` : label;
  return (
    <button
      type="button"
      className={className}
      title={title}
      aria-label={wordsInside ? undefined : label}
      disabled={!command.canRun(desk)}
      onClick={() => runCommand(desk, command)}
    >
      {children}
    </button>
  );
}
