import type { FilePort } from '../ports.ts';
import type { Session } from '../session.ts';

/** All a command may reach. */
export interface CommandContext extends Session {
  readonly files: FilePort;
}

/** One thing a person can do, with the words and the key for it: keyboard, palette and buttons all come from here. */
export interface Command {
  readonly id: string;
  readonly label: (context: CommandContext) => string;
  /** As `tinykeys` reads it; null: no key of its own. */
  readonly key: string | null;
  /** The key as it is shown to the person. */
  readonly shownKey?: string;
  /** A chord that means the same and works within fields and lists too, as `tinykeys` reads it and as it is shown. */
  readonly fieldKey?: { readonly key: string; readonly shown: string };
  readonly canRun: (context: CommandContext) => boolean;
  readonly run: (context: CommandContext) => void | Promise<void>;
}

export const always = (): boolean => true;

export const hasResult = ({ session }: CommandContext): boolean => session.getState().result !== null;
